package fieldsalt.surface.site;

import java.util.Arrays;

/**
 * The nearest of many points, by a grid of square buckets of about two points each.
 *
 * <p><b>Ties.</b> Nearer comes first; of points at the same squared distance, as computed in double
 * precision, the one given earlier. So the answer is one and the same on every machine.
 */
public final class NeighbourSearch {
  private static final double POINTS_PER_BUCKET = 2;

  /** Buckets a side at most. */
  private static final int SIDE = 2048;

  /**
   * One in so many points may lie beyond the buckets, to each side, and is kept in the outermost
   * ones: a few far outliers must not leave all other points in one bucket.
   */
  private static final int OUTER = 100;

  private final double westM;
  private final double southM;
  private final double sideM;
  private final int columns;
  private final int rows;

  /** Points of bucket b are {@code order[start[b]]} to {@code order[start[b + 1] - 1]}. */
  private final int[] start;

  private final int[] order;
  private final double[] x;
  private final double[] y;

  /**
   * @param xM metres
   * @param yM metres, as many, at least one
   */
  public NeighbourSearch(double[] xM, double[] yM) {
    if (xM.length == 0 || xM.length != yM.length) {
      throw new IllegalArgumentException(
          "a search needs points, had " + xM.length + " x and " + yM.length + " y");
    }
    double[] sortedX = xM.clone();
    double[] sortedY = yM.clone();
    Arrays.sort(sortedX);
    Arrays.sort(sortedY);
    int outer = xM.length / OUTER;
    westM = sortedX[outer];
    southM = sortedY[outer];
    double width = sortedX[xM.length - 1 - outer] - westM;
    double height = sortedY[xM.length - 1 - outer] - southM;
    sideM = side(width, height, xM.length);
    columns = 1 + (int) (width / sideM);
    rows = 1 + (int) (height / sideM);
    start = new int[columns * rows + 1];
    order = new int[xM.length];
    fill(xM, yM);
    x = gather(xM);
    y = gather(yM);
  }

  private static double side(double width, double height, int n) {
    double longest = Math.max(width, height);
    if (longest == 0) {
      return 1;
    }
    double byArea = Math.sqrt(width * height * POINTS_PER_BUCKET / n);
    return Math.max(byArea, Math.max(longest / SIDE, longest * POINTS_PER_BUCKET / n));
  }

  private void fill(double[] xM, double[] yM) {
    for (int i = 0; i < xM.length; i++) {
      start[bucket(xM[i], yM[i]) + 1]++;
    }
    for (int b = 0; b < columns * rows; b++) {
      start[b + 1] += start[b];
    }
    int[] next = start.clone();
    for (int i = 0; i < xM.length; i++) {
      order[next[bucket(xM[i], yM[i])]++] = i;
    }
  }

  private double[] gather(double[] from) {
    double[] to = new double[order.length];
    Arrays.setAll(to, i -> from[order[i]]);
    return to;
  }

  private int bucket(double xM, double yM) {
    return row(yM) * columns + column(xM);
  }

  private int column(double xM) {
    return (int) Math.max(0, Math.min(columns - 1, (xM - westM) / sideM));
  }

  private int row(double yM) {
    return (int) Math.max(0, Math.min(rows - 1, (yM - southM) / sideM));
  }

  int size() {
    return order.length;
  }

  /**
   * As many of the nearest points as there is room for, or all where there are fewer, nearest
   * first.
   */
  public void nearest(double xM, double yM, Found found) {
    found.clear();
    int column = column(xM);
    int row = row(yM);
    for (int ring = 0; ring <= Math.max(columns, rows); ring++) {
      if (found.isFull() && square(reach(xM, yM, column, row, ring - 1)) > found.farthest()) {
        return;
      }
      scanRing(xM, yM, column, row, ring, found);
    }
  }

  /** No point outside the rings scanned so far is nearer than this. */
  private double reach(double xM, double yM, int column, int row, int ring) {
    double left = xM - (westM + (column - ring) * sideM);
    double right = westM + (column + ring + 1) * sideM - xM;
    double below = yM - (southM + (row - ring) * sideM);
    double above = southM + (row + ring + 1) * sideM - yM;
    // where a side has no buckets left, nothing can lie beyond it
    double inX =
        Math.min(column - ring <= 0 ? INF : left, column + ring >= columns - 1 ? INF : right);
    double inY = Math.min(row - ring <= 0 ? INF : below, row + ring >= rows - 1 ? INF : above);
    // the buckets' borders are rounded: keep a hair inside
    return Math.max(0, Math.min(inX, inY) - 1e-9 * sideM);
  }

  private static final double INF = Double.POSITIVE_INFINITY;

  private static double square(double v) {
    return v * v;
  }

  private void scanRing(double xM, double yM, int column, int row, int ring, Found found) {
    int west = Math.max(0, column - ring);
    int east = Math.min(columns - 1, column + ring);
    for (int r = Math.max(0, row - ring); r <= Math.min(rows - 1, row + ring); r++) {
      if (Math.abs(r - row) == ring) {
        scan(xM, yM, r * columns + west, r * columns + east, found);
      } else {
        if (column - ring >= 0) {
          scan(xM, yM, r * columns + column - ring, r * columns + column - ring, found);
        }
        if (column + ring < columns) {
          scan(xM, yM, r * columns + column + ring, r * columns + column + ring, found);
        }
      }
    }
  }

  private void scan(double xM, double yM, int firstBucket, int lastBucket, Found found) {
    for (int i = start[firstBucket]; i < start[lastBucket + 1]; i++) {
      double dx = x[i] - xM;
      double dy = y[i] - yM;
      found.offer(dx * dx + dy * dy, order[i]);
    }
  }

  /**
   * Every point not farther than {@code radiusM}, in no order that matters.
   *
   * @return how many there are; the first {@code into.length} of them stand in {@code into}
   */
  int within(double xM, double yM, double radiusM, int[] into) {
    int count = 0;
    int west = column(xM - radiusM);
    int east = column(xM + radiusM);
    for (int r = row(yM - radiusM); r <= row(yM + radiusM); r++) {
      for (int i = start[r * columns + west]; i < start[r * columns + east + 1]; i++) {
        double dx = x[i] - xM;
        double dy = y[i] - yM;
        if (dx * dx + dy * dy <= radiusM * radiusM) {
          if (count < into.length) {
            into[count] = order[i];
          }
          count++;
        }
      }
    }
    return count;
  }

  /** The nearest so far, nearest first: reused from one search to the next. */
  public static final class Found {
    private final double[] squaredM2;
    private final int[] index;
    private int count;

    public Found(int capacity) {
      if (capacity < 1) {
        throw new IllegalArgumentException("neighbours must be at least 1, was " + capacity);
      }
      squaredM2 = new double[capacity];
      index = new int[capacity];
    }

    int capacity() {
      return index.length;
    }

    public int count() {
      return count;
    }

    /** Indices of the points found, nearest first: the first {@link #count} are in use. */
    public int[] indices() {
      return index;
    }

    /** Index of the point that is the {@code rank}th nearest, from 0. */
    public int index(int rank) {
      return index[rank];
    }

    /** Its squared distance, m². */
    double squaredM2(int rank) {
      return squaredM2[rank];
    }

    void clear() {
      count = 0;
    }

    boolean isFull() {
      return count == index.length;
    }

    /** Squared distance of the farthest kept, m². */
    public double farthest() {
      return squaredM2[count - 1];
    }

    void offer(double d2, int point) {
      if (isFull()) {
        if (d2 > farthest() || (d2 == farthest() && point > index[count - 1])) {
          return;
        }
        count--;
      }
      int at = count++;
      while (at > 0
          && (squaredM2[at - 1] > d2 || (squaredM2[at - 1] == d2 && index[at - 1] > point))) {
        squaredM2[at] = squaredM2[at - 1];
        index[at] = index[at - 1];
        at--;
      }
      squaredM2[at] = d2;
      index[at] = point;
    }
  }
}
