package fieldsalt.plan.setting;

import java.util.OptionalDouble;

/**
 * A second water to mix with the first.
 *
 * @param ecDsPerM of the second water
 * @param sar of the second water
 * @param share of the second water in the mix, 0 to 1; empty where it is to be worked out
 * @param firstEcDsPerM of the first water
 */
public record Blend(
    double ecDsPerM, OptionalDouble sar, OptionalDouble share, double firstEcDsPerM) {
  /** Cations of a water, meq/L for each dS/m (Handbook 60, rule of thumb). */
  private static final double MEQ_PER_DS_M = 10;

  /** EC of a mix of two waters, dS/m: salts add up. */
  public static double ec(double first, double second, double share) {
    return (1 - share) * first + share * second;
  }

  /**
   * SAR of a mix: sodium and calcium with magnesium add up, each worked out from EC and SAR with 10
   * meq/L of cations for each dS/m.
   */
  public static double sar(
      double firstEc, double firstSar, double secondEc, double secondSar, double share) {
    double sodium = ec(sodium(firstEc, firstSar), sodium(secondEc, secondSar), share);
    double rest = MEQ_PER_DS_M * ec(firstEc, secondEc, share) - sodium;
    return rest > 0 ? sodium / Math.sqrt(rest / 2) : Math.max(firstSar, secondSar);
  }

  /** Sodium, meq/L, of a water: of Na = SAR sqrt((C - Na) / 2) with C cations in all. */
  private static double sodium(double ec, double sar) {
    double cations = MEQ_PER_DS_M * ec;
    return sar <= 0 ? 0 : sar * sar / 4 * (Math.sqrt(1 + 8 * cations / (sar * sar)) - 1);
  }

  /** Share of the second water at which the mix has an EC; empty where none has. */
  public OptionalDouble shareFor(double ec) {
    if (firstEcDsPerM <= ec) {
      return OptionalDouble.of(0);
    }
    return ecDsPerM <= ec
        ? OptionalDouble.of((firstEcDsPerM - ec) / (firstEcDsPerM - ecDsPerM))
        : OptionalDouble.empty();
  }
}
