package fieldsalt.zones;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.coverage.CoverageUnion;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.simplify.DouglasPeuckerSimplifier;

/** Zones of one polygon of a field: cleaned classes, traced, cut at the exact boundary. */
final class PartZoner {
  /** Coordinates of zones are whole micrometres. */
  static final double PER_METRE = 1e6;

  /** Share of a lattice step that a line may be moved to need fewer vertices. */
  private static final double TOLERANCE = 0.05;

  private static final GeometryFactory GEOMETRY = new GeometryFactory();

  private final Nodes nodes;
  private final Polygon part;
  private final double minAreaM2;

  PartZoner(Nodes nodes, Polygon part, double minAreaM2) {
    this.nodes = nodes;
    this.part = part;
    this.minAreaM2 = minAreaM2;
  }

  /** The zones as polygons that share their edges exactly and tile the part. */
  List<Piece> zones(double minWidthM) {
    Widths widths = new Widths(nodes, part, minWidthM);
    new Cleaner(nodes, widths, minAreaM2).clean();
    int[] region = extended(Components.of(nodes).of(), widths.near());
    List<LabelledLine> lines = simplified(new LineTracer(nodes, region).trace());
    Faces faces =
        Faces.of(
            Faces.outlineOf(part, LabelledLine.ANY),
            lines,
            Optional.of(new IndexedPointInAreaLocator(part)),
            PER_METRE);
    return joined(faces, region);
  }

  /** Regions beyond the boundary, so that lines run over it: that of the nearest inside node. */
  private int[] extended(int[] region, boolean[] near) {
    int[] nearest = Spread.nearestKnown(nodes.lattice(), nodes.inside(), near);
    int[] all = new int[region.length];
    for (int i = 0; i < all.length; i++) {
      all[i] = nearest[i] < 0 ? -1 : region[nearest[i]];
      if (nearest[i] >= 0) {
        nodes.klass()[i] = nodes.klass()[nearest[i]];
      }
    }
    return all;
  }

  private List<LabelledLine> simplified(List<LabelledLine> lines) {
    double tolerance = TOLERANCE * nodes.lattice().stepM();
    List<LabelledLine> simple = new ArrayList<>(lines.size());
    for (LabelledLine line : lines) {
      Geometry shape = GEOMETRY.createLineString(line.points());
      Coordinate[] few = DouglasPeuckerSimplifier.simplify(shape, tolerance).getCoordinates();
      simple.add(new LabelledLine(few, line.left(), line.right()));
    }
    return simple;
  }

  /** Joins faces of one class that touch, and those that the exact boundary made too small. */
  private List<Piece> joined(Faces faces, int[] region) {
    Regions regions = Regions.of(nodes, region);
    List<Faces.Face> list = faces.faces();
    RegionGraph graph = new RegionGraph(list.size());
    for (int f = 0; f < list.size(); f++) {
      Faces.Face face = list.get(f);
      int at = face.label() >= 0 ? face.label() : regionAt(face.shape(), region);
      graph.region(f, regions.klass(at), false);
      graph.ground(f, face.shape().getArea(), regions.value(at), 0);
    }
    for (Faces.Contact contact : faces.contacts()) {
      graph.touch(contact.a(), contact.b(), contact.length());
    }
    graph.joinAlike();
    graph.merge(minAreaM2, RegionGraph.Choice.CLOSEST_VALUE);
    return pieces(list, graph);
  }

  private int regionAt(Polygon face, int[] region) {
    Coordinate inside = face.getInteriorPoint().getCoordinate();
    int at = region[nodes.lattice().nearest(inside.x, inside.y)];
    return Math.max(0, at);
  }

  private static List<Piece> pieces(List<Faces.Face> list, RegionGraph graph) {
    TreeMap<Integer, List<Polygon>> groups = new TreeMap<>();
    for (int f = 0; f < list.size(); f++) {
      groups.computeIfAbsent(graph.root(f), k -> new ArrayList<>()).add(list.get(f).shape());
    }
    List<Piece> pieces = new ArrayList<>();
    groups.forEach(
        (root, shapes) ->
            pieces.add(new Piece(union(shapes), graph.klassOf(root), graph.valueOf(root))));
    return pieces;
  }

  private static Geometry union(List<Polygon> shapes) {
    Geometry one =
        shapes.size() == 1 ? shapes.get(0) : CoverageUnion.union(shapes.toArray(Geometry[]::new));
    return one.norm();
  }
}
