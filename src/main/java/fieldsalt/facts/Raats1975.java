package fieldsalt.facts;

/**
 * Uptake-weighted mean salinity of the soil water at steady state, whatever the shape of the
 * uptake: C = C0 ln(1/LF) / (1 - LF). Raats P.A.C. 1975.
 */
public final class Raats1975 {
  private Raats1975() {}

  /**
   * Mean EC of the soil water, dS/m.
   *
   * @param ecWater of the irrigation water, dS/m
   * @param leachingFraction above 0, below 1
   */
  public static double meanSoilWater(double ecWater, double leachingFraction) {
    return ecWater * Math.log(1 / leachingFraction) / (1 - leachingFraction);
  }
}
