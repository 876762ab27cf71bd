package fieldsalt.facts;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * A limit of irrigation water (FAO 29 rev. 1, table 1).
 *
 * @param item {@code ec}, {@code sar}, {@code na}, {@code cl}, {@code b} or {@code hco3}
 * @param irrigation {@code any}, {@code surface} or {@code sprinkler}
 * @param slightFrom from here restriction is slight to moderate
 * @param severeAbove above this it is severe; empty where the source has no such class
 */
public record WaterLimit(
    String item,
    String label,
    String unit,
    String irrigation,
    double slightFrom,
    OptionalDouble severeAbove,
    String confidence) {

  private static final List<WaterLimit> ALL =
      FactTable.rows("water_limits.csv").stream().map(WaterLimit::of).toList();

  private static WaterLimit of(Map<String, String> row) {
    String severe = row.get("severe_above");
    return new WaterLimit(
        row.get("item"),
        row.get("label"),
        row.get("unit"),
        row.get("irrigation"),
        Double.parseDouble(row.get("slight_from")),
        severe.isBlank() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(severe)),
        row.get("confidence"));
  }

  /** Every limit, in the order of the source. */
  public static List<WaterLimit> all() {
    return ALL;
  }

  /** Whether the limit concerns water that wets the leaves, or water on the ground. */
  public boolean concerns(boolean overhead) {
    return irrigation.equals("any") || irrigation.equals(overhead ? "sprinkler" : "surface");
  }
}
