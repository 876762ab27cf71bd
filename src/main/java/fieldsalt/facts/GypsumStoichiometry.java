package fieldsalt.facts;

/**
 * Gypsum that replaces exchangeable sodium. One cmolc/kg needs 0.861 g of CaSO4.2H2O (172.17 g/mol)
 * a kg of soil; so Mg/ha = 0.0861 F D rho CEC (ESPi - ESPf), D in m, rho in Mg/m3, CEC in cmolc/kg,
 * ESP in percent (Oster, Shainberg &amp; Abrol 1999, Agronomy Monograph 38 ch. 19, whose 0.0086 has
 * CEC in mmolc/kg).
 */
public final class GypsumStoichiometry {
  private static final double T_PER_CMOLC_M_MG_M3 = 8.61;

  /** Water that dissolves 1 t/ha at 2.5 g/L, mm (pure water: an upper bound). */
  public static final double DISSOLVING_MM_PER_T_HA = 40;

  private GypsumStoichiometry() {}

  /** Mg/ha of pure gypsum for 1 cmolc/kg of sodium in a layer (m) of a bulk density (Mg/m3). */
  public static double perCmolc(double depthM, double bulkDensity) {
    return T_PER_CMOLC_M_MG_M3 * depthM * bulkDensity;
  }

  /**
   * Requirement in Mg/ha of pure gypsum; 0 where ESP is at or below the target.
   *
   * @param factor efficiency factor F, at least 1
   */
  public static double requirement(
      double factor,
      double depthM,
      double bulkDensity,
      double cec,
      double espPct,
      double targetPct) {
    double sodium = cec * Math.max(0, espPct - targetPct) / 100;
    return factor * perCmolc(depthM, bulkDensity) * sodium;
  }

  /**
   * Efficiency factor F by target ESP: 1.1, 1.2, 1.3 at 15, 10, 5 % (Oster et al. 1999, from
   * memory), straight between, held at the ends. Never together with a factor of 1.25.
   */
  public static double factor(double targetPct) {
    return 1.3 - 0.02 * (Math.min(15, Math.max(5, targetPct)) - 5);
  }

  /** Gypsum that the layer already holds, Mg/ha: % x D (m) x bulk density x 100. */
  public static double nativeGypsum(double gypsumPct, double depthM, double bulkDensity) {
    return gypsumPct * depthM * bulkDensity * 100;
  }

  /**
   * Product that holds this much pure gypsum.
   *
   * @param purityPct above 0, at most 100
   * @param moisturePct water in percent of the moist product, at least 0, below 100
   */
  public static double product(double pure, double purityPct, double moisturePct) {
    if (!(purityPct > 0 && purityPct <= 100 && moisturePct >= 0 && moisturePct < 100)) {
      throw new IllegalArgumentException(
          "purity above 0 to 100 %, moisture 0 to below 100 %, was "
              + purityPct
              + " and "
              + moisturePct);
    }
    return pure / (purityPct / 100) / (1 - moisturePct / 100);
  }
}
