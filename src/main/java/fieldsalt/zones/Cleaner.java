package fieldsalt.zones;

import java.util.Arrays;

/**
 * Joins pieces that are too small, and parts of pieces that are too narrow, to the neighbour
 * closest in value, until none is left. Changes the classes of nodes.
 */
final class Cleaner {
  private static final int PASSES = 10;

  /** From this pass on a part joins the neighbour with the longest contact: it ends sooner. */
  private static final int BY_CONTACT = 4;

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
      RegionGraph.Choice choice =
          pass < BY_CONTACT ? RegionGraph.Choice.CLOSEST_VALUE : RegionGraph.Choice.LONGEST_CONTACT;
      int[] piece = Components.of(nodes).of();
      Widths.Narrow narrow = widths.narrow(piece);
      if (narrow.count() == 0 || merge(piece, narrow, choice) == 0) {
        return;
      }
    }
    mergeSmall();
  }

  private void mergeSmall() {
    Components pieces = Components.of(nodes);
    if (pieces.count() > 1) {
      int[] none = new int[pieces.of().length];
      Arrays.fill(none, -1);
      merge(pieces.of(), new Widths.Narrow(none, 0), RegionGraph.Choice.CLOSEST_VALUE);
    }
  }

  private int merge(int[] piece, Widths.Narrow narrow, RegionGraph.Choice choice) {
    int pieces = Arrays.stream(piece).max().orElse(-1) + 1;
    int[] region = new int[piece.length];
    for (int i = 0; i < region.length; i++) {
      region[i] = narrow.of()[i] >= 0 ? pieces + narrow.of()[i] : piece[i];
    }
    RegionGraph graph = new RegionGraph(pieces + narrow.count());
    for (int i = 0; i < region.length; i++) {
      if (region[i] >= 0) {
        graph.region(region[i], nodes.klass()[i], region[i] >= pieces);
        graph.ground(
            region[i], 1, nodes.value()[i], secondScale == 0 ? 0 : nodes.second()[i] * secondScale);
      }
    }
    addContacts(graph, region);
    int merged = graph.merge(minNodes, choice);
    for (int i = 0; i < region.length; i++) {
      if (region[i] >= 0) {
        nodes.klass()[i] = graph.klassOf(region[i]);
      }
    }
    return merged;
  }

  private void addContacts(RegionGraph graph, int[] region) {
    int columns = nodes.lattice().columns();
    long[] pairs = new long[1024];
    int count = 0;
    for (int i = 0; i + columns < region.length; i++) {
      for (int next = i + 1; next <= i + columns; next += columns - 1) {
        if (region[i] >= 0 && region[next] >= 0 && region[i] != region[next]) {
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
