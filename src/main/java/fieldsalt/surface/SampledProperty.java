package fieldsalt.surface;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.InputProblem;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.choice.SurfaceSettings;
import java.util.List;
import java.util.Optional;

/**
 * A soil property besides salinity: its readings by site, and the surface fitted to them where
 * there was one to fit.
 */
public record SampledProperty(SiteReadings readings, Optional<Surface> surface) {
  /** Sites that a field needs for the surface to speak of it. */
  private static final int SITES_FOR_SURFACE = 3;

  /** Readings with their surface; empty where nothing was measured. */
  public static Optional<SampledProperty> fit(
      SiteReadings readings, List<FieldBoundary> fields, SurfaceSettings settings) {
    return readings.rows().isEmpty()
        ? Optional.empty()
        : Optional.of(new SampledProperty(readings, fitted(readings, fields, settings)));
  }

  private static Optional<Surface> fitted(
      SiteReadings readings, List<FieldBoundary> fields, SurfaceSettings settings) {
    try {
      return Optional.of(SurfaceFitter.fit(readings, fields, settings));
    } catch (InputProblem noFieldHasSitesEnough) {
      return Optional.empty();
    }
  }

  /** Sites of the field at which the property is known. */
  public int sitesIn(String field) {
    return (int) readings.sites().stream().filter(s -> s.field().equals(field)).count();
  }

  /** Whether the surface speaks of a field. */
  public boolean mapped(String field) {
    return surface.isPresent() && sitesIn(field) >= SITES_FOR_SURFACE;
  }
}
