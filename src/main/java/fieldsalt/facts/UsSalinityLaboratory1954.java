package fieldsalt.facts;

/**
 * Sodium on the exchange complex from the saturation extract, and the class of the soil. US
 * Salinity Laboratory Staff 1954, Agriculture Handbook 60 (Richards, ed.), p. 26 and ch. 1: ESR =
 * -0.0126 + 0.01475 SAR, ESP = 100 ESR / (1 + ESR); 59 soils of the western United States, for ESP
 * up to about 50 (SAR about 65).
 */
public final class UsSalinityLaboratory1954 {
  private static final double INTERCEPT = -0.0126;
  private static final double SLOPE = 0.01475;

  /** ESP from which soil is sodic, percent. */
  public static final double SODIC_ESP_PCT = 15;

  /** SAR of the saturation extract from which soil is sodic. */
  public static final double SODIC_SAR = 13;

  /** ECe from which soil is saline, dS/m. */
  public static final double SALINE_DS_M = 4;

  private UsSalinityLaboratory1954() {}

  /** Classes of the handbook. */
  public enum SoilClass {
    NORMAL("neither saline nor sodic"),
    SALINE("saline"),
    SODIC("sodic"),
    SALINE_SODIC("saline-sodic");

    private final String label;

    SoilClass(String label) {
      this.label = label;
    }

    public String label() {
      return label;
    }
  }

  /** Exchangeable sodium ratio of a SAR (at least 0); never below 0. */
  public static double esr(double sar) {
    return Math.max(0, INTERCEPT + SLOPE * sar);
  }

  /** ESP in percent of an exchangeable sodium ratio. */
  public static double espOfEsr(double esr) {
    return 100 * esr / (1 + esr);
  }

  /** ESP in percent from the SAR of the saturation extract; 0 below SAR 0.854. */
  public static double espFromSar(double sar) {
    return espOfEsr(esr(sar));
  }

  /** SAR that stands for an ESP limit: 13 for 15 as the handbook's classes have it, else by it. */
  public static double sodicSar(double espPct) {
    return espPct == SODIC_ESP_PCT ? SODIC_SAR : sarFromEsp(espPct);
  }

  /** SAR at which the regression gives this ESP (percent, at least 0, below 100). */
  public static double sarFromEsp(double espPct) {
    return (espPct / (100 - espPct) - INTERCEPT) / SLOPE;
  }

  /** The soil's class from ECe (dS/m) and ESP (percent). */
  public static SoilClass classOf(double ece, double espPct) {
    boolean saline = ece >= SALINE_DS_M;
    if (espPct >= SODIC_ESP_PCT) {
      return saline ? SoilClass.SALINE_SODIC : SoilClass.SODIC;
    }
    return saline ? SoilClass.SALINE : SoilClass.NORMAL;
  }
}
