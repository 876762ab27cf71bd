package fieldsalt.plan.soil;

import fieldsalt.basis.depth.ProfileShape;
import fieldsalt.finding.Finding;
import java.util.List;
import java.util.OptionalDouble;

/**
 * How firmly the map of a field stands: what the earlier stages found.
 *
 * @param sites with ECe
 * @param noBetterThanMean leave-one-out found nothing better than the field's mean
 * @param topsoilOnly under half of the root zone was sampled
 * @param seedbedEce mean ECe of the top 15 cm, dS/m, where known
 * @param sodiumUncorrected exchangeable sodium without its soluble part deducted on salty soil, or
 *     SAR from an extract other than the paste, or a cation sum that does not fit the EC
 * @param undermining findings that make the plan a draft
 */
public record FieldEvidence(
    int sites,
    boolean noBetterThanMean,
    boolean topsoilOnly,
    ProfileShape profile,
    OptionalDouble seedbedEce,
    boolean sodiumUncorrected,
    List<Finding> undermining) {
  /** Fewer sites than this make the plan a draft. */
  public static final int FEW_SITES = 10;

  public FieldEvidence {
    undermining = List.copyOf(undermining);
  }

  /** A field whose map stands. */
  public static FieldEvidence firm(int sites) {
    return new FieldEvidence(
        sites, false, false, ProfileShape.UNKNOWN, OptionalDouble.empty(), false, List.of());
  }
}
