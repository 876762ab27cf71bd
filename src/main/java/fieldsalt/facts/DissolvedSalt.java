package fieldsalt.facts;

/**
 * What an electrical conductivity means in other words. EC in dS/m at 25 °C. All are rules of the
 * trade, for people; nothing is planned with them.
 */
public final class DissolvedSalt {
  private DissolvedSalt() {}

  /**
   * Total dissolved solids, mg/L: 640 EC up to 5 dS/m, 800 EC above (a rule with a step: 3,200
   * against 4,000 mg/L at 5 dS/m).
   */
  public static double solidsMgL(double ecDsM) {
    return (ecDsM <= 5 ? 640 : 800) * ecDsM;
  }

  /** Sum of cations, meq/L, about 10 EC from 0.1 to 5 dS/m. */
  public static double cationsMeqL(double ecDsM) {
    return 10 * ecDsM;
  }

  /** Osmotic potential, MPa: −0.036 EC from 3 to 30 dS/m (−0.36 bar). Handbook 60. */
  public static double osmoticPotentialMPa(double ecDsM) {
    return -0.036 * ecDsM;
  }

  /** Soluble salt of air-dry soil, %: 0.336 EC1:5. Rayment &amp; Lyons 2011, method 3B1. */
  public static double saltPct(double ec1to5DsM) {
    return 0.336 * ec1to5DsM;
  }
}
