package fieldsalt.facts;

/** SAR = Na / sqrt((Ca + Mg) / 2), ions in meq/L of one extract (Handbook 60, 1954). */
public final class SodiumAdsorptionRatio {
  private SodiumAdsorptionRatio() {}

  /** From meq/L; 0 without sodium. Ca + Mg must be above 0. */
  public static double ofMeqL(double na, double ca, double mg) {
    if (!(na >= 0 && ca + mg > 0)) {
      throw new IllegalArgumentException(
          "Na at least 0 and Ca + Mg above 0 meq/L, was " + na + ", " + ca + ", " + mg);
    }
    return na / Math.sqrt((ca + mg) / 2);
  }
}
