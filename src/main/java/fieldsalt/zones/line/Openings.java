package fieldsalt.zones.line;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/**
 * Measures on finished polygons what the lattice can only judge to a fraction of a step: how much
 * of a zone lies farther than half the machine's width from its own opening by that half width, and
 * not where the part of the field is narrower itself.
 */
public final class Openings {
  /** Share of a zone that may be narrow; a hair below one hundredth. */
  static final double NARROW_SHARE = 0.0095;

  private static final int QUADRANT_SEGMENTS = 16;
  private static final double TOUCH_M = 0.01;

  private final Polygon part;
  private final double radiusM;
  private Optional<Geometry> narrowPart = Optional.empty();

  public Openings(Polygon part, double minWidthM) {
    this.part = part;
    radiusM = minWidthM / 2;
  }

  /**
   * What must go for a zone to be wide enough: all of it outside its opening that hangs together
   * with what is too far from the opening.
   *
   * @return an area, empty if the zone is wide enough
   */
  public Geometry tooNarrow(Geometry zone) {
    Geometry opening = opening(zone);
    Geometry far = zone.difference(opening.buffer(radiusM, QUADRANT_SEGMENTS));
    if (far.getArea() <= NARROW_SHARE * zone.getArea()) {
      return nothing();
    }
    Geometry matters = far.difference(narrowPart());
    return matters.getArea() <= NARROW_SHARE * zone.getArea()
        ? nothing()
        : touching(zone.difference(opening), matters);
  }

  private static Geometry touching(Geometry lost, Geometry far) {
    List<Polygon> polygons = new ArrayList<>();
    for (int g = 0; g < lost.getNumGeometries(); g++) {
      if (lost.getGeometryN(g) instanceof Polygon polygon && polygon.intersects(far)) {
        polygons.add(polygon);
      }
    }
    return new GeometryFactory().createMultiPolygon(polygons.toArray(Polygon[]::new));
  }

  private Geometry nothing() {
    return part.getFactory().createPolygon();
  }

  private Geometry opening(Geometry shape) {
    return shape.buffer(-radiusM, QUADRANT_SEGMENTS).buffer(radiusM, QUADRANT_SEGMENTS);
  }

  private Geometry narrowPart() {
    if (narrowPart.isEmpty()) {
      narrowPart = Optional.of(part.difference(opening(part)).buffer(TOUCH_M));
    }
    return narrowPart.get();
  }
}
