package fieldsalt.read.field;

import fieldsalt.quantity.Texture;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.locationtech.jts.geom.Geometry;

/**
 * A field: a valid polygon or multipolygon in metres (in degrees while it is being read).
 *
 * @param name unique within the ranch
 * @param crop as the file names it, if it does
 */
public record FieldBoundary(
    String name, Geometry shapeM, Optional<String> crop, Texture texture, OptionalDouble clayPct) {
  /** The same field, its shape in other coordinates. */
  public FieldBoundary moved(UnaryOperator<Geometry> change) {
    return new FieldBoundary(name, change.apply(shapeM), crop, texture, clayPct);
  }
}
