package fieldsalt.pipeline;

import fieldsalt.basis.Basis;
import fieldsalt.basis.property.SoilProperty;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.InputProblem;
import fieldsalt.plan.soil.SampledProperty;
import fieldsalt.quantity.DepthRange;
import fieldsalt.surface.Surface;
import fieldsalt.surface.SurfaceFitter;
import fieldsalt.surface.choice.SurfaceSettings;
import java.util.Optional;

/** Properties of the layer that gypsum would treat, each with its surface. */
final class TreatedLayer {
  private TreatedLayer() {}

  /** Readings of the property and their surface; empty where nothing was measured. */
  static Optional<SampledProperty> property(Prepared prepared, SoilProperty which) {
    return property(prepared, which, StageSettings.surface(prepared.job()));
  }

  /** The same with a surface whose cells are given. */
  static Optional<SampledProperty> property(
      Prepared prepared, SoilProperty which, SurfaceSettings settings) {
    DepthRange layer = new DepthRange(0, prepared.job().amount("gypsum.depth-cm"));
    SiteReadings readings =
        Basis.property(prepared.ranch().samples(), prepared.basis(), which, layer);
    return readings.rows().isEmpty()
        ? Optional.empty()
        : Optional.of(new SampledProperty(readings, fitted(prepared, readings, settings)));
  }

  /** A surface of these readings; empty where no field has sites enough for one. */
  static Optional<Surface> fitted(Prepared prepared, SiteReadings readings) {
    return fitted(prepared, readings, StageSettings.surface(prepared.job()));
  }

  private static Optional<Surface> fitted(
      Prepared prepared, SiteReadings readings, SurfaceSettings settings) {
    try {
      return Optional.of(SurfaceFitter.fit(readings, prepared.ranch().fields(), settings));
    } catch (InputProblem e) {
      return Optional.empty();
    }
  }
}
