package fieldsalt.zones.clean;

import fieldsalt.zones.lattice.Components;
import fieldsalt.zones.lattice.IntQueue;
import fieldsalt.zones.lattice.Nodes;
import fieldsalt.zones.lattice.RegionGraph;
import fieldsalt.zones.line.Widths;
import java.util.Arrays;

/**
 * Joins pieces that are too small, and parts of pieces that are too narrow, to the neighbour
 * closest in value, until none is left. Changes the classes of nodes.
 */
final class Cleaner {
  private static final int PASSES = 12;

  /** From this pass on a part joins the neighbour with the longest contact: it ends sooner. */
  private static final int BY_CONTACT = 4;

  /** Every so many passes what was joined is widened at the cost of others. */
  private static final int BY_DISC = 6;

  /** Share of a piece that may stay narrow when everything else was tried. */
  private static final double NARROW_SHARE = 0.008;

  private final Nodes nodes;
  private final Widths widths;
  private final double minNodes;
  private final double secondScale;

  Cleaner(Nodes nodes, Widths widths, double minAreaM2) {
    this.nodes = nodes;
    this.widths = widths;
    double step = nodes.lattice().stepM();
    minNodes = minAreaM2 / (step * step);
    secondScale = nodes.second().length == 0 ? 0 : spread(nodes.value()) / spread(nodes.second());
  }

  private static double spread(double[] values) {
    double mean = Arrays.stream(values).average().orElse(0);
    double squares = Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum();
    return Math.max(Math.sqrt(squares / values.length), 1e-9);
  }

  void clean() {
    mergeSmall();
    for (int pass = 0; pass < PASSES; pass++) {
      if (widen(pass) == 0) {
        return;
      }
    }
    mergeSmall();
    while (joinPiecesThatStayNarrow() > 0) {
      mergeSmall();
    }
  }

  /** One pass over what is narrow or small; how many were joined. */
  int widen(int pass) {
    int[] piece = Components.of(nodes).of();
    Widths.Narrow narrow = widths.narrow(piece);
    boolean rest = pass >= BY_CONTACT && !isAny(tooNarrow(piece, narrow.far()));
    if (narrow.count() == 0 || rest) {
      return 0;
    }
    int[] before = nodes.klass().clone();
    int[] region = piece.clone();
    int pieces = count(piece);
    for (int i = 0; i < region.length; i++) {
      region[i] = narrow.of()[i] >= 0 ? pieces + narrow.of()[i] : piece[i];
    }
    boolean[] thin = new boolean[pieces + narrow.count()];
    Arrays.fill(thin, pieces, thin.length, true);
    int merged =
        merge(
            region,
            thin,
            pass < BY_CONTACT
                ? RegionGraph.Choice.CLOSEST_VALUE
                : RegionGraph.Choice.LONGEST_CONTACT);
    if (pass % BY_DISC == BY_DISC - 1) {
      widenParts(narrow, before);
    }
    return merged;
  }

  /** Joins a whole piece where too much of it stays narrow whatever neighbour gets that part. */
  private int joinPiecesThatStayNarrow() {
    int[] piece = Components.of(nodes).of();
    boolean[] thin = tooNarrow(piece, widths.narrow(piece).far());
    return merge(piece, thin, RegionGraph.Choice.CLOSEST_VALUE);
  }

  /**
   * Joins marked ground, each bit of it that hangs together within one piece for itself, to the
   * neighbour with the longest contact; or, if it is to go whole, to the one closest in value.
   *
   * @return whether anything was joined
   */
  boolean join(boolean[] marked, boolean whole) {
    int[] piece = Components.of(nodes).of();
    int pieces = count(piece);
    int[] region = piece.clone();
    int regions = pieces;
    for (int i = 0; i < region.length; i++) {
      if (marked[i] && piece[i] >= 0 && region[i] == piece[i]) {
        flood(i, regions++, marked, piece, region);
      }
    }
    boolean[] thin = new boolean[regions];
    Arrays.fill(thin, pieces, regions, true);
    return merge(
            region,
            thin,
            whole ? RegionGraph.Choice.CLOSEST_VALUE : RegionGraph.Choice.LONGEST_CONTACT)
        > 0;
  }

  private void flood(int start, int number, boolean[] marked, int[] piece, int[] region) {
    int columns = nodes.lattice().columns();
    IntQueue queue = new IntQueue();
    region[start] = number;
    queue.add(start);
    while (!queue.isEmpty()) {
      int node = queue.take();
      for (int next : new int[] {node - columns, node - 1, node + 1, node + columns}) {
        if (marked[next] && piece[next] == piece[start] && region[next] == piece[next]) {
          region[next] = number;
          queue.add(next);
        }
      }
    }
  }

  /** Pieces of which too much is narrow. */
  private static boolean[] tooNarrow(int[] piece, boolean[] far) {
    int[] all = new int[count(piece)];
    int[] narrow = new int[all.length];
    for (int i = 0; i < piece.length; i++) {
      if (piece[i] >= 0) {
        all[piece[i]]++;
        narrow[piece[i]] += far[i] ? 1 : 0;
      }
    }
    boolean[] thin = new boolean[all.length];
    for (int p = 0; p < thin.length; p++) {
      thin[p] = narrow[p] > NARROW_SHARE * all[p];
    }
    return thin;
  }

  private static boolean isAny(boolean[] thin) {
    for (boolean one : thin) {
      if (one) {
        return true;
      }
    }
    return false;
  }

  private static int count(int[] piece) {
    return Arrays.stream(piece).max().orElse(-1) + 1;
  }

  private void widenParts(Widths.Narrow narrow, int[] before) {
    int[] joined = new int[narrow.count()];
    Arrays.fill(joined, -1);
    for (int i = 0; i < before.length; i++) {
      int part = narrow.of()[i];
      if (part >= 0 && nodes.klass()[i] != before[i]) {
        joined[part] = nodes.klass()[i];
      }
    }
    for (int part = 0; part < joined.length; part++) {
      if (joined[part] >= 0) {
        widths.widen(narrow, part, joined[part]);
      }
    }
  }

  private void mergeSmall() {
    Components pieces = Components.of(nodes);
    if (pieces.count() > 1) {
      merge(pieces.of(), new boolean[pieces.count()], RegionGraph.Choice.CLOSEST_VALUE);
    }
  }

  private int merge(int[] region, boolean[] thin, RegionGraph.Choice choice) {
    RegionGraph graph = new RegionGraph(thin.length, nodes.cutter());
    addGround(graph, region, thin);
    addContacts(graph, region);
    int merged = graph.merge(minNodes, choice);
    int[] klass = new int[thin.length];
    Arrays.setAll(klass, graph::klassOf);
    for (int i = 0; i < region.length; i++) {
      if (region[i] >= 0) {
        nodes.klass()[i] = klass[region[i]];
      }
    }
    return merged;
  }

  private void addGround(RegionGraph graph, int[] region, boolean[] thin) {
    int[] klass = new int[thin.length];
    int[] count = new int[thin.length];
    double[] sum = new double[thin.length];
    double[] secondSum = new double[thin.length];
    for (int i = 0; i < region.length; i++) {
      int r = region[i];
      if (r >= 0) {
        klass[r] = nodes.klass()[i];
        count[r]++;
        sum[r] += nodes.value()[i];
        secondSum[r] += secondScale == 0 ? 0 : nodes.second()[i] * secondScale;
      }
    }
    for (int r = 0; r < thin.length; r++) {
      graph.region(r, klass[r], thin[r]);
      if (count[r] > 0) {
        graph.ground(r, count[r], sum[r] / count[r], secondSum[r] / count[r]);
      }
    }
  }

  private void addContacts(RegionGraph graph, int[] region) {
    int columns = nodes.lattice().columns();
    long[] pairs = new long[1024];
    int count = 0;
    for (int i = 0; i + columns < region.length; i++) {
      int mine = region[i];
      if (mine < 0 || (mine == region[i + 1] && mine == region[i + columns])) {
        continue;
      }
      for (int next = i + 1; next <= i + columns; next += columns - 1) {
        if (region[next] >= 0 && mine != region[next]) {
          pairs = count == pairs.length ? Arrays.copyOf(pairs, count * 2) : pairs;
          pairs[count++] =
              ((long) Math.min(region[i], region[next]) << 32) | Math.max(region[i], region[next]);
        }
      }
    }
    Arrays.sort(pairs, 0, count);
    for (int from = 0; from < count; ) {
      int end = from;
      while (end < count && pairs[end] == pairs[from]) {
        end++;
      }
      graph.touch((int) (pairs[from] >> 32), (int) pairs[from], end - from);
      from = end;
    }
  }
}
