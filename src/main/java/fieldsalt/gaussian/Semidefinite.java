package fieldsalt.gaussian;

/** Square roots of covariances that may be singular. */
public final class Semidefinite {
  private Semidefinite() {}

  /**
   * T with T T' = S: the lower Cholesky factor, with a column of zeros where nothing is left.
   *
   * @param s symmetric, at least 0
   * @throws IllegalArgumentException if it is no covariance
   */
  public static double[][] root(double[][] s) {
    int n = s.length;
    double[][] t = new double[n][n];
    for (int j = 0; j < n; j++) {
      double pivot = s[j][j] - RowKernel.dot(t[j], t[j], 0, j);
      if (!(pivot > -1e-9 * Math.abs(s[j][j]) - 1e-300)) {
        throw new IllegalArgumentException("not a covariance: pivot " + pivot + " in row " + j);
      }
      if (pivot > 1e-12 * s[j][j]) {
        fillColumn(s, t, j, Math.sqrt(pivot));
      }
    }
    return t;
  }

  private static void fillColumn(double[][] s, double[][] t, int j, double root) {
    t[j][j] = root;
    for (int i = j + 1; i < s.length; i++) {
      t[i][j] = (s[i][j] - RowKernel.dot(t[i], t[j], 0, j)) / root;
    }
  }
}
