package fieldsalt.plan.setting;

import fieldsalt.facts.GypsumStoichiometry;
import java.util.OptionalDouble;

/**
 * Gypsum: what to reach and what the product is.
 *
 * @param targetEspPct exchangeable sodium percentage to reach
 * @param depthCm layer to treat, cm
 * @param purityPct of the product; amounts are of pure gypsum where empty
 * @param moisturePct water in percent of the moist product
 * @param capTPerHa most product in one pass, worked in
 * @param minTPerHa smallest product rate worth a pass
 * @param lime free lime in the soil
 */
public record GypsumSettings(
    double targetEspPct,
    double depthCm,
    OptionalDouble purityPct,
    double moisturePct,
    double capTPerHa,
    double minTPerHa,
    Lime lime) {
  /** Most product in one pass left on the surface, t/ha (common practice). */
  public static final double SURFACE_CAP_T_HA = 5;

  /** What is known of free lime. */
  public enum Lime {
    YES,
    NO,
    UNKNOWN
  }

  /** Layer whose requirement stands beside that of the layer to treat, cm. */
  public double otherDepthCm() {
    return depthCm < 30 ? 30 : 15;
  }

  /** Product that holds one tonne of pure gypsum; empty where the purity is not given. */
  public OptionalDouble productPerPure() {
    return purityPct.isPresent()
        ? OptionalDouble.of(GypsumStoichiometry.product(1, purityPct.getAsDouble(), moisturePct))
        : OptionalDouble.empty();
  }

  public static GypsumSettings defaults() {
    return new GypsumSettings(10, 15, OptionalDouble.empty(), 0, 10, 1, Lime.UNKNOWN);
  }
}
