package fieldsalt.handover.table;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import org.locationtech.jts.geom.Geometry;

/**
 * One row of a layer: a shape and its properties in the order in which files list them.
 *
 * @param shape in the layer's system
 * @param properties name to text, number, truth value or null; a number that is not finite is
 *     written as null
 */
public record Feature(Geometry shape, Map<String, Object> properties) {
  public Feature {
    properties = Collections.unmodifiableMap(new LinkedHashMap<>(properties));
  }

  public Feature withShape(Geometry other) {
    return new Feature(other, properties);
  }
}
