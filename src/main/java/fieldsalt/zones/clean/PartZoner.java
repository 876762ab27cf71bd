package fieldsalt.zones.clean;

import fieldsalt.zones.lattice.Components;
import fieldsalt.zones.lattice.InsideNodes;
import fieldsalt.zones.lattice.Nodes;
import fieldsalt.zones.lattice.RegionGraph;
import fieldsalt.zones.lattice.Regions;
import fieldsalt.zones.lattice.Spread;
import fieldsalt.zones.line.Faces;
import fieldsalt.zones.line.LabelledLine;
import fieldsalt.zones.line.LineTracer;
import fieldsalt.zones.line.Openings;
import fieldsalt.zones.line.Widths;
import java.util.ArrayList;
import java.util.Arrays;
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
public final class PartZoner {
  /** Coordinates of zones are whole micrometres. */
  public static final double PER_METRE = 1e6;

  /** Share of a lattice step that a line may be moved to need fewer vertices. */
  private static final double TOLERANCE = 0.05;

  private static final GeometryFactory GEOMETRY = new GeometryFactory();

  /** Share of a zone that the lattice may judge narrow without a look at the polygon. */
  private static final double SUSPECT_SHARE = 0.004;

  /** Rounds of drawing and mending; from the second number on whole zones are joined. */
  private static final int MOST_ROUNDS = 12;

  private static final int WHOLE_FROM = 3;

  /** A zone, and whether it may be too narrow somewhere. */
  private record Drawn(Piece piece, boolean suspect) {}

  private final Nodes nodes;
  private final Polygon part;
  private final double minAreaM2;

  public PartZoner(Nodes nodes, Polygon part, double minAreaM2) {
    this.nodes = nodes;
    this.part = part;
    this.minAreaM2 = minAreaM2;
  }

  /** The zones as polygons that share their edges exactly and tile the part. */
  public List<Piece> zones(double minWidthM) {
    Widths widths = new Widths(nodes, part, minWidthM);
    Cleaner cleaner = new Cleaner(nodes, widths, minAreaM2);
    Openings openings = new Openings(part, minWidthM);
    cleaner.clean();
    for (int round = 0; ; round++) {
      List<Drawn> drawn = drawn(widths);
      boolean changed = false;
      for (int k = 0; k < drawn.size() && minWidthM > 0 && round < MOST_ROUNDS; k++) {
        Drawn zone = drawn.get(k);
        changed |= zone.suspect() && mend(zone, openings, cleaner, round >= WHOLE_FROM);
      }
      if (!changed) {
        return drawn.stream().map(Drawn::piece).toList();
      }
      cleaner.clean();
    }
  }

  /** Joins what of a zone is too narrow to neighbours; whether there was any. */
  private boolean mend(Drawn zone, Openings openings, Cleaner cleaner, boolean whole) {
    Geometry narrow = openings.tooNarrow(zone.piece().shape());
    return !narrow.isEmpty()
        && cleaner.join(
            InsideNodes.of(nodes.lattice(), whole ? zone.piece().shape() : narrow), whole);
  }

  private List<Drawn> drawn(Widths widths) {
    int[] piece = Components.of(nodes).of();
    int[] suspects = suspects(piece, widths.suspects(piece));
    int[] region = extended(piece, widths.near());
    List<LabelledLine> lines = simplified(new LineTracer(nodes, region).trace());
    Faces faces =
        Faces.of(
            Faces.outlineOf(part, LabelledLine.ANY),
            lines,
            Optional.of(new IndexedPointInAreaLocator(part)),
            PER_METRE);
    return joined(faces, region, suspects);
  }

  private static int[] suspects(int[] piece, boolean[] suspect) {
    int[] count = new int[Arrays.stream(piece).max().orElse(0) + 1];
    for (int i = 0; i < piece.length; i++) {
      if (suspect[i] && piece[i] >= 0) {
        count[piece[i]]++;
      }
    }
    return count;
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
  private List<Drawn> joined(Faces faces, int[] region, int[] suspects) {
    Regions regions = Regions.of(nodes, region);
    List<Faces.Face> list = faces.faces();
    RegionGraph graph = new RegionGraph(list.size(), nodes.cutter());
    double[] narrowM2 = new double[list.size()];
    int[] klass = new int[list.size()];
    for (int f = 0; f < list.size(); f++) {
      Faces.Face face = list.get(f);
      int at = face.label() >= 0 ? face.label() : regionAt(face.shape(), region);
      klass[f] = regions.klass(at);
      graph.region(f, klass[f], false);
      graph.ground(f, face.shape().getArea(), regions.value(at), 0);
      narrowM2[f] = suspects[at] * nodes.lattice().stepM() * nodes.lattice().stepM();
    }
    for (Faces.Contact contact : faces.contacts()) {
      graph.touch(contact.a(), contact.b(), contact.length());
    }
    graph.joinAlike();
    graph.merge(minAreaM2, RegionGraph.Choice.CLOSEST_VALUE);
    for (int f = 0; f < list.size(); f++) {
      if (graph.klassOf(f) != klass[f]) {
        give(list.get(f).shape(), graph.klassOf(f));
      }
    }
    return pieces(list, graph, narrowM2);
  }

  /** Gives the nodes of a face that was joined to a neighbour that one's class. */
  private void give(Polygon face, int toClass) {
    boolean[] mine = InsideNodes.of(nodes.lattice(), face);
    for (int i = 0; i < mine.length; i++) {
      if (mine[i]) {
        nodes.klass()[i] = toClass;
      }
    }
  }

  private int regionAt(Polygon face, int[] region) {
    Coordinate inside = face.getInteriorPoint().getCoordinate();
    int at = region[nodes.lattice().nearest(inside.x, inside.y)];
    return Math.max(0, at);
  }

  private static List<Drawn> pieces(List<Faces.Face> list, RegionGraph graph, double[] narrowM2) {
    TreeMap<Integer, List<Integer>> groups = new TreeMap<>();
    for (int f = 0; f < list.size(); f++) {
      groups.computeIfAbsent(graph.root(f), k -> new ArrayList<>()).add(f);
    }
    return groups.entrySet().parallelStream()
        .map(
            group -> {
              List<Polygon> shapes =
                  group.getValue().stream().map(f -> list.get(f).shape()).toList();
              Geometry shape = union(shapes);
              double narrow = group.getValue().stream().mapToDouble(f -> narrowM2[f]).sum();
              int root = group.getKey();
              return new Drawn(
                  new Piece(shape, graph.klassOf(root), graph.valueOf(root)),
                  shapes.size() > 1 || narrow > SUSPECT_SHARE * shape.getArea());
            })
        .toList();
  }

  private static Geometry union(List<Polygon> shapes) {
    Geometry one =
        shapes.size() == 1 ? shapes.get(0) : CoverageUnion.union(shapes.toArray(Geometry[]::new));
    return one.norm();
  }
}
