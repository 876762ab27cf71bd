package fieldsalt.basis.site;

import fieldsalt.basis.depth.FieldDepth;
import java.util.List;

/**
 * Readings brought to the root zone.
 *
 * @param readings for the surface
 * @param fields what depth they stand for, by field name
 */
public record RootZoneReadings(SiteReadings readings, List<FieldDepth> fields) {
  public RootZoneReadings {
    fields = List.copyOf(fields);
  }
}
