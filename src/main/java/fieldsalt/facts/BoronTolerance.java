package fieldsalt.facts;

import java.util.Map;
import java.util.Optional;

/**
 * Boron that a crop tolerates in the soil water (Maas 1990, US Salinity Laboratory).
 *
 * @param lowMgL lower end of the published range, mg/L
 * @param highMgL upper end
 * @param confidence {@code print} or {@code memory}
 */
public record BoronTolerance(double lowMgL, double highMgL, String confidence) {

  /** The tolerance of a crop; empty where the table does not name it. */
  public static Optional<BoronTolerance> of(Crop crop) {
    return FactTable.rows("boron.csv").stream()
        .filter(row -> CropWord.begins(crop.name(), row.get("match")))
        .findFirst()
        .map(BoronTolerance::of);
  }

  private static BoronTolerance of(Map<String, String> row) {
    return new BoronTolerance(
        Double.parseDouble(row.get("low_mg_L")),
        Double.parseDouble(row.get("high_mg_L")),
        row.get("confidence"));
  }
}
