package fieldsalt.surface.kernel;

import fieldsalt.surface.covariance.Anisotropy;

/**
 * Nearby places that are predicted together, and their results: a buffer that one thread fills
 * again and again. Arrays are by place; only the first {@link #count} are in use.
 */
final class KernelGroup {
  /** Which place of the caller's this is. */
  final int[] id;

  final double[] x;
  final double[] y;

  /** Columns of the trend at the places; column 0 is 1. */
  final double[][] trend;

  final double[] estimate;
  final double[] variance;

  /** l'G of each shared column: weights times loadings; may have no columns. */
  final double[][] shared;

  private int count;

  KernelGroup(int capacity, int trendColumns) {
    this(capacity, trendColumns, 0);
  }

  KernelGroup(int capacity, int trendColumns, int sharedColumns) {
    shared = new double[sharedColumns][capacity];
    id = new int[capacity];
    x = new double[capacity];
    y = new double[capacity];
    trend = new double[trendColumns][capacity];
    estimate = new double[capacity];
    variance = new double[capacity];
  }

  int count() {
    return count;
  }

  void clear() {
    count = 0;
  }

  /** Adds a place with the constant trend; further columns are set in {@link #trend}. */
  int add(int placeId, double xM, double yM) {
    id[count] = placeId;
    x[count] = xM;
    y[count] = yM;
    trend[0][count] = 1;
    return count++;
  }

  /** Replaces the coordinates by those in which plain distance is the model's distance. */
  void stretch(Anisotropy anisotropy) {
    for (int i = 0; i < count && anisotropy.ratio() != 1; i++) {
      double[] to = anisotropy.stretch(x[i], y[i]);
      x[i] = to[0];
      y[i] = to[1];
    }
  }

  /**
   * Splits the places from..to-1 into the four quarters of their box, reordering them, and hands
   * each quarter that is not empty to {@code predict}.
   */
  void quarters(Box box, int from, int to, Range predict) {
    int east = partition(x, box.x(), from, to);
    halves(box, from, east, predict);
    halves(box, east, to, predict);
  }

  private void halves(Box box, int from, int to, Range predict) {
    int north = partition(y, box.y(), from, to);
    if (from < north) {
      predict.of(from, north);
    }
    if (north < to) {
      predict.of(north, to);
    }
  }

  /** Some of the places: from..to-1. */
  interface Range {
    void of(int from, int to);
  }

  /** Moves the places up to a line to the front; where the rest begins. */
  private int partition(double[] by, double line, int from, int to) {
    int front = from;
    for (int i = from; i < to; i++) {
      if (by[i] <= line) {
        swap(front++, i);
      }
    }
    return front;
  }

  private void swap(int a, int b) {
    int keep = id[a];
    id[a] = id[b];
    id[b] = keep;
    swap(x, a, b);
    swap(y, a, b);
    for (double[] column : trend) {
      swap(column, a, b);
    }
  }

  private static void swap(double[] v, int a, int b) {
    double keep = v[a];
    v[a] = v[b];
    v[b] = keep;
  }

  /** The box round the places from..to-1. */
  Box box(int from, int to) {
    double west = x[from];
    double east = west;
    double south = y[from];
    double north = south;
    for (int i = from + 1; i < to; i++) {
      west = Math.min(west, x[i]);
      east = Math.max(east, x[i]);
      south = Math.min(south, y[i]);
      north = Math.max(north, y[i]);
    }
    return new Box((west + east) / 2, (south + north) / 2, east - west, north - south);
  }

  /** Centre and size, metres. */
  record Box(double x, double y, double width, double height) {
    /** Distance from the centre to a corner: no place of the group is farther. */
    double radius() {
      return Math.hypot(width, height) / 2;
    }
  }
}
