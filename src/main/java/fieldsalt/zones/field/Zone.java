package fieldsalt.zones.field;

import org.locationtech.jts.geom.Geometry;

/**
 * A zone: a valid polygon or multipolygon in metres, part of a coverage of its field.
 *
 * @param name stable and unique in the ranch, e.g. {@code north-2}
 * @param klass index of its class in the field's scheme
 * @param label of that class
 */
public record Zone(String name, String field, int klass, String label, Geometry shapeM) {
  public double areaHa() {
    return shapeM.getArea() / 10_000;
  }
}
