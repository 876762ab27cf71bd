package fieldsalt.zones;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/**
 * Finds the parts of pieces that are narrower than a machine: what an opening by half its width
 * takes away and what lies farther than that half width from what the opening leaves. Where the
 * field itself is narrower nothing is found.
 */
final class Widths {
  /** Distance in steps from an opening within which a node still counts as in it. */
  private static final double SLACK = 0.3;

  /** Share of the half width that a narrow part must reach out to be taken away. */
  private static final double REACH = 0.9;

  /** Share of the half width beyond the opening from which on a node counts as far from it. */
  private static final double FAR = 0.95;

  private final Nodes nodes;
  private final double radius;
  private final LinePoints outline;
  private final float[] toOutline;
  private final boolean[] fieldIsNarrow;

  /** For each node the middle of the disc of the field's own opening that comes nearest to it. */
  private final int[] middleOfDisc;

  /**
   * Narrow parts by node.
   *
   * @param of number of the narrow part, -1 where the piece is wide enough
   * @param far whether the node lies farther than the half width from the opening of its piece
   */
  record Narrow(int[] of, int count, boolean[] far) {
    static Narrow none(int nodes) {
      int[] of = new int[nodes];
      Arrays.fill(of, -1);
      return new Narrow(of, 0, new boolean[nodes]);
    }
  }

  Widths(Nodes nodes, Polygon part, double minWidthM) {
    this.nodes = nodes;
    radius = minWidthM / 2 / nodes.lattice().stepM();
    outline = outline(nodes.lattice(), part);
    toOutline = distance(outline, (from, to) -> true);
    Opening opening = opening(toOutline, new int[nodes.lattice().nodes()]);
    middleOfDisc = opening.middle();
    fieldIsNarrow = new boolean[middleOfDisc.length];
    for (int i = 0; i < fieldIsNarrow.length; i++) {
      fieldIsNarrow[i] = opening.beyond()[i] > SLACK;
    }
  }

  private static LinePoints outline(Lattice lattice, Polygon part) {
    LinePoints points = new LinePoints();
    ring(lattice, part.getExteriorRing(), points);
    for (int h = 0; h < part.getNumInteriorRing(); h++) {
      ring(lattice, part.getInteriorRingN(h), points);
    }
    return points;
  }

  private static void ring(Lattice lattice, LinearRing ring, LinePoints points) {
    Coordinate[] c = ring.getCoordinates();
    for (int i = 1; i < c.length; i++) {
      int bits = (int) Math.ceil(c[i].distance(c[i - 1]) / lattice.stepM() * 2);
      for (int k = 0; k < bits; k++) {
        double t = (double) k / bits;
        double x = c[i - 1].x + t * (c[i].x - c[i - 1].x);
        double y = c[i - 1].y + t * (c[i].y - c[i - 1].y);
        points.add(
            (x - lattice.westM()) / lattice.stepM(), (lattice.northM() - y) / lattice.stepM());
      }
    }
  }

  /** Nodes near enough to the part that the squares around its outline have all their corners. */
  boolean[] near() {
    boolean[] near = nodes.inside().clone();
    for (int i = 0; i < near.length; i++) {
      near[i] |= toOutline[i] <= radius + 2;
    }
    return near;
  }

  private float[] distance(LinePoints lines, Spread.Permit permit) {
    Spread spread =
        new Spread(nodes.lattice(), lines.columns(), lines.rows(), new float[0], radius + 2);
    spread.seedAround();
    return spread.run(permit).cost();
  }

  /** Narrow parts of pieces. */
  Narrow narrow(int[] piece) {
    if (radius == 0) {
      return Narrow.none(piece.length);
    }
    LinePoints lines = linesBetween(piece);
    lines.addAll(outline);
    boolean[] inside = nodes.inside();
    float[] toLine = distance(lines, (from, to) -> inside[to]);
    return group(opening(toLine, piece).beyond(), piece);
  }

  private LinePoints linesBetween(int[] piece) {
    LinePoints lines = new LinePoints();
    int columns = nodes.lattice().columns();
    for (int i = 0; i + columns < piece.length; i++) {
      if (piece[i] >= 0) {
        int column = i % columns;
        int row = i / columns;
        if (column + 1 < columns && piece[i + 1] >= 0 && piece[i + 1] != piece[i]) {
          lines.add(column + where(i, i + 1), row);
        }
        if (piece[i + columns] >= 0 && piece[i + columns] != piece[i]) {
          lines.add(column, row + where(i, i + columns));
        }
      }
    }
    return lines;
  }

  private double where(int a, int b) {
    double t = nodes.crossing(a, b);
    return Double.isNaN(t) ? 0.5 : t;
  }

  /**
   * The opening of pieces.
   *
   * @param beyond how far in steps each inside node lies beyond the opening of its own piece: 0 or
   *     less within it, infinite where the piece has no opening at all
   * @param middle node in the middle of the disc of the opening that comes nearest, -1 for none
   */
  private record Opening(float[] beyond, int[] middle) {}

  private Opening opening(float[] toLine, int[] piece) {
    boolean[] inside = nodes.inside();
    boolean[] core = new boolean[toLine.length];
    for (int i = 0; i < core.length; i++) {
      core[i] = inside[i] && toLine[i] >= radius;
    }
    int[] rim =
        IntStream.range(0, core.length).filter(i -> core[i] && toLine[i] < radius + 2).toArray();
    Spread spread = spreadFrom(rim, toLine, piece, core);
    float[] beyond = spread.cost();
    int[] middle = spread.source();
    for (int i = 0; i < core.length; i++) {
      beyond[i] = core[i] || !inside[i] ? -1 : beyond[i];
      middle[i] = core[i] ? i : middle[i] < 0 ? -1 : rim[middle[i]];
    }
    return new Opening(beyond, middle);
  }

  private Spread spreadFrom(int[] rim, float[] toLine, int[] piece, boolean[] core) {
    boolean[] inside = nodes.inside();
    LinePoints places = new LinePoints();
    float[] head = new float[rim.length];
    for (int k = 0; k < rim.length; k++) {
      places.add(nodes.lattice().columnOf(rim[k]), nodes.lattice().rowOf(rim[k]));
      head[k] = toLine[rim[k]];
    }
    Spread spread =
        new Spread(
            nodes.lattice(), places.columns(), places.rows(), head, Double.POSITIVE_INFINITY);
    for (int k = 0; k < rim.length; k++) {
      spread.seed(rim[k], k);
    }
    return spread.run((from, to) -> inside[to] && !core[to] && piece[to] == piece[from]);
  }

  /**
   * Gives discs of the machine's width to one class, as few as cover a narrow part: it is then wide
   * wherever the field is.
   *
   * @param part a narrow part
   */
  void widen(Narrow narrow, int part, int toClass) {
    boolean[] covered = new boolean[narrow.of().length];
    for (int i = 0; i < covered.length; i++) {
      if (narrow.of()[i] == part && !covered[i] && middleOfDisc[i] >= 0) {
        disc(middleOfDisc[i], toClass, covered);
        covered[i] = true;
      }
    }
  }

  private void disc(int middle, int toClass, boolean[] covered) {
    Lattice lattice = nodes.lattice();
    int reach = (int) Math.ceil(radius);
    int row = lattice.rowOf(middle);
    int column = lattice.columnOf(middle);
    for (int r = Math.max(0, row - reach); r <= Math.min(lattice.rows() - 1, row + reach); r++) {
      for (int c = Math.max(0, column - reach);
          c <= Math.min(lattice.columns() - 1, column + reach);
          c++) {
        int node = r * lattice.columns() + c;
        if (nodes.inside()[node] && Math.hypot(r - row, c - column) <= radius + SLACK) {
          nodes.klass()[node] = toClass;
          covered[node] = true;
        }
      }
    }
  }

  private Narrow group(float[] beyond, int[] piece) {
    int[] of = new int[piece.length];
    Arrays.fill(of, -1);
    int count = 0;
    for (int i = 0; i < piece.length; i++) {
      if (of[i] == -1 && isNarrow(i, beyond)) {
        count += flood(i, count, beyond, piece, of) ? 1 : 0;
      }
    }
    boolean[] far = new boolean[of.length];
    for (int i = 0; i < of.length; i++) {
      of[i] = Math.max(-1, of[i]);
      far[i] = of[i] >= 0 && beyond[i] > FAR * radius;
    }
    return new Narrow(of, count, far);
  }

  private boolean isNarrow(int node, float[] beyond) {
    return nodes.inside()[node] && !fieldIsNarrow[node] && beyond[node] > 0.5 * radius;
  }

  /** Marks a connected narrow part; with -2 if it does not reach out far enough to matter. */
  private boolean flood(int start, int number, float[] beyond, int[] piece, int[] of) {
    int columns = nodes.lattice().columns();
    IntQueue queue = new IntQueue();
    IntQueue members = new IntQueue();
    of[start] = number;
    queue.add(start);
    float reach = 0;
    while (!queue.isEmpty()) {
      int node = queue.take();
      members.add(node);
      reach = Math.max(reach, beyond[node]);
      for (int dr = -columns; dr <= columns; dr += columns) {
        for (int next = node + dr - 1; next <= node + dr + 1; next++) {
          if (of[next] == -1 && piece[next] == piece[start] && isNarrow(next, beyond)) {
            of[next] = number;
            queue.add(next);
          }
        }
      }
    }
    boolean matters = reach > REACH * radius;
    while (!matters && !members.isEmpty()) {
      of[members.take()] = -2;
    }
    return matters;
  }
}
