package fieldsalt.zones.line;

import fieldsalt.zones.lattice.IntQueue;
import fieldsalt.zones.lattice.Lattice;
import fieldsalt.zones.lattice.Nodes;
import fieldsalt.zones.lattice.Tiles;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/**
 * Finds the parts of pieces that are narrower than a machine: what an opening by half its width
 * takes away and what lies farther than that half width from what the opening leaves. Where the
 * field itself is narrower nothing is found. Only ground near to what changed since the last time
 * is looked at again; squares of the lattice are worked on side by side, each for itself.
 */
public final class Widths {
  /** Distance in steps from an opening within which a node still counts as in it. */
  private static final double SLACK = 0.3;

  /** Share of the half width beyond the opening from which on a node belongs to a narrow part. */
  private static final double NARROW = 0.5;

  /** Share of the half width that a narrow part must reach out to be taken away. */
  private static final double REACH = 0.9;

  /** Share of the half width beyond the opening from which on a node counts as far from it. */
  private static final double FAR = 0.95;

  /** The same share where it is only asked whether a node may be far. */
  private static final double SUSPECT = 0.75;

  private final Nodes nodes;
  private final double radius;
  private final Tiles tiles;
  private final LinePoints[] outline;
  private final float[] toOutline;
  private final boolean[] fieldIsNarrow;
  private final float[] beyond;
  private int[] lastClass = new int[0];

  /**
   * Narrow parts by node.
   *
   * @param of number of the narrow part, -1 where the piece is wide enough
   * @param far whether the node lies farther than the half width from the opening of its piece
   */
  public record Narrow(int[] of, int count, boolean[] far) {
    static Narrow none(int nodes) {
      int[] of = new int[nodes];
      Arrays.fill(of, -1);
      return new Narrow(of, 0, new boolean[nodes]);
    }
  }

  public Widths(Nodes nodes, Polygon part, double minWidthM) {
    this.nodes = nodes;
    Lattice lattice = nodes.lattice();
    radius = minWidthM / 2 / lattice.stepM();
    tiles = Tiles.of(lattice, (int) Math.ceil(3 * radius) + 6);
    outline = outline(part);
    toOutline = new float[lattice.nodes()];
    beyond = new float[lattice.nodes()];
    Arrays.fill(toOutline, Float.POSITIVE_INFINITY);
    Arrays.fill(beyond, -1);
    int[] onePiece = new int[lattice.nodes()];
    overTiles(t -> outline[t] != null, t -> fieldTile(t, onePiece));
    fieldIsNarrow = new boolean[beyond.length];
    for (int i = 0; i < fieldIsNarrow.length; i++) {
      fieldIsNarrow[i] = beyond[i] > SLACK;
    }
  }

  private void fieldTile(int t, int[] onePiece) {
    OpeningTile tile = tile(t);
    tile.settle();
    tile.distances(tiles, t, toOutline);
    tile.beyond(tiles, t, onePiece, /* enough= */ 0, beyond);
  }

  private OpeningTile tile(int t) {
    OpeningTile tile = new OpeningTile(tiles, t, nodes.inside(), radius, FAR * radius + 0.1);
    if (outline[t] != null) {
      outline[t].forEach(tile::line);
    }
    return tile;
  }

  /** Each tile writes its own nodes only, so that the order does not matter. */
  private void overTiles(
      java.util.function.IntPredicate which, java.util.function.IntConsumer work) {
    IntStream.range(0, tiles.count()).filter(which).parallel().forEach(work);
  }

  /** Points along the outline by the tiles that depend on them; null for none. */
  private LinePoints[] outline(Polygon part) {
    LinePoints[] points = new LinePoints[tiles.count()];
    ring(part.getExteriorRing(), points);
    for (int h = 0; h < part.getNumInteriorRing(); h++) {
      ring(part.getInteriorRingN(h), points);
    }
    return points;
  }

  private void ring(LinearRing ring, LinePoints[] points) {
    Lattice lattice = nodes.lattice();
    Coordinate[] c = ring.getCoordinates();
    for (int i = 1; i < c.length; i++) {
      int bits = (int) Math.ceil(c[i].distance(c[i - 1]) / lattice.stepM() * 2);
      for (int k = 0; k < bits; k++) {
        double t = (double) k / bits;
        double x = c[i - 1].x + t * (c[i].x - c[i - 1].x);
        double y = c[i - 1].y + t * (c[i].y - c[i - 1].y);
        outlinePoint(
            (x - lattice.westM()) / lattice.stepM(),
            (lattice.northM() - y) / lattice.stepM(),
            points);
      }
    }
  }

  private void outlinePoint(double column, double row, LinePoints[] points) {
    tiles.around(
        (int) Math.round(row),
        (int) Math.round(column),
        t -> {
          points[t] = points[t] == null ? new LinePoints() : points[t];
          points[t].add(column, row);
        });
  }

  /** Nodes near enough to the part that the squares around its outline have all their corners. */
  public boolean[] near() {
    boolean[] near = nodes.inside().clone();
    for (int i = 0; i < near.length; i++) {
      near[i] |= toOutline[i] <= radius + 2;
    }
    return near;
  }

  /** Narrow parts of pieces. */
  public Narrow narrow(int[] piece) {
    if (radius == 0) {
      return Narrow.none(piece.length);
    }
    boolean[] changed = changedTiles();
    overTiles(t -> changed[t], t -> pieceTile(t, piece));
    lastClass = nodes.klass().clone();
    return group(piece);
  }

  private void pieceTile(int t, int[] piece) {
    OpeningTile tile = tile(t);
    if (outline[t] != null || !tile.isOnePiece(piece)) {
      tile.linesBetween(piece, nodes);
    }
    tile.settle();
    tile.beyond(tiles, t, piece, NARROW * radius, beyond);
  }

  /**
   * Nodes that may lie too far from the opening of their piece if everything that a lattice cannot
   * see goes against it: by discs that are half a step larger.
   */
  public boolean[] suspects(int[] piece) {
    float[] strict = new float[beyond.length];
    Arrays.fill(strict, -1);
    overTiles(t -> true, t -> strictTile(t, piece, strict));
    boolean[] suspect = new boolean[strict.length];
    for (int i = 0; i < suspect.length; i++) {
      suspect[i] = strict[i] > SUSPECT * radius && nodes.inside()[i] && !fieldIsNarrow[i];
    }
    return suspect;
  }

  private void strictTile(int t, int[] piece, float[] strict) {
    OpeningTile tile = new OpeningTile(tiles, t, nodes.inside(), radius + 0.5, FAR * radius + 0.1);
    if (outline[t] != null) {
      outline[t].forEach(tile::line);
    }
    if (outline[t] != null || !tile.isOnePiece(piece)) {
      tile.linesBetween(piece, nodes);
      tile.settle();
      tile.beyond(tiles, t, piece, NARROW * radius, strict);
    }
  }

  /** Tiles that depend on a node whose class is another one than last time; at first all. */
  private boolean[] changedTiles() {
    boolean[] changed = new boolean[tiles.count()];
    int[] klass = nodes.klass();
    if (lastClass.length == 0) {
      Arrays.fill(changed, true);
      return changed;
    }
    int columns = nodes.lattice().columns();
    for (int i = 0; i < klass.length; i++) {
      if (klass[i] != lastClass[i]) {
        tiles.around(i / columns, i % columns, t -> changed[t] = true);
      }
    }
    return changed;
  }

  /**
   * Gives discs of the machine's width to one class, as few as cover a narrow part: it is then wide
   * wherever the field is.
   *
   * @param part a narrow part
   */
  public void widen(Narrow narrow, int part, int toClass) {
    boolean[] covered = new boolean[narrow.of().length];
    for (int i = 0; i < covered.length; i++) {
      if (narrow.of()[i] == part && !covered[i]) {
        int middle = middleOfDisc(i);
        if (middle >= 0) {
          disc(middle, toClass, covered);
        }
        covered[i] = true;
      }
    }
  }

  /** Middle of the disc of the field's own opening that comes nearest to a node; -1 for none. */
  private int middleOfDisc(int node) {
    Lattice lattice = nodes.lattice();
    int reach = (int) Math.ceil(2 * radius + 2);
    int row = lattice.rowOf(node);
    int column = lattice.columnOf(node);
    int best = -1;
    double least = Double.POSITIVE_INFINITY;
    for (int r = Math.max(0, row - reach); r <= Math.min(lattice.rows() - 1, row + reach); r++) {
      for (int c = Math.max(0, column - reach);
          c <= Math.min(lattice.columns() - 1, column + reach);
          c++) {
        int i = r * lattice.columns() + c;
        double off = Math.hypot(r - row, c - column) - Math.min(toOutline[i], radius + 2);
        if (nodes.inside()[i] && toOutline[i] >= radius && off < least) {
          least = off;
          best = i;
        }
      }
    }
    return best;
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

  private Narrow group(int[] piece) {
    int[] of = new int[piece.length];
    Arrays.fill(of, -1);
    int count = 0;
    for (int i = 0; i < piece.length; i++) {
      if (beyond[i] > NARROW * radius && of[i] == -1 && isNarrow(i)) {
        count += flood(i, count, piece, of) ? 1 : 0;
      }
    }
    boolean[] far = new boolean[of.length];
    for (int i = 0; i < of.length; i++) {
      of[i] = Math.max(-1, of[i]);
      far[i] = of[i] >= 0 && beyond[i] > FAR * radius;
    }
    return new Narrow(of, count, far);
  }

  private boolean isNarrow(int node) {
    return beyond[node] > NARROW * radius && nodes.inside()[node] && !fieldIsNarrow[node];
  }

  /** Marks a connected narrow part; with -2 if it does not reach out far enough to matter. */
  private boolean flood(int start, int number, int[] piece, int[] of) {
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
          if (of[next] == -1 && piece[next] == piece[start] && isNarrow(next)) {
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
