package fieldsalt.zones.field;

import java.util.List;

/**
 * How zones are drawn.
 *
 * @param by what cuts the surface into classes
 * @param breaks own class limits, ascending, dS/m; used only by {@link By#BREAKS}
 * @param count number of classes; used only by {@link By#COUNT}, 2 to 12
 * @param minAreaHa no zone is smaller, unless its field is
 * @param minWidthM no zone is narrower, unless its field is
 * @param followFieldMean one zone a field: for a map that is no better than the mean
 * @param unit of what is divided, in the labels of classes that are cut by number; may be empty
 */
public record ZoneSettings(
    By by,
    List<Double> breaks,
    int count,
    double minAreaHa,
    double minWidthM,
    boolean followFieldMean,
    String unit) {

  /** Yield steps of the crop, NRCS classes, own limits, a number of classes, or zones given. */
  public enum By {
    YIELD,
    NRCS,
    BREAKS,
    COUNT,
    FILE
  }

  public ZoneSettings {
    breaks = List.copyOf(breaks);
    require(minAreaHa >= 0 && minAreaHa < 1e6, "min-area-ha must be 0 or more, was " + minAreaHa);
    require(minWidthM >= 0 && minWidthM < 1e5, "min-width-m must be 0 or more, was " + minWidthM);
    require(
        by != By.COUNT || (count >= 2 && count <= 12),
        "a number of zones must be 2 to 12, was " + count);
  }

  private static void require(boolean holds, String message) {
    if (!holds) {
      throw new IllegalArgumentException(message);
    }
  }

  /** Yield steps, 0.4 ha, 24 m (two swaths of 12 m). */
  public static ZoneSettings defaults() {
    return new ZoneSettings(By.YIELD, List.of(), 0, 0.4, 24, false, "dS/m");
  }

  public ZoneSettings withBy(By other) {
    return new ZoneSettings(other, breaks, count, minAreaHa, minWidthM, followFieldMean, unit);
  }
}
