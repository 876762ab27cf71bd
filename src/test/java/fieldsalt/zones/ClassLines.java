package fieldsalt.zones;

import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.zones.field.Zone;
import fieldsalt.zones.field.ZoneQuality;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * The lines on which a map crosses its class limits, cell by cell: ln ECe is linear along the edges
 * between cell centres, and a square between four of them is cut from edge to edge. And how far
 * boundaries of zones lie from them where no ground changed its class.
 */
final class ClassLines {
  private final SurfaceMap map;
  private final RandomCase given;
  private final STRtree index = new STRtree();
  private final double cellM;

  ClassLines(SurfaceMap map, RandomCase given) {
    this.map = map;
    this.given = given;
    cellM = map.grid().cellM();
    for (double limit : given.scheme().breaks()) {
      for (int row = 0; row + 1 < map.grid().rows(); row++) {
        for (int column = 0; column + 1 < map.grid().columns(); column++) {
          square(row, column, Math.log(limit));
        }
      }
    }
  }

  private double ln(int row, int column) {
    return Math.log(map.median()[row * map.grid().columns() + column]);
  }

  private void square(int row, int column, double limit) {
    List<Coordinate> crossings = new ArrayList<>();
    crossing(row, column, row, column + 1, limit, crossings);
    crossing(row, column + 1, row + 1, column + 1, limit, crossings);
    crossing(row + 1, column + 1, row + 1, column, limit, crossings);
    crossing(row + 1, column, row, column, limit, crossings);
    for (int i = 0; i < crossings.size(); i++) {
      for (int j = i + 1; j < crossings.size(); j++) {
        LineSegment piece = new LineSegment(crossings.get(i), crossings.get(j));
        index.insert(new Envelope(piece.p0, piece.p1), piece);
      }
    }
  }

  private void crossing(int r0, int c0, int r1, int c1, double limit, List<Coordinate> found) {
    double a = ln(r0, c0);
    double b = ln(r1, c1);
    if (a < limit != b < limit && Double.isFinite(a) && Double.isFinite(b)) {
      double t = (limit - a) / (b - a);
      double x = map.grid().centreX(c0);
      double y = map.grid().centreY(r0);
      found.add(
          new Coordinate(
              x + t * (map.grid().centreX(c1) - x), y + t * (map.grid().centreY(r1) - y)));
    }
  }

  private double distance(Coordinate place) {
    Envelope box = new Envelope(place);
    box.expandBy(3 * cellM);
    double least = 3 * cellM;
    for (Object found : index.query(box)) {
      least = Math.min(least, ((LineSegment) found).distance(place));
    }
    return least;
  }

  /**
   * Distances, in cells, from the nearest class line of places along the boundaries between zones:
   * of those around which, two cells each way, every cell lies in the field.
   *
   * @param anyClass whether such a cell may have another class than its zone; else places near one
   *     are left out, as near ground that was joined to a neighbour
   */
  List<Double> distances(List<Zone> zones, boolean anyClass) {
    ZoneQuality where = new ZoneQuality(zones);
    List<Double> distances = new ArrayList<>();
    for (int a = 0; a < zones.size(); a++) {
      for (int b = a + 1; b < zones.size(); b++) {
        Geometry shared = shared(zones.get(a).shapeM(), zones.get(b).shapeM());
        for (Coordinate place : places(shared)) {
          if (isUnmerged(place, where, zones, anyClass)) {
            distances.add(distance(place) / cellM);
          }
        }
      }
    }
    return distances;
  }

  private static Geometry shared(Geometry a, Geometry b) {
    return a.getEnvelopeInternal().intersects(b.getEnvelopeInternal())
        ? a.getBoundary().intersection(b.getBoundary())
        : a.getFactory().createLineString();
  }

  /** Middles of the straight pieces. */
  private static List<Coordinate> places(Geometry lines) {
    List<Coordinate> places = new ArrayList<>();
    for (int g = 0; g < lines.getNumGeometries(); g++) {
      Coordinate[] c = lines.getGeometryN(g).getCoordinates();
      for (int i = 1; i < c.length; i++) {
        places.add(LineSegment.midPoint(c[i - 1], c[i]));
      }
    }
    return places;
  }

  private boolean isUnmerged(
      Coordinate place, ZoneQuality where, List<Zone> zones, boolean anyClass) {
    int column = (int) Math.floor((place.x - map.grid().centreX(0)) / cellM);
    int row = (int) Math.floor((map.grid().centreY(0) - place.y) / cellM);
    for (int r = row - 1; r <= row + 2; r++) {
      for (int c = column - 1; c <= column + 2; c++) {
        if (r < 0 || c < 0 || r >= map.grid().rows() || c >= map.grid().columns()) {
          return false;
        }
        if (!isKept(r, c, where, zones, anyClass)) {
          return false;
        }
      }
    }
    return true;
  }

  private boolean isKept(
      int row, int column, ZoneQuality where, List<Zone> zones, boolean anyClass) {
    int cell = row * map.grid().columns() + column;
    int zone = where.zoneAt(map.grid().centreX(column), map.grid().centreY(row));
    return zone >= 0
        && map.fieldOf()[cell] >= 0
        && (anyClass || zones.get(zone).klass() == given.scheme().classOf(map.median()[cell]));
  }
}
