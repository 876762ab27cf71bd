package fieldsalt.zones;

import java.util.Arrays;
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

  private final Nodes nodes;
  private final double radius;
  private final LinePoints outline;
  private final float[] toOutline;
  private final boolean[] fieldIsNarrow;

  /**
   * Narrow parts by node.
   *
   * @param of number of the narrow part, -1 where the piece is wide enough
   */
  record Narrow(int[] of, int count) {}

  Widths(Nodes nodes, Polygon part, double minWidthM) {
    this.nodes = nodes;
    radius = minWidthM / 2 / nodes.lattice().stepM();
    outline = outline(nodes.lattice(), part);
    toOutline = distance(outline, (from, to) -> true);
    float[] beyond = beyondOpening(toOutline, new int[nodes.lattice().nodes()]);
    fieldIsNarrow = new boolean[beyond.length];
    for (int i = 0; i < beyond.length; i++) {
      fieldIsNarrow[i] = beyond[i] > SLACK;
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
      int[] none = new int[piece.length];
      Arrays.fill(none, -1);
      return new Narrow(none, 0);
    }
    LinePoints lines = linesBetween(piece);
    lines.addAll(outline);
    boolean[] inside = nodes.inside();
    float[] toLine = distance(lines, (from, to) -> inside[to]);
    return group(beyondOpening(toLine, piece), piece);
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
   * How far in steps each inside node lies beyond the opening of its own piece: 0 or less within
   * it, infinite where the piece has no opening at all.
   */
  private float[] beyondOpening(float[] toLine, int[] piece) {
    boolean[] inside = nodes.inside();
    boolean[] core = new boolean[toLine.length];
    for (int i = 0; i < core.length; i++) {
      core[i] = inside[i] && toLine[i] >= radius;
    }
    float[] beyond = spreadFromCore(toLine, piece, core).cost();
    for (int i = 0; i < core.length; i++) {
      beyond[i] = core[i] || !inside[i] ? -1 : beyond[i];
    }
    return beyond;
  }

  private Spread spreadFromCore(float[] toLine, int[] piece, boolean[] core) {
    boolean[] inside = nodes.inside();
    int columns = nodes.lattice().columns();
    int[] rim = new int[1024];
    int count = 0;
    LinePoints places = new LinePoints();
    for (int i = 0; i < core.length; i++) {
      if (core[i] && toLine[i] < radius + 2) {
        rim = count == rim.length ? Arrays.copyOf(rim, count * 2) : rim;
        rim[count++] = i;
        int row = i / columns;
        places.add(i % columns, row);
      }
    }
    float[] head = new float[count];
    for (int k = 0; k < count; k++) {
      head[k] = toLine[rim[k]];
    }
    Spread spread =
        new Spread(
            nodes.lattice(), places.columns(), places.rows(), head, Double.POSITIVE_INFINITY);
    for (int k = 0; k < count; k++) {
      spread.seed(rim[k], k);
    }
    return spread.run((from, to) -> inside[to] && !core[to] && piece[to] == piece[from]);
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
    for (int i = 0; i < of.length; i++) {
      of[i] = Math.max(-1, of[i]);
    }
    return new Narrow(of, count);
  }

  private boolean isNarrow(int node, float[] beyond) {
    return nodes.inside()[node] && !fieldIsNarrow[node] && beyond[node] > SLACK;
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
