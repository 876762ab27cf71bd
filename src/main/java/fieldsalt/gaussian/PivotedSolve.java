package fieldsalt.gaussian;

/**
 * Solves Ax = b for a symmetric A that is at least 0 and may be singular, for b in its range: a
 * Cholesky factor with pivoting, scaled to a unit diagonal, that stops at the rank.
 */
final class PivotedSolve {
  private static final double LEAST_PIVOT = 1e-11;
  private final double[][] scaled;
  private final double[] scale;
  private final int[] pivots;
  private final Cholesky factor;

  PivotedSolve(double[][] a) {
    int n = a.length;
    scale = new double[n];
    scaled = new double[n][n];
    for (int i = 0; i < n; i++) {
      scale[i] = a[i][i] > 0 ? 1 / Math.sqrt(a[i][i]) : 0;
    }
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        scaled[i][j] = a[i][j] * scale[i] * scale[j];
      }
    }
    pivots = independentRows();
    factor = Cholesky.factor(picked());
  }

  private double[][] picked() {
    double[][] part = new double[pivots.length][pivots.length];
    for (int i = 0; i < pivots.length; i++) {
      for (int j = 0; j < pivots.length; j++) {
        part[i][j] = scaled[pivots[i]][pivots[j]];
      }
    }
    return part;
  }

  private int[] independentRows() {
    int n = scaled.length;
    double[][] rest = new double[n][];
    for (int i = 0; i < n; i++) {
      rest[i] = scaled[i].clone();
    }
    int[] found = new int[n];
    int rank = 0;
    for (int best = largest(rest); best >= 0; best = largest(rest)) {
      found[rank++] = best;
      double[] row = rest[best].clone();
      for (int i = 0; i < n; i++) {
        RowKernel.subtract(rest[i], row[i] / row[best], row, 0, n);
      }
      rest[best][best] = 0;
    }
    int[] out = java.util.Arrays.copyOf(found, rank);
    java.util.Arrays.sort(out);
    return out;
  }

  private static int largest(double[][] rest) {
    int best = -1;
    double most = LEAST_PIVOT;
    for (int i = 0; i < rest.length; i++) {
      if (rest[i][i] > most) {
        most = rest[i][i];
        best = i;
      }
    }
    return best;
  }

  double[] solve(double[] b) {
    double[] part = new double[pivots.length];
    for (int i = 0; i < pivots.length; i++) {
      part[i] = b[pivots[i]] * scale[pivots[i]];
    }
    double[] x = factor.solve(part);
    double[] out = new double[b.length];
    for (int i = 0; i < pivots.length; i++) {
      out[pivots[i]] = x[i] * scale[pivots[i]];
    }
    return out;
  }

  /** Whether b is a combination of A's columns, to 1e-7 of its size. */
  boolean inRange(double[] b) {
    double[] x = solve(b);
    for (int i = 0; i < b.length; i++) {
      double back = 0;
      double size = Math.abs(b[i]);
      for (int j = 0; j < b.length; j++) {
        if (scale[i] > 0 && scale[j] > 0) {
          double term = scaled[i][j] / scale[i] / scale[j] * x[j];
          back += term;
          size += Math.abs(term);
        }
      }
      if (Math.abs(back - b[i]) > 1e-7 * size) {
        return false;
      }
    }
    return true;
  }
}
