package fieldsalt.surface;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.InputProblem;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.choice.SurfaceSettings;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** A soil property besides salinity: its readings by site, and the surface fitted to them. */
public final class SampledProperty {
  /** Sites that a field needs for the surface to speak of it. */
  private static final int SITES_FOR_SURFACE = 3;

  private final SiteReadings readings;
  private final Optional<Surface> surface;
  private final Map<String, Long> sites;
  private final Map<String, List<SiteReadings.Row>> rows;

  /**
   * @param surface empty where there was none to fit
   */
  public SampledProperty(SiteReadings readings, Optional<Surface> surface) {
    this.readings = readings;
    this.surface = surface;
    sites =
        readings.sites().stream()
            .collect(Collectors.groupingBy(SiteReadings.Site::field, Collectors.counting()));
    rows =
        readings.rows().stream()
            .collect(Collectors.groupingBy(r -> readings.sites().get(r.site()).field()));
  }

  public SiteReadings readings() {
    return readings;
  }

  public Optional<Surface> surface() {
    return surface;
  }

  /** Rows of a field, in their order. */
  public List<SiteReadings.Row> rowsIn(String field) {
    return rows.getOrDefault(field, List.of());
  }

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
    return sites.getOrDefault(field, 0L).intValue();
  }

  /** Whether the surface speaks of a field. */
  public boolean mapped(String field) {
    return surface.isPresent() && sitesIn(field) >= SITES_FOR_SURFACE;
  }
}
