package fieldsalt.handover.input;

import fieldsalt.handover.table.Feature;
import fieldsalt.handover.table.Rounding;
import fieldsalt.zones.field.Zone;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A zone and its figures.
 *
 * @param zone its shape in metres
 * @param properties further figures in the order in which files list them, e.g. {@code ece_dS_m};
 *     {@code field}, {@code zone}, {@code class} and {@code area_ha} are added in front
 * @param classes how many classes its field's scheme has: the ramp is spread over them
 * @param marked whether a second criterion sets it apart (sodic, say): dotted over its colour
 */
public record ZoneFeature(Zone zone, Map<String, Object> properties, int classes, boolean marked) {
  public ZoneFeature {
    properties = new LinkedHashMap<>(properties);
    if (zone.klass() < 0 || zone.klass() >= classes) {
      throw new IllegalArgumentException(
          "class " + zone.klass() + " is not one of " + classes + " classes");
    }
  }

  /** Without a second criterion. */
  public ZoneFeature(Zone zone, Map<String, Object> properties, int classes) {
    this(zone, properties, classes, false);
  }

  /** The colour of its class. */
  public String colour() {
    return Palette.classes(classes).get(zone.klass());
  }

  public Feature feature() {
    Map<String, Object> all = new LinkedHashMap<>();
    all.put("field", zone.field());
    all.put("zone", zone.name());
    all.put("class", zone.label());
    all.put("area_ha", Rounding.decimals(zone.areaHa(), 4));
    properties.forEach(all::putIfAbsent);
    return new Feature(zone.shapeM(), all);
  }
}
