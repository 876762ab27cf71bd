package fieldsalt.zones;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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
 * comes closest to that line: rounding then takes nothing from the field.
 */
final class BoundaryRounding {
  /** Grid steps that a vertex may be slid along the boundary. */
  private static final int MOST_STEPS = 24;

  private final LonLatZones.ToLonLat toLonLat;
  private final double perDegree;
  private final Map<Coordinate, Coordinate> placed = new HashMap<>();
  private final List<LineSegment> edges = new ArrayList<>();
  private final STRtree index = new STRtree();
  private final TreeMap<Integer, List<Coordinate>> addedByEdge = new TreeMap<>();

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
    box.expandBy(1e-3);
    int nearest = -1;
    for (Object found : index.query(box)) {
      int edge = (Integer) found;
      if (nearest < 0 || isNearer(vertex, edge, nearest)) {
        nearest = edge;
      }
    }
    if (nearest >= 0) {
      List<Coordinate> added = addedByEdge.computeIfAbsent(nearest, k -> new ArrayList<>());
      if (!added.contains(vertex)) {
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
    boolean byX = Math.abs(to.x - from.x) >= Math.abs(to.y - from.y);
    double start = byX ? from.x : from.y;
    double run = byX ? to.x - from.x : to.y - from.y;
    double other = byX ? from.y : from.x;
    double rise = byX ? to.y - from.y : to.x - from.x;
    double middle = Math.rint((start + at * run) * perDegree);
    Coordinate best = null;
    double least = Double.POSITIVE_INFINITY;
    for (int k = -free; k <= free; k++) {
      double along = (middle + k) / perDegree;
      double exact = run == 0 ? other : other + rise * (along - start) / run;
      double across = grid(exact);
      double off = Math.abs(across - exact) * perDegree + 1e-4 * Math.abs(k);
      if (off < least) {
        least = off;
        best = byX ? new Coordinate(along, across) : new Coordinate(across, along);
      }
    }
    return best;
  }

  /** Where a vertex of a zone goes, degrees. */
  Coordinate place(Coordinate metres) {
    return placed.computeIfAbsent(metres, this::toDegrees);
  }
}
