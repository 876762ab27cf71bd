package fieldsalt.facts;

/**
 * Salinity down the root zone at steady state with 40-30-20-10 % of the uptake from its quarters:
 * soil water at the five interfaces ECw / leaching fraction there; ECe is half of the plain mean.
 * Ayers &amp; Westcot 1985, FAO Irrigation and Drainage Paper 29 rev. 1, ch. 2 (example 2, table
 * 3).
 */
public final class AyersWestcot1985 {
  private static final double[] UPTAKE_ABOVE = {0, 0.4, 0.7, 0.9, 1.0};

  private AyersWestcot1985() {}

  /** EC of the soil water (dS/m) at surface and the bottoms of the four quarters. */
  public static double[] soilWater(double ecWater, double leachingFraction) {
    double[] nodes = new double[5];
    for (int k = 0; k < 5; k++) {
      nodes[k] = ecWater / (1 - UPTAKE_ABOVE[k] * (1 - leachingFraction));
    }
    return nodes;
  }

  /** Plain mean of the five interfaces, dS/m. */
  public static double meanSoilWater(double ecWater, double leachingFraction) {
    double sum = 0;
    for (double node : soilWater(ecWater, leachingFraction)) {
      sum += node;
    }
    return sum / 5;
  }

  /** Mean ECe of the root zone, dS/m: half of the mean soil water. */
  public static double meanEce(double ecWater, double leachingFraction) {
    return meanSoilWater(ecWater, leachingFraction) / 2;
  }
}
