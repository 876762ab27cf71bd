package fieldsalt.gaussian;

/**
 * The factor of a symmetric positive definite matrix: A = U'U, U upper triangular (L = U').
 * Blocked, by rows (Golub and Van Loan 2013, Matrix Computations, 4th ed., algorithm 4.2.10 on
 * rows).
 *
 * <p>Vectors and matrices have the size of A; a block of right-hand sides is given by rows: {@code
 * b[i]} holds element i of every right-hand side.
 */
public final class Cholesky {
  private static final int PANEL = Elimination.PANEL;

  /** Right-hand sides solved together. */
  private static final int STRIP = 512;

  private final double[][] u;

  private Cholesky(double[][] u) {
    this.u = u;
  }

  /**
   * Factors a matrix in its own storage.
   *
   * @param a symmetric; only {@code a[i][j]}, j >= i, is read, and it is overwritten: the caller
   *     gives the array away
   * @throws NotPositiveDefinite where a row is determined by those before it (its pivot is below
   *     1e-14 of its diagonal element) or the matrix is not a covariance
   */
  public static Cholesky factor(double[][] a) {
    int n = a.length;
    int dropped = Elimination.eliminate(a, n, n, n);
    if (dropped >= 0) {
      throw new NotPositiveDefinite(dropped);
    }
    return new Cholesky(a);
  }

  /** Number of rows of A. */
  public int size() {
    return u.length;
  }

  /** ln det A. */
  public double logDeterminant() {
    double sum = 0;
    for (int i = 0; i < u.length; i++) {
      sum += Math.log(u[i][i]);
    }
    return 2 * sum;
  }

  /** L z: independent standard normals z become correlated as A; z is left as it is. */
  public double[] correlate(double[] z) {
    double[] y = new double[u.length];
    for (int i = 0; i < u.length; i++) {
      for (int j = i; j < u.length; j++) {
        y[j] += u[i][j] * z[i];
      }
    }
    return y;
  }

  /** A⁻¹ b; b is left as it is. */
  public double[] solve(double[] b) {
    double[] x = forward(b);
    backwardInPlace(x);
    return x;
  }

  /** L⁻¹ b, so that its sum of squares is b'A⁻¹b; b is left as it is. */
  public double[] forward(double[] b) {
    double[] y = b.clone();
    int n = u.length;
    for (int i = 0; i < n; i++) {
      double yi = y[i] /= u[i][i];
      double[] row = u[i];
      for (int j = i + 1; j < n; j++) {
        y[j] -= yi * row[j];
      }
    }
    return y;
  }

  /** U⁻¹ b; b is left as it is. */
  public double[] backward(double[] b) {
    double[] x = b.clone();
    backwardInPlace(x);
    return x;
  }

  /** U b, whose sum of squares is b'Ab; b is left as it is. */
  public double[] times(double[] b) {
    double[] x = new double[u.length];
    for (int i = 0; i < u.length; i++) {
      x[i] = RowKernel.dot(u[i], b, i, u.length);
    }
    return x;
  }

  /** b'Ab. */
  public double quadratic(double[] b) {
    double[] x = times(b);
    return RowKernel.dot(x, x, 0, x.length);
  }

  private void backwardInPlace(double[] y) {
    int n = u.length;
    for (int i = n - 1; i >= 0; i--) {
      double sum = y[i];
      double[] row = u[i];
      for (int j = i + 1; j < n; j++) {
        sum -= row[j] * y[j];
      }
      y[i] = sum / row[i];
    }
  }

  /** Replaces B, given by rows, by L⁻¹B. */
  public void forwardRows(double[][] b) {
    forwardRows(b, b.length == 0 ? 0 : b[0].length);
  }

  /** The same for the first {@code columns} right-hand sides only. */
  public void forwardRows(double[][] b, int columns) {
    for (int from = 0; from < columns; from += STRIP) {
      forwardStrip(b, from, Math.min(columns, from + STRIP));
    }
  }

  private void forwardStrip(double[][] b, int from, int to) {
    int n = u.length;
    for (int first = 0; first < n; first += PANEL) {
      int last = Math.min(n, first + PANEL);
      for (int i = first; i < last; i++) {
        RowKernel.subtract(b[i], u, i, b, first, i, from, to);
        divide(b[i], u[i][i], from, to);
      }
      for (int i = last; i < n; i++) {
        RowKernel.subtract(b[i], u, i, b, first, last, from, to);
      }
    }
  }

  private static void divide(double[] row, double by, int from, int to) {
    double inverse = 1 / by;
    for (int j = from; j < to; j++) {
      row[j] *= inverse;
    }
  }

  /** A⁻¹, both triangles. */
  public double[][] inverse() {
    double[][] w = inverseFactor();
    int n = w.length;
    double[][] v = new double[n][n];
    for (int first = 0; first < n; first += PANEL) {
      int last = Math.min(n, first + PANEL);
      for (int i = 0; i < last; i++) {
        RowKernel.subtract(v[i], w, i, w, Math.max(first, i), last, 0, i + 1);
      }
    }
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        v[i][j] = -v[i][j];
        v[j][i] = v[i][j];
      }
    }
    return v;
  }

  /** L⁻¹, lower triangular. */
  private double[][] inverseFactor() {
    int n = u.length;
    double[][] w = new double[n][n];
    for (int first = 0; first < n; first += PANEL) {
      int last = Math.min(n, first + PANEL);
      for (int i = first; i < last; i++) {
        w[i][i] = 1;
        RowKernel.subtract(w[i], u, i, w, first, i, 0, i);
        divide(w[i], u[i][i], 0, i + 1);
      }
      for (int i = last; i < n; i++) {
        RowKernel.subtract(w[i], u, i, w, first, last, 0, last);
      }
    }
    return w;
  }
}
