package fieldsalt.zones.field;

import fieldsalt.geo.PlaceM;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;

/**
 * Points that stand for an area when its mean is worked out: a square lattice over it, the same
 * whatever the cell size of the map.
 */
public final class ZonePoints {
  private static final double WIDER = 1.02;

  private ZonePoints() {}

  /**
   * Points spread evenly over an area.
   *
   * @param areaM polygon or multipolygon in metres, not empty
   * @param most at least 1
   * @return at least one point, at most {@code most}, from south-west to north-east
   */
  public static List<PlaceM> spread(Geometry areaM, int most) {
    IndexedPointInAreaLocator locator = new IndexedPointInAreaLocator(areaM);
    Envelope box = areaM.getEnvelopeInternal();
    double stepM = Math.sqrt(areaM.getArea() / most);
    List<PlaceM> points = lattice(box, locator, stepM);
    while (points.size() > most) {
      stepM *= WIDER;
      points = lattice(box, locator, stepM);
    }
    return points.isEmpty() ? List.of(inside(areaM)) : points;
  }

  private static List<PlaceM> lattice(
      Envelope box, IndexedPointInAreaLocator locator, double stepM) {
    List<PlaceM> points = new ArrayList<>();
    for (double y = first(box.getMinY(), box.getHeight(), stepM); y < box.getMaxY(); y += stepM) {
      for (double x = first(box.getMinX(), box.getWidth(), stepM); x < box.getMaxX(); x += stepM) {
        if (locator.locate(new Coordinate(x, y)) == Location.INTERIOR) {
          points.add(new PlaceM(x, y));
        }
      }
    }
    return points;
  }

  /** The lattice sits in the middle of the box. */
  private static double first(double from, double length, double stepM) {
    double steps = Math.max(1, Math.ceil(length / stepM));
    return from + (length - (steps - 1) * stepM) / 2;
  }

  private static PlaceM inside(Geometry areaM) {
    Coordinate c = areaM.getInteriorPoint().getCoordinate();
    return new PlaceM(c.x, c.y);
  }
}
