package fieldsalt.facts;

/** SAR = Na / sqrt((Ca + Mg) / 2), ions in meq/L of one extract (Handbook 60, 1954). */
public final class SodiumAdsorptionRatio {
  /** Milligrams per milliequivalent: 22.990, 40.078 / 2, 24.305 / 2. */
  public static final double NA_MG_PER_MEQ = 22.990;

  public static final double CA_MG_PER_MEQ = 20.039;
  public static final double MG_MG_PER_MEQ = 12.152;

  private SodiumAdsorptionRatio() {}

  /** From meq/L; 0 without sodium. Ca + Mg must be above 0. */
  public static double ofMeqL(double na, double ca, double mg) {
    if (!(na >= 0 && ca + mg > 0)) {
      throw new IllegalArgumentException(
          "Na at least 0 and Ca + Mg above 0 meq/L, was " + na + ", " + ca + ", " + mg);
    }
    return na / Math.sqrt((ca + mg) / 2);
  }

  /** From mg/L of the ions themselves. */
  public static double ofMgL(double na, double ca, double mg) {
    return ofMeqL(na / NA_MG_PER_MEQ, ca / CA_MG_PER_MEQ, mg / MG_MG_PER_MEQ);
  }

  /** From mmol/L: Na / sqrt(Ca + Mg), the same number. */
  public static double ofMmolL(double na, double ca, double mg) {
    return ofMeqL(na, 2 * ca, 2 * mg);
  }
}
