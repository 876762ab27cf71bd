package fieldsalt.pipeline;

import fieldsalt.basis.property.SoilProperty;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.quantity.DepthRange;
import fieldsalt.surface.SampledProperty;
import fieldsalt.surface.choice.SurfaceSettings;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * Properties of the layer that gypsum would treat, each fitted once, when it is first asked for.
 */
final class SoilSurfaces {
  private final Prepared prepared;
  private final SurfaceSettings settings;
  private final Map<SoilProperty, Optional<SampledProperty>> fitted =
      new EnumMap<>(SoilProperty.class);

  /**
   * @param settings with the cells of the map that they are set against
   */
  SoilSurfaces(Prepared prepared, SurfaceSettings settings) {
    this.prepared = prepared;
    this.settings = settings;
  }

  /** Readings of the property and their surface; empty where nothing was measured. */
  Optional<SampledProperty> of(SoilProperty which) {
    return fitted.computeIfAbsent(which, this::fit);
  }

  private Optional<SampledProperty> fit(SoilProperty which) {
    SiteReadings readings =
        prepared.basis().property(which, field -> new DepthRange(0, prepared.treatedCm(field)));
    return SampledProperty.fit(readings, prepared.ranch().fields(), settings);
  }
}
