package fieldsalt.read.file;

import fieldsalt.finding.InputProblem;
import java.util.Arrays;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;

/** Rings of boundaries: an open one is closed; fewer than three corners are refused. */
final class Rings {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private Rings() {}

  static LinearRing ring(Coordinate[] points, String where) {
    Coordinate[] closed = points;
    if (!points[0].equals2D(points[points.length - 1])) {
      closed = Arrays.copyOf(points, points.length + 1);
      closed[points.length] = new Coordinate(points[0]);
    }
    if (closed.length < 4 || Arrays.stream(closed).distinct().count() < 3) {
      throw new InputProblem(
          where,
          "a ring of fewer than three different corners",
          "a boundary that encloses ground",
          "Draw the boundary again.");
    }
    return FACTORY.createLinearRing(closed);
  }
}
