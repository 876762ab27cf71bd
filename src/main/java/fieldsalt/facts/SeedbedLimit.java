package fieldsalt.facts;

import java.util.Optional;

/** ECe of the top 15 cm that seedlings tolerate, dS/m (Maas 1990 notes; others common practice). */
public final class SeedbedLimit {
  private SeedbedLimit() {}

  /** Limit for a crop, or the general one. */
  public static double dsPerM(Optional<Crop> crop) {
    return FactTable.rows("emergence.csv").stream()
        .filter(row -> holds(row.get("match"), crop))
        .findFirst()
        .map(row -> Double.parseDouble(row.get("limit_dS_m")))
        .orElseThrow();
  }

  private static boolean holds(String words, Optional<Crop> crop) {
    return words.isEmpty() || crop.filter(c -> CropWord.begins(c.name(), words)).isPresent();
  }
}
