package fieldsalt.plan.money;

import fieldsalt.gaussian.Normal;

/**
 * What certainty would be worth between two actions whose difference in value is a line: {@code k}
 * money per ha and unit above the break-even. Raiffa &amp; Schlaifer 1961 (unit normal loss).
 */
public final class ValueOfInformation {
  private ValueOfInformation() {}

  /**
   * Expected value of perfect information, money.
   *
   * @param areaHa hectares
   * @param slope k, money per ha per unit; its sign does not matter
   * @param mean of what is uncertain
   * @param sd its standard deviation, at least 0
   * @param breakEven where both actions are worth the same
   */
  public static double perfect(
      double areaHa, double slope, double mean, double sd, double breakEven) {
    return sd <= 0
        ? 0
        : areaHa * Math.abs(slope) * sd * Normal.loss(Math.abs(mean - breakEven) / sd);
  }

  /**
   * Expected value of sampling that takes away a share of the variance, money: the same with the
   * standard deviation of the mean-to-be, sd x sqrt(share).
   */
  public static double sampling(
      double areaHa, double slope, double mean, double sd, double breakEven, double share) {
    return perfect(areaHa, slope, mean, sd * Math.sqrt(share), breakEven);
  }
}
