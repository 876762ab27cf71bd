package fieldsalt.zones.degree;

import fieldsalt.zones.clean.PartZoner;
import fieldsalt.zones.line.Straight;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * Rounds places to a grid of degrees. A place that zones added to the field's boundary is put on
 * the straight line between the boundary's own rounded vertices, at a place near it where the grid
 * comes closest to that line; where no place near it is on the line, the next places that are
 * become vertices too, so that rounding takes next to nothing from the field.
 */
final class BoundaryRounding {
  /** Grid steps that a vertex may be slid along the boundary. */
  private static final int MOST_STEPS = 24;

  /** Grid steps from a vertex within which the boundary is brought back to its straight line. */
  private static final int MOST_STEPS_BACK = 4_000;

  /** Grid steps from the line within which a place counts as on it. */
  private static final double ON_LINE = 0.02;

  /** Metres from an edge within which a vertex counts as on it. */
  private static final double NEAR_M = 1e-3;

  private final LonLatZones.ToLonLat toLonLat;
  private final double perDegree;
  private final Map<Coordinate, Coordinate> placed = new HashMap<>();
  private final List<LineSegment> edges = new ArrayList<>();
  private final STRtree index = new STRtree();
  private final TreeMap<Integer, List<Coordinate>> addedByEdge = new TreeMap<>();
  private final Map<Coordinate, Integer> edgeOfAdded = new HashMap<>();

  BoundaryRounding(Geometry field, LonLatZones.ToLonLat toLonLat, double perDegree) {
    this.toLonLat = toLonLat;
    this.perDegree = perDegree;
    for (int g = 0; g < field.getNumGeometries(); g++) {
      Polygon polygon = (Polygon) field.getGeometryN(g);
      ring(polygon.getExteriorRing());
      for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
        ring(polygon.getInteriorRingN(h));
      }
    }
  }

  private void ring(LinearRing ring) {
    Coordinate[] c = ring.getCoordinates();
    for (int i = 1; i < c.length; i++) {
      placed.put(onGrid(c[i]), toDegrees(c[i]));
      LineSegment edge = new LineSegment(c[i - 1], c[i]);
      edge.normalize();
      index.insert(new Envelope(edge.p0, edge.p1), edges.size());
      edges.add(edge);
    }
  }

  double perDegree() {
    return perDegree;
  }

  /** As the vertices of zones are: whole micrometres. */
  private static Coordinate onGrid(Coordinate c) {
    return new Coordinate(
        Math.rint(c.x * PartZoner.PER_METRE) / PartZoner.PER_METRE,
        Math.rint(c.y * PartZoner.PER_METRE) / PartZoner.PER_METRE);
  }

  private Coordinate toDegrees(Coordinate metres) {
    double[] lonLat = toLonLat.lonLat(metres.x, metres.y);
    return new Coordinate(grid(lonLat[0]), grid(lonLat[1]));
  }

  private double grid(double degrees) {
    return Math.round(degrees * perDegree) / perDegree;
  }

  /** Tells that a vertex of a zone lies on the field's boundary. */
  void onBoundary(Coordinate vertex) {
    if (placed.containsKey(onGrid(vertex)) || placed.containsKey(vertex)) {
      return;
    }
    Envelope box = new Envelope(vertex);
    box.expandBy(NEAR_M);
    int nearest = -1;
    for (Object found : index.query(box)) {
      int edge = (Integer) found;
      if (nearest < 0 || isNearer(vertex, edge, nearest)) {
        nearest = edge;
      }
    }
    if (nearest >= 0) {
      List<Coordinate> added = addedByEdge.computeIfAbsent(nearest, k -> new ArrayList<>());
      if (edgeOfAdded.putIfAbsent(vertex, nearest) == null) {
        added.add(vertex);
      }
    }
  }

  private boolean isNearer(Coordinate vertex, int edge, int than) {
    double a = edges.get(edge).distance(vertex);
    double b = edges.get(than).distance(vertex);
    return a < b || (a == b && edge < than);
  }

  /** Finds places for all vertices that were added to the boundary. */
  void settle() {
    addedByEdge.forEach((edge, added) -> settle(edges.get(edge), added));
  }

  private void settle(LineSegment edge, List<Coordinate> added) {
    added.sort((a, b) -> Double.compare(edge.p0.distance(a), edge.p0.distance(b)));
    Coordinate from = toDegrees(edge.p0);
    Coordinate to = toDegrees(edge.p1);
    double length = edge.getLength();
    double steps = Math.max(Math.abs(to.x - from.x), Math.abs(to.y - from.y)) * perDegree;
    for (int i = 0; i < added.size(); i++) {
      double at = edge.p0.distance(added.get(i)) / length;
      double before = i == 0 ? 0 : edge.p0.distance(added.get(i - 1)) / length;
      double after = i + 1 == added.size() ? 1 : edge.p0.distance(added.get(i + 1)) / length;
      int free = (int) Math.min(MOST_STEPS, Math.min(at - before, after - at) * steps / 3);
      placed.put(added.get(i), bestNear(from, to, at, free));
    }
  }

  /** The grid place nearest to the line within some steps along it, the nearer one of equals. */
  private Coordinate bestNear(Coordinate from, Coordinate to, double at, int free) {
    Straight line = new Straight(from, to, perDegree);
    double middle = line.step(at);
    double best = middle;
    double least = Double.POSITIVE_INFINITY;
    for (int k = -free; k <= free; k++) {
      double off = line.off(middle + k) + 1e-4 * Math.abs(k);
      if (off < least) {
        least = off;
        best = middle + k;
      }
    }
    return line.place(best);
  }

  /**
   * Vertices that bring the boundary back to its straight line between two vertices of zones that
   * follow one another on it.
   *
   * @return none to two places in degrees, in the order from the first to the second vertex
   */
  List<Coordinate> between(Coordinate firstM, Coordinate secondM) {
    Integer edge = edgeOfAdded.getOrDefault(firstM, edgeOfAdded.get(secondM));
    if (edge == null) {
      return List.of();
    }
    LineSegment metres = edges.get(edge);
    if (metres.distance(firstM) > NEAR_M || metres.distance(secondM) > NEAR_M) {
      return List.of();
    }
    Straight line = new Straight(toDegrees(metres.p0), toDegrees(metres.p1), perDegree);
    double first = line.stepOf(place(firstM));
    double second = line.stepOf(place(secondM));
    List<Coordinate> back = new ArrayList<>();
    OptionalDouble near = line.nextOn(first, second, MOST_STEPS_BACK, ON_LINE);
    near.ifPresent(step -> back.add(line.place(step)));
    double start = near.orElse(first);
    line.nextOn(second, start, MOST_STEPS_BACK, ON_LINE)
        .ifPresent(step -> back.add(line.place(step)));
    return back;
  }

  /** Where a vertex of a zone goes, degrees. */
  Coordinate place(Coordinate metres) {
    return placed.computeIfAbsent(metres, this::toDegrees);
  }
}
