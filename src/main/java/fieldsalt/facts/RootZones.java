package fieldsalt.facts;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Depth of the root zone by crop (within the ranges of FAO 56, from memory). */
public final class RootZones {
  /** Depth used where no crop is known, cm (common practice). */
  public static final double UNKNOWN_CM = 90;

  private static final List<Map<String, String>> ROWS = FactTable.rows("root_zone.csv");

  private RootZones() {}

  /** Depth in cm of the crop's root zone; 90 without a crop or for a crop not listed. */
  public static double depthCm(Optional<Crop> crop) {
    return crop.flatMap(RootZones::row)
        .map(row -> Double.parseDouble(row.get("depth_cm")))
        .orElse(UNKNOWN_CM);
  }

  private static Optional<Map<String, String>> row(Crop crop) {
    return ROWS.stream().filter(row -> fits(row, crop)).findFirst();
  }

  private static boolean fits(Map<String, String> row, Crop crop) {
    return row.get("by").equals("group")
        ? crop.group().equals(row.get("match"))
        : crop.name().startsWith(row.get("match"));
  }
}
