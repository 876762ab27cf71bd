package fieldsalt.plan.leaching;

import fieldsalt.facts.BoronTolerance;
import fieldsalt.facts.Hoffman1980;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.soil.FieldGround;
import java.util.Optional;

/**
 * Boron of a field's saturation extract against what its crop stands.
 *
 * @param foundMgL mean of the field
 * @param limitMgL that the crop stands
 * @param leftMgL that this water alone leaves
 * @param leachingMm water that brings it to the limit over the depth to reclaim; 0 where none helps
 *     or is needed
 */
public record BoronNeed(
    Status status, double foundMgL, double limitMgL, double leftMgL, double leachingMm) {
  /** What came of it. */
  public enum Status {
    FINE,
    LEACH,
    /** The water itself keeps the soil above the limit. */
    OUT_OF_REACH
  }

  /** Empty where boron was not measured or the crop's tolerance is not published. */
  public static Optional<BoronNeed> of(FieldGround field, PlanSettings settings) {
    Optional<BoronTolerance> tolerance = field.crop().flatMap(BoronTolerance::of);
    return tolerance.isEmpty() || field.soil().boronMgL().isEmpty()
        ? Optional.empty()
        : Optional.of(
            of(
                field.soil().boronMgL().getAsDouble(),
                tolerance.get().highMgL(),
                settings.water().ions().boronMgL().orElse(0) / 2,
                ReclamationNeed.depthCm(field, settings) * 10));
  }

  private static BoronNeed of(double found, double limit, double left, double depthMm) {
    if (found <= limit || limit <= left) {
      return new BoronNeed(
          found <= limit ? Status.FINE : Status.OUT_OF_REACH, found, limit, left, 0);
    }
    double mm = Hoffman1980.depth(Hoffman1980.K_BORON, depthMm, found, limit, left);
    return new BoronNeed(Status.LEACH, found, limit, left, mm);
  }
}
