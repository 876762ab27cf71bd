package fieldsalt.plan.setting;

import fieldsalt.facts.Hoffman1980.Application;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Leaching: the yearly requirement and the one-off reclamation.
 *
 * @param targetEce dS/m to reclaim to; ECe of 90 % yield of the crop where empty
 * @param depthCm to reclaim; 60 cm for shallow-rooted crops and 90 cm for others where empty
 * @param application how water is put on to reclaim; follows the irrigation where empty
 * @param tolerableYieldPct yield whose ECe counts as tolerable in the leaching requirement, percent
 */
public record LeachingSettings(
    OptionalDouble targetEce,
    OptionalDouble depthCm,
    Optional<Application> application,
    double tolerableYieldPct) {
  public static LeachingSettings defaults() {
    return new LeachingSettings(
        OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty(), 90);
  }

  /** As set, else ponding for surface irrigation and sprinkling for the others. */
  public Application applicationFor(Irrigation irrigation) {
    Application usual =
        irrigation == Irrigation.SURFACE ? Application.PONDING : Application.SPRINKLING;
    return application.orElse(usual);
  }
}
