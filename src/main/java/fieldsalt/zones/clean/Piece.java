package fieldsalt.zones.clean;

import org.locationtech.jts.geom.Geometry;

/**
 * A zone before it has a name.
 *
 * @param klass combined class
 * @param value mean of ln ECe over it (or of the value itself on a natural scale)
 */
public record Piece(Geometry shape, int klass, double value) {}
