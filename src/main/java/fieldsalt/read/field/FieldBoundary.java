package fieldsalt.read.field;

import fieldsalt.quantity.Texture;
import java.util.Optional;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Geometry;

/**
 * A field: a valid polygon or multipolygon in metres.
 *
 * @param name unique within the ranch
 * @param crop as the file names it, if it does
 */
public record FieldBoundary(
    String name, Geometry shapeM, Optional<String> crop, Texture texture, OptionalDouble clayPct) {}
