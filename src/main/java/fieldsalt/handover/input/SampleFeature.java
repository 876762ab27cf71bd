package fieldsalt.handover.input;

import fieldsalt.geo.PlaceM;
import fieldsalt.handover.table.Feature;
import java.util.LinkedHashMap;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * A sampled site and what was made of its readings.
 *
 * @param properties further figures in the order in which files list them, e.g. {@code ece_dS_m};
 *     {@code id} and {@code field} are added in front
 */
public record SampleFeature(String id, String field, PlaceM place, Map<String, Object> properties) {
  public SampleFeature {
    properties = new LinkedHashMap<>(properties);
  }

  public Feature feature() {
    Map<String, Object> all = new LinkedHashMap<>();
    all.put("id", id);
    all.put("field", field);
    properties.forEach(all::putIfAbsent);
    return new Feature(
        new GeometryFactory().createPoint(new Coordinate(place.xM(), place.yM())), all);
  }
}
