package fieldsalt.report.draw;

import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.simplify.DouglasPeuckerSimplifier;

/**
 * A map's frame: metres of the ranch to the units of a drawing, north up.
 *
 * @param westM of the left edge
 * @param northM of the upper edge
 * @param perM units of the drawing a metre
 */
public record Frame(double westM, double northM, double perM, double width, double height) {
  private static final double WIDTH = 720;
  private static final double TALLEST = 760;
  private static final double MARGIN = 34;

  /** Shapes in the middle, as large as they go. */
  public static Frame around(List<Geometry> shapesM) {
    Envelope box = new Envelope();
    shapesM.forEach(g -> box.expandToInclude(g.getEnvelopeInternal()));
    double across = Math.max(box.getWidth(), 1);
    double up = Math.max(box.getHeight(), 1);
    double perM = Math.min((WIDTH - 2 * MARGIN) / across, (TALLEST - 2 * MARGIN) / up);
    double height = Math.max(200, up * perM + 2 * MARGIN);
    double westM = box.centre().x - WIDTH / 2 / perM;
    double northM = box.centre().y + height / 2 / perM;
    return new Frame(westM, northM, perM, WIDTH, height);
  }

  public double x(double xM) {
    return (xM - westM) * perM;
  }

  public double y(double yM) {
    return (northM - yM) * perM;
  }

  /** A polygon or multipolygon as path data; what is finer than the screen is left out. */
  public String path(Geometry shapeM) {
    Geometry coarse = DouglasPeuckerSimplifier.simplify(shapeM, 0.2 / perM);
    StringBuilder path = new StringBuilder();
    for (int i = 0; i < coarse.getNumGeometries(); i++) {
      if (coarse.getGeometryN(i) instanceof Polygon polygon) {
        rings(path, polygon);
      }
    }
    return path.toString();
  }

  private void rings(StringBuilder path, Polygon polygon) {
    ring(path, polygon.getExteriorRing().getCoordinates());
    for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
      ring(path, polygon.getInteriorRingN(i).getCoordinates());
    }
  }

  private void ring(StringBuilder path, Coordinate[] ring) {
    for (int i = 0; i < ring.length - 1; i++) {
      path.append(i == 0 ? 'M' : 'L').append(place(ring[i].x, ring[i].y));
    }
    path.append('Z');
  }

  private String place(double xM, double yM) {
    return Chart.number(x(xM)) + " " + Chart.number(y(yM));
  }
}
