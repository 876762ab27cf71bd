package fieldsalt.plan.leaching;

import fieldsalt.basis.depth.RootZone;
import fieldsalt.basis.depth.Uptake;
import java.util.OptionalDouble;

/** The depth to reclaim: 0.60 m under shallow roots, else 0.90 m (common practice, no source). */
public final class ReclaimedDepth {
  private static final double SHALLOW_ROOTS_CM = 60;
  private static final double SHALLOW_CM = 60;
  private static final double DEEP_CM = 90;

  private ReclaimedDepth() {}

  /**
   * The layer over which salt is averaged for reclamation.
   *
   * @param givenCm what the job says
   * @param roots of the crop
   */
  public static RootZone of(OptionalDouble givenCm, RootZone roots) {
    double usual = roots.depthCm() < SHALLOW_ROOTS_CM ? SHALLOW_CM : DEEP_CM;
    return new RootZone(givenCm.orElse(usual), Uptake.UNIFORM);
  }
}
