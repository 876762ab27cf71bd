package fieldsalt.facts;

import java.util.List;
import java.util.Map;

/** How far an irrigation water seals the soil (FAO 29 rev. 1, table 1). */
public enum InfiltrationHazard {
  NONE("none"),
  SLIGHT_TO_MODERATE("slight to moderate"),
  SEVERE("severe");

  private static final List<Map<String, String>> ROWS = FactTable.rows("infiltration_hazard.csv");

  private final String label;

  InfiltrationHazard(String label) {
    this.label = label;
  }

  public String label() {
    return label;
  }

  /**
   * Hazard of a water.
   *
   * @param sar of the water, at least 0; above 40 the last row holds
   * @param ecDsPerM of the water, at least 0
   */
  public static InfiltrationHazard of(double sar, double ecDsPerM) {
    Map<String, String> row = ROWS.get(ROWS.size() - 1);
    for (int k = ROWS.size() - 1; k >= 0; k--) {
      if (sar < Double.parseDouble(ROWS.get(k).get("sar_to"))) {
        row = ROWS.get(k);
      }
    }
    if (ecDsPerM > Double.parseDouble(row.get("none_above_dS_m"))) {
      return NONE;
    }
    boolean severe = ecDsPerM < Double.parseDouble(row.get("severe_below_dS_m"));
    return severe ? SEVERE : SLIGHT_TO_MODERATE;
  }
}
