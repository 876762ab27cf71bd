package fieldsalt.zones.lattice;

import java.util.Arrays;

/**
 * Spreads sources over a lattice like a fire: each node that it reaches learns the source with the
 * least straight distance (in steps) minus the source's head start. Along a path that is allowed
 * step by step, so that a source is not seen through ground that is closed.
 */
public final class Spread {
  /** Whether it may go from a node to one of its eight neighbours. */
  interface Permit {
    boolean allows(int from, int to);
  }

  private final Lattice lattice;
  private final double[] column;
  private final double[] row;
  private final float[] head;
  private final int[] source;
  private final float[] cost;
  private final IntQueue queue = new IntQueue();
  private final double limit;

  /**
   * @param column of each source, in steps from the west, need not be whole
   * @param row of each source, in steps from the north
   * @param head start of each source in steps; empty for none
   * @param limit nodes that would cost more are not reached
   */
  Spread(Lattice lattice, double[] column, double[] row, float[] head, double limit) {
    this.lattice = lattice;
    this.column = column;
    this.row = row;
    this.head = head;
    this.limit = limit;
    source = new int[lattice.nodes()];
    Arrays.fill(source, -1);
    cost = new float[lattice.nodes()];
    Arrays.fill(cost, Float.POSITIVE_INFINITY);
  }

  /** Sets a source at a node near it. */
  void seed(int node, int from) {
    offer(node, node % lattice.columns(), node / lattice.columns(), from);
  }

  private void offer(int node, int c, int r, int from) {
    double dx = column[from] - c;
    double dy = row[from] - r;
    float price = (float) (Math.sqrt(dx * dx + dy * dy) - (head.length == 0 ? 0 : head[from]));
    if (price < cost[node] && price <= limit) {
      cost[node] = price;
      source[node] = from;
      queue.add(node);
    }
  }

  Spread run(Permit permit) {
    while (!queue.isEmpty()) {
      spreadFrom(queue.take(), permit);
    }
    return this;
  }

  private void spreadFrom(int node, Permit permit) {
    int columns = lattice.columns();
    int r = node / columns;
    int c = node - r * columns;
    int from = source[node];
    for (int nextR = Math.max(0, r - 1); nextR <= Math.min(lattice.rows() - 1, r + 1); nextR++) {
      for (int nextC = Math.max(0, c - 1); nextC <= Math.min(columns - 1, c + 1); nextC++) {
        int next = nextR * columns + nextC;
        if (next != node && permit.allows(node, next)) {
          offer(next, nextC, nextR, from);
        }
      }
    }
  }

  /** For each node of a domain the nearest known node by its index, -1 where there is none. */
  public static int[] nearestKnown(Lattice lattice, boolean[] known, boolean[] domain) {
    int n = lattice.nodes();
    int[] nodes = rim(lattice, known, domain);
    double[] column = new double[nodes.length];
    double[] row = new double[nodes.length];
    for (int i = 0; i < nodes.length; i++) {
      column[i] = lattice.columnOf(nodes[i]);
      row[i] = lattice.rowOf(nodes[i]);
    }
    Spread spread = new Spread(lattice, column, row, new float[0], Double.POSITIVE_INFINITY);
    for (int i = 0; i < nodes.length; i++) {
      spread.seed(nodes[i], i);
    }
    spread.run((from, to) -> domain[to] && !known[to]);
    int[] nearest = new int[n];
    for (int i = 0; i < n; i++) {
      int s = spread.source[i];
      nearest[i] = known[i] ? i : s < 0 ? -1 : nodes[s];
    }
    return nearest;
  }

  /** Known nodes beside unknown ones of the domain. */
  private static int[] rim(Lattice lattice, boolean[] known, boolean[] domain) {
    boolean[] beside = new boolean[known.length];
    for (int i = 0; i < known.length; i++) {
      if (domain[i] && !known[i]) {
        markAround(lattice, i, beside);
      }
    }
    return java.util.stream.IntStream.range(0, known.length)
        .filter(i -> beside[i] && known[i])
        .toArray();
  }

  private static void markAround(Lattice lattice, int node, boolean[] marks) {
    int columns = lattice.columns();
    int r = node / columns;
    int c = node - r * columns;
    for (int nextR = Math.max(0, r - 1); nextR <= Math.min(lattice.rows() - 1, r + 1); nextR++) {
      for (int nextC = Math.max(0, c - 1); nextC <= Math.min(columns - 1, c + 1); nextC++) {
        marks[nextR * columns + nextC] = true;
      }
    }
  }
}
