package fieldsalt.plan.zone;

import fieldsalt.facts.GypsumStoichiometry;
import fieldsalt.plan.draw.Known;
import fieldsalt.plan.draw.Odds;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Gypsum in one zone. Rates in t/ha; of pure gypsum unless said.
 *
 * @param esp futures of the exchangeable sodium percentage; zeros where sodium is not known
 * @param chance that the zone needs gypsum at all: ESP at or above 15 (SAR 13), or from 6 where
 *     fine soil meets a water that seals it
 * @param pure requirement over all futures; zeros where it is not sized
 * @param middlePure of the futures in which any is needed; 0 where they are too few to act on
 * @param otherDepthPure the same over the layer that stands beside the one to treat
 * @param targetEspPct what is aimed at, never below what the water itself keeps
 * @param wantedProduct product that the plan asks for before the machine's steps; 0 where none
 * @param laboratoryRequirement the laboratory's own, where it gives one
 * @param sources where ESP, CEC and bulk density come from
 * @param sitesToMeasure sites at which sodium should be measured first, where it is not known
 */
public record GypsumPlan(
    Advice advice,
    Odds esp,
    double chance,
    Odds pure,
    double middlePure,
    double otherDepthPure,
    double targetEspPct,
    double wantedProduct,
    OptionalDouble productPerPure,
    OptionalDouble laboratoryRequirement,
    Sources sources,
    List<String> sitesToMeasure) {

  /** What is advised. */
  public enum Advice {
    RECOMMENDED("spread gypsum"),
    /** ESP 6 to 15 on fine soil with a water that seals it. */
    CONSIDER("consider gypsum: test a strip"),
    NOT_NEEDED("no gypsum"),
    /** The soil's own gypsum covers the requirement. */
    OWN_GYPSUM("no gypsum: the soil holds its own"),
    /** ESP is not above what can be reached. */
    AT_TARGET("no gypsum: sodium is already at what can be reached"),
    BELOW_SMALLEST("no gypsum: below the smallest useful rate"),
    /** Water cannot leave. */
    NO_DRAINAGE("no gypsum before there is drainage"),
    /** Prices say that it does not pay. */
    DOES_NOT_PAY("no gypsum: it does not pay at these prices"),
    /** Nothing on sodium is known. */
    MEASURE_SODIUM("measure sodium first"),
    /** Neither CEC nor texture is known. */
    MEASURE_CEC("measure CEC or texture first");

    private final String label;

    Advice(String label) {
      this.label = label;
    }

    public String label() {
      return label;
    }
  }

  /** Where the numbers come from. */
  public record Sources(Known esp, Known cec, Known bulkDensity) {}

  public GypsumPlan {
    sitesToMeasure = List.copyOf(sitesToMeasure);
  }

  /** Efficiency factor at the target. */
  public double factor() {
    return GypsumStoichiometry.factor(targetEspPct);
  }

  /** Water that dissolves the middle of the requirement, at most: in pure water. */
  public double waterToDissolveMm() {
    return middlePure * GypsumStoichiometry.DISSOLVING_MM_PER_T_HA;
  }

  /** Requirement as product, or as pure gypsum where the purity is not given. */
  public Odds product() {
    return pure.times(productPerPure.orElse(1));
  }

  /** Whether sodium and CEC are known, so that there is an amount, be it 0. */
  public boolean isSized() {
    return sources.esp().isKnown() && sources.cec().isKnown();
  }

  /** Whether nobody can say an amount before something is measured. */
  public boolean isUnknown() {
    return advice == Advice.MEASURE_SODIUM || advice == Advice.MEASURE_CEC;
  }

  /** Whether sodium asks for treatment, whatever stands in the way. */
  public boolean isSodic() {
    return switch (advice) {
      case NOT_NEEDED, CONSIDER, MEASURE_SODIUM -> false;
      case RECOMMENDED,
          OWN_GYPSUM,
          AT_TARGET,
          BELOW_SMALLEST,
          NO_DRAINAGE,
          DOES_NOT_PAY,
          MEASURE_CEC ->
          true;
    };
  }

  public GypsumPlan with(Advice other, double product) {
    return new GypsumPlan(
        other,
        esp,
        chance,
        pure,
        middlePure,
        otherDepthPure,
        targetEspPct,
        product,
        productPerPure,
        laboratoryRequirement,
        sources,
        sitesToMeasure);
  }
}
