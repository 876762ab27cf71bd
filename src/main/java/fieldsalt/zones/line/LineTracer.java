package fieldsalt.zones.line;

import fieldsalt.zones.lattice.Lattice;
import fieldsalt.zones.lattice.Nodes;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;

/**
 * Traces the lines between regions over a lattice: each square between four nodes adds segments
 * from side to side, at the place where the surface crosses the class limit; where three or four
 * regions meet they run to the middle of the square. Lines never cross and never branch but there.
 */
public final class LineTracer {
  private static final int SMOOTHINGS = 10;

  private final Nodes nodes;
  private final int[] label;
  private final int columns;

  private double[] x = new double[1024];
  private double[] y = new double[1024];
  private boolean[] free = new boolean[1024];
  private byte[] degree = new byte[1024];
  private int[] link = new int[4096];
  private int[] left = new int[4096];
  private int[] right = new int[4096];
  private int size;

  /** Node of one end of the lattice edge that a point lies on: west or north; -1 in a middle. */
  private int[] firstNode = new int[1024];

  private int[] secondNode = new int[1024];

  /**
   * @param label region of each node, -1 where none is needed
   */
  public LineTracer(Nodes nodes, int[] label) {
    this.nodes = nodes;
    this.label = label;
    columns = nodes.lattice().columns();
  }

  public List<LabelledLine> trace() {
    int[] above = new int[columns];
    int[] below = new int[columns];
    Arrays.fill(above, -1);
    for (int row = 0; row + 1 < nodes.lattice().rows(); row++) {
      Arrays.fill(below, -1);
      squaresOfRow(row, above, below);
      int[] swap = above;
      above = below;
      below = swap;
    }
    smooth();
    return lines();
  }

  private void squaresOfRow(int row, int[] above, int[] below) {
    int west = -1;
    for (int column = 0; column + 1 < columns; column++) {
      int a = row * columns + column;
      int b = a + 1;
      int d = a + columns;
      int c = d + 1;
      int la = label[a];
      if (la == label[b] && la == label[c] && la == label[d]) {
        west = -1;
        continue;
      }
      if (la < 0 || label[b] < 0 || label[c] < 0 || label[d] < 0) {
        west = -1;
        continue;
      }
      int top = above[column] >= 0 ? above[column] : crossing(a, b);
      int left = west >= 0 ? west : crossing(a, d);
      int east = crossing(b, c);
      int bottom = crossing(d, c);
      square(new int[] {a, b, c, d}, new int[] {top, east, bottom, left});
      below[column] = bottom;
      west = east;
    }
  }

  /** A point on the lattice edge between two nodes, -1 if they are of one region. */
  private int crossing(int a, int b) {
    if (label[a] == label[b]) {
      return -1;
    }
    double t = nodes.crossing(a, b);
    boolean made = Double.isNaN(t);
    double along = made ? 0.5 : t;
    boolean eastward = b == a + 1;
    int row = a / columns;
    int p = point(a % columns + (eastward ? along : 0), -(row + (eastward ? 0 : along)), made);
    firstNode[p] = a;
    secondNode[p] = b;
    return p;
  }

  private int point(double px, double py, boolean isFree) {
    if (size == x.length) {
      grow();
    }
    x[size] = px;
    y[size] = py;
    free[size] = isFree;
    firstNode[size] = -1;
    return size++;
  }

  private void grow() {
    x = Arrays.copyOf(x, size * 2);
    y = Arrays.copyOf(y, size * 2);
    free = Arrays.copyOf(free, size * 2);
    degree = Arrays.copyOf(degree, size * 2);
    firstNode = Arrays.copyOf(firstNode, size * 2);
    secondNode = Arrays.copyOf(secondNode, size * 2);
    link = Arrays.copyOf(link, size * 8);
    left = Arrays.copyOf(left, size * 8);
    right = Arrays.copyOf(right, size * 8);
  }

  private void square(int[] node, int[] side) {
    int[] present = new int[4];
    int count = 0;
    for (int p : side) {
      if (p >= 0) {
        present[count++] = p;
      }
    }
    if (count == 2) {
      connect(present[0], present[1]);
    } else if (count == 3) {
      meet(Arrays.copyOf(present, count));
    } else {
      fourSides(node, side);
    }
  }

  private void fourSides(int[] node, int[] side) {
    boolean ac = label[node[0]] == label[node[2]];
    boolean bd = label[node[1]] == label[node[3]];
    if (!ac && !bd) {
      meet(side);
    } else if (ac && (!bd || nodes.joinsAc(node[0], node[1], node[2], node[3]))) {
      connect(side[0], side[1]);
      connect(side[2], side[3]);
    } else {
      connect(side[3], side[0]);
      connect(side[1], side[2]);
    }
  }

  private void meet(int[] sides) {
    double sumX = 0;
    double sumY = 0;
    for (int p : sides) {
      sumX += x[p];
      sumY += y[p];
    }
    int middle = point(sumX / sides.length, sumY / sides.length, true);
    for (int p : sides) {
      connect(p, middle);
    }
  }

  /** Joins a point on a lattice edge to another point of the same square. */
  private void connect(int p, int q) {
    int a = firstNode[p];
    int row = a / columns;
    double ax = a % columns;
    double cross = (x[q] - x[p]) * (-row - y[p]) - (y[q] - y[p]) * (ax - x[p]);
    boolean firstIsLeft = cross > 0;
    int onLeft = label[firstIsLeft ? a : secondNode[p]];
    int onRight = label[firstIsLeft ? secondNode[p] : a];
    link(p, q, onLeft, onRight);
    link(q, p, onRight, onLeft);
  }

  private void link(int from, int to, int onLeft, int onRight) {
    int slot = 4 * from + degree[from]++;
    link[slot] = to;
    left[slot] = onLeft;
    right[slot] = onRight;
  }

  /** Moves points that no class limit holds toward the middle of their neighbours. */
  private void smooth() {
    int[] loose =
        java.util.stream.IntStream.range(0, size).filter(p -> free[p] && degree[p] >= 2).toArray();
    double[] newX = new double[loose.length];
    double[] newY = new double[loose.length];
    for (int turn = 0; turn < SMOOTHINGS; turn++) {
      for (int k = 0; k < loose.length; k++) {
        int p = loose[k];
        double sumX = 0;
        double sumY = 0;
        for (int s = 4 * p; s < 4 * p + degree[p]; s++) {
          sumX += x[link[s]];
          sumY += y[link[s]];
        }
        newX[k] = (x[p] + sumX / degree[p]) / 2;
        newY[k] = (y[p] + sumY / degree[p]) / 2;
      }
      for (int k = 0; k < loose.length; k++) {
        x[loose[k]] = newX[k];
        y[loose[k]] = newY[k];
      }
    }
  }

  private List<LabelledLine> lines() {
    List<LabelledLine> lines = new ArrayList<>();
    boolean[] used = new boolean[4 * size];
    for (int p = 0; p < size; p++) {
      for (int s = 4 * p; degree[p] != 2 && s < 4 * p + degree[p]; s++) {
        if (!used[s]) {
          lines.add(walk(p, s, used));
        }
      }
    }
    for (int p = 0; p < size; p++) {
      if (degree[p] == 2 && !used[4 * p] && !used[4 * p + 1]) {
        lines.add(walk(p, 4 * p, used));
      }
    }
    return lines;
  }

  private LabelledLine walk(int start, int slot, boolean[] used) {
    List<Coordinate> points = new ArrayList<>();
    points.add(place(start));
    int from = start;
    int s = slot;
    while (true) {
      int to = link[s];
      used[s] = true;
      int back = slotBack(to, from, used);
      used[back] = true;
      points.add(place(to));
      if (degree[to] != 2 || to == start) {
        return new LabelledLine(points.toArray(Coordinate[]::new), left[slot], right[slot]);
      }
      s = 4 * to + (back == 4 * to ? 1 : 0);
      from = to;
    }
  }

  private int slotBack(int at, int from, boolean[] used) {
    for (int s = 4 * at; s < 4 * at + degree[at]; s++) {
      if (link[s] == from && !used[s]) {
        return s;
      }
    }
    throw new IllegalStateException("a line between zones is linked one way only");
  }

  private Coordinate place(int p) {
    Lattice lattice = nodes.lattice();
    return new Coordinate(
        lattice.westM() + x[p] * lattice.stepM(), lattice.northM() + y[p] * lattice.stepM());
  }
}
