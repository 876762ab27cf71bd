package fieldsalt.read.field;

import fieldsalt.quantity.Texture;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.locationtech.jts.geom.Geometry;

/**
 * A field: a valid polygon or multipolygon in metres (in degrees while it is being read).
 *
 * @param name unique within the ranch
 * @param crop as the file names it, if it does
 * @param settings keys of the job that the file says for this field, with their values as text
 */
public record FieldBoundary(
    String name,
    Geometry shapeM,
    Optional<String> crop,
    Texture texture,
    OptionalDouble clayPct,
    Map<String, String> settings) {
  public FieldBoundary {
    settings = Map.copyOf(settings);
  }

  /** A field of which the file says nothing else. */
  public FieldBoundary(
      String name,
      Geometry shapeM,
      Optional<String> crop,
      Texture texture,
      OptionalDouble clayPct) {
    this(name, shapeM, crop, texture, clayPct, Map.of());
  }

  /** The same field with another soil. */
  FieldBoundary withSoil(Texture otherTexture, OptionalDouble otherClayPct) {
    return new FieldBoundary(name, shapeM, crop, otherTexture, otherClayPct, settings);
  }

  /** The same field, its shape in other coordinates. */
  public FieldBoundary moved(UnaryOperator<Geometry> change) {
    return new FieldBoundary(name, change.apply(shapeM), crop, texture, clayPct, settings);
  }
}
