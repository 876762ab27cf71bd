package fieldsalt.facts;

import java.util.OptionalDouble;

/**
 * Leaching requirement LR = ECw / (5 ECe - ECw), ECe what the crop tolerates in the mean of the
 * root zone. Rhoades 1974; FAO 29 rev. 1, eq. 9. For frequent irrigation (drip, daily sprinkling)
 * LR = ECw / (2 max ECe), max ECe the ECe of no yield (FAO 29, sect. 2.4). A steady-state rule, on
 * the safe side of transient models.
 */
public final class Rhoades1974 {
  private Rhoades1974() {}

  /** Conventional requirement; empty where ECw reaches 5 ECe and no leaching is enough. */
  public static OptionalDouble conventional(double ecWater, double tolerableEce) {
    double below = 5 * tolerableEce - ecWater;
    return below <= 0 ? OptionalDouble.empty() : OptionalDouble.of(ecWater / below);
  }

  /** High-frequency requirement. */
  public static double highFrequency(double ecWater, double eceOfNoYield) {
    return ecWater / (2 * eceOfNoYield);
  }

  /** Most ECw (dS/m) whose conventional requirement is still {@code lr}: 5 ECe LR / (1 + LR). */
  public static double waterFor(double lr, double tolerableEce) {
    return 5 * tolerableEce * lr / (1 + lr);
  }
}
