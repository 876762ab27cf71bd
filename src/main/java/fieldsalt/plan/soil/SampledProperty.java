package fieldsalt.plan.soil;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.surface.Surface;
import java.util.Optional;

/**
 * A soil property of the treated layer (SAR, ESP, CEC or bulk density): its readings by site, and
 * the surface fitted to them where there was one to fit.
 */
public record SampledProperty(SiteReadings readings, Optional<Surface> surface) {
  /** Sites that a field needs for the surface to speak of it. */
  static final int SITES_FOR_SURFACE = 3;

  /** Sites of the field at which the property is known. */
  public int sitesIn(String field) {
    return (int) readings.sites().stream().filter(s -> s.field().equals(field)).count();
  }

  boolean mapped(String field) {
    return surface.isPresent() && sitesIn(field) >= SITES_FOR_SURFACE;
  }
}
