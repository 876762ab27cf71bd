package fieldsalt.zones.line;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.locationtech.jts.algorithm.locate.PointOnGeometryLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateArrays;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.noding.NodedSegmentString;
import org.locationtech.jts.noding.OrientedCoordinateArray;
import org.locationtech.jts.noding.SegmentString;
import org.locationtech.jts.noding.snapround.SnapRoundingNoder;
import org.locationtech.jts.operation.polygonize.Polygonizer;

/**
 * The faces that labelled lines enclose. All lines are first noded on a fixed grid of coordinates,
 * so that the faces share their vertices exactly, whatever the lines do; each face then takes the
 * label that most of its boundary has on the inside. Whatever lines come in, the faces tile what
 * the outline encloses.
 */
public final class Faces {
  private static final GeometryFactory GEOMETRY = new GeometryFactory();

  /**
   * One face.
   *
   * @param shape normalised polygon
   * @param label number of a region, or {@link LabelledLine#ANY} where no line says
   */
  public record Face(Polygon shape, int label) {}

  /** Two faces, by their index, and the length of what they share. */
  public record Contact(int a, int b, double length) {}

  private record Directed(Coordinate from, Coordinate to) {}

  private record Side(int label, double length, int edge) {}

  private final List<Face> faces = new ArrayList<>();
  private final List<Contact> contacts = new ArrayList<>();
  private final Map<Directed, Side> sides = new HashMap<>();

  private Faces() {}

  /**
   * Faces inside an outline.
   *
   * @param outline lines with {@link LabelledLine#OUT} on one side
   * @param lines between regions; parts outside the outline are dropped
   * @param inside tells whether a place is within the outline; empty where all lines are
   * @param perUnit grid of coordinates: this many to one unit
   */
  public static Faces of(
      List<LabelledLine> outline,
      List<LabelledLine> lines,
      Optional<PointOnGeometryLocator> inside,
      double perUnit) {
    Faces result = new Faces();
    Collection<SegmentString> edges = distinct(noded(outline, lines, perUnit), inside);
    result.fill(edges);
    return result;
  }

  public List<Face> faces() {
    return faces;
  }

  public List<Contact> contacts() {
    return contacts;
  }

  private static Collection<SegmentString> noded(
      List<LabelledLine> outline, List<LabelledLine> lines, double perUnit) {
    List<SegmentString> strings = new ArrayList<>(outline.size() + lines.size());
    outline.forEach(l -> strings.add(new NodedSegmentString(l.points(), l)));
    lines.forEach(l -> strings.add(new NodedSegmentString(l.points(), l)));
    SnapRoundingNoder noder = new SnapRoundingNoder(new PrecisionModel(perUnit));
    noder.computeNodes(strings);
    @SuppressWarnings("unchecked")
    Collection<SegmentString> noded = noder.getNodedSubstrings();
    return noded;
  }

  /**
   * Each edge once; where an outline and a line fall together the outline stays. The key has an
   * order but no equality of its own, so that only a sorted map tells that two edges are one.
   */
  private static Collection<SegmentString> distinct(
      Collection<SegmentString> noded, Optional<PointOnGeometryLocator> inside) {
    Map<OrientedCoordinateArray, SegmentString> kept = new TreeMap<>();
    for (SegmentString edge : noded) {
      if (isOutline(edge) && edge.size() > 1) {
        kept.merge(new OrientedCoordinateArray(edge.getCoordinates()), edge, Faces::bothSides);
      }
    }
    for (SegmentString edge : noded) {
      if (!isOutline(edge) && edge.size() > 1 && isInside(edge, inside)) {
        kept.putIfAbsent(new OrientedCoordinateArray(edge.getCoordinates()), edge);
      }
    }
    return kept.values();
  }

  /** Two outlines that fall together: what is outside of the one is inside the other. */
  private static SegmentString bothSides(SegmentString first, SegmentString second) {
    boolean along =
        first.getCoordinate(0).equals2D(second.getCoordinate(0))
            && first.getCoordinate(1).equals2D(second.getCoordinate(1));
    LabelledLine other = line(second);
    int left = line(first).left();
    int right = line(first).right();
    left = left == LabelledLine.OUT ? (along ? other.left() : other.right()) : left;
    right = right == LabelledLine.OUT ? (along ? other.right() : other.left()) : right;
    return new NodedSegmentString(
        first.getCoordinates(), new LabelledLine(first.getCoordinates(), left, right));
  }

  private static LabelledLine line(SegmentString edge) {
    return (LabelledLine) edge.getData();
  }

  private static boolean isOutline(SegmentString edge) {
    return line(edge).left() == LabelledLine.OUT || line(edge).right() == LabelledLine.OUT;
  }

  private static boolean isInside(SegmentString edge, Optional<PointOnGeometryLocator> inside) {
    return inside.isEmpty() || inside.get().locate(middle(edge)) != Location.EXTERIOR;
  }

  /** Middle of the longest segment: farthest from any rounding. */
  private static Coordinate middle(SegmentString edge) {
    int best = 1;
    for (int i = 2; i < edge.size(); i++) {
      if (segmentLength(edge, i) > segmentLength(edge, best)) {
        best = i;
      }
    }
    Coordinate a = edge.getCoordinate(best - 1);
    Coordinate b = edge.getCoordinate(best);
    return new Coordinate((a.x + b.x) / 2, (a.y + b.y) / 2);
  }

  private static double segmentLength(SegmentString edge, int i) {
    return edge.getCoordinate(i).distance(edge.getCoordinate(i - 1));
  }

  private void fill(Collection<SegmentString> edges) {
    Polygonizer polygonizer = new Polygonizer();
    int number = 0;
    for (SegmentString edge : edges) {
      polygonizer.add(GEOMETRY.createLineString(edge.getCoordinates()));
      addSides(edge, number++);
    }
    List<Polygon> polygons = new ArrayList<>();
    for (Object found : polygonizer.getPolygons()) {
      Polygon polygon = (Polygon) found;
      polygon.normalize();
      polygons.add(polygon);
    }
    polygons.sort(null);
    int[][] facesOfEdge = new int[number][];
    double[] lengths = new double[number];
    polygons.forEach(p -> addFace(p, facesOfEdge, lengths));
    addContacts(facesOfEdge, lengths);
  }

  private void addSides(SegmentString edge, int number) {
    Coordinate[] c = edge.getCoordinates();
    double length = 0;
    for (int i = 1; i < c.length; i++) {
      length += c[i].distance(c[i - 1]);
    }
    LabelledLine line = line(edge);
    sides.put(new Directed(c[0], c[1]), new Side(line.right(), length, number));
    sides.put(new Directed(c[1], c[0]), new Side(line.left(), length, number));
  }

  /** A normalised polygon has its inside on the right of every ring. */
  private void addFace(Polygon polygon, int[][] facesOfEdge, double[] lengths) {
    Map<Integer, Double> votes = new TreeMap<>();
    List<Side> met = new ArrayList<>();
    ring(polygon.getExteriorRing(), met);
    for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
      ring(polygon.getInteriorRingN(h), met);
    }
    met.forEach(side -> votes.merge(side.label(), side.length(), Double::sum));
    double out = votes.getOrDefault(LabelledLine.OUT, 0.0);
    double all = votes.values().stream().mapToDouble(v -> v).sum();
    if (out > all - out) {
      return;
    }
    for (Side side : met) {
      facesOfEdge[side.edge()] = append(facesOfEdge[side.edge()], faces.size());
      lengths[side.edge()] = side.length();
    }
    faces.add(new Face(polygon, winner(votes)));
  }

  private void ring(LinearRing ring, List<Side> met) {
    Coordinate[] c = ring.getCoordinates();
    for (int i = 1; i < c.length; i++) {
      Side side = sides.get(new Directed(c[i - 1], c[i]));
      if (side != null) {
        met.add(side);
      }
    }
  }

  private static int winner(Map<Integer, Double> votes) {
    int best = LabelledLine.ANY;
    double most = 0;
    for (Map.Entry<Integer, Double> vote : votes.entrySet()) {
      if (vote.getKey() >= 0 && vote.getValue() > most) {
        best = vote.getKey();
        most = vote.getValue();
      }
    }
    return best;
  }

  private static int[] append(int[] known, int face) {
    if (known == null) {
      return new int[] {face};
    }
    int[] more = Arrays.copyOf(known, known.length + 1);
    more[known.length] = face;
    return more;
  }

  private void addContacts(int[][] facesOfEdge, double[] lengths) {
    Map<Long, Double> shared = new TreeMap<>();
    for (int e = 0; e < facesOfEdge.length; e++) {
      int[] both = facesOfEdge[e];
      if (both != null && both.length == 2 && both[0] != both[1]) {
        long key = ((long) Math.min(both[0], both[1]) << 32) | Math.max(both[0], both[1]);
        shared.merge(key, lengths[e], Double::sum);
      }
    }
    shared.forEach(
        (key, length) -> contacts.add(new Contact((int) (key >> 32), (int) (long) key, length)));
  }

  /** The rings of a polygon as outline, the inside labelled. */
  public static List<LabelledLine> outlineOf(Polygon polygon, int inside) {
    List<LabelledLine> lines = new ArrayList<>();
    Polygon normal = (Polygon) polygon.norm();
    lines.add(new LabelledLine(clean(normal.getExteriorRing()), LabelledLine.OUT, inside));
    for (int h = 0; h < normal.getNumInteriorRing(); h++) {
      lines.add(new LabelledLine(clean(normal.getInteriorRingN(h)), LabelledLine.OUT, inside));
    }
    return lines;
  }

  private static Coordinate[] clean(LinearRing ring) {
    return CoordinateArrays.removeRepeatedPoints(ring.getCoordinates());
  }
}
