package fieldsalt.gaussian;

/**
 * The one inner loop of all dense algebra here: a row less multiples of other rows, four at a time.
 * Rows are separate arrays and the loop has no reduction, so that the compiler vectorises it; the
 * order of the operations, and so the result, does not depend on the processor.
 */
final class RowKernel {
  private RowKernel() {}

  /**
   * {@code c[j] -= sum over k of weight[k][column] * row[k][j]}, from <= j < to, first <= k < last.
   */
  static void subtract(
      double[] c,
      double[][] weights,
      int column,
      double[][] rows,
      int first,
      int last,
      int from,
      int to) {
    int k = first;
    for (; k + 4 <= last; k += 4) {
      subtractFour(
          c,
          weights[k][column],
          rows[k],
          weights[k + 1][column],
          rows[k + 1],
          weights[k + 2][column],
          rows[k + 2],
          weights[k + 3][column],
          rows[k + 3],
          from,
          to);
    }
    for (; k < last; k++) {
      subtractOne(c, weights[k][column], rows[k], from, to);
    }
  }

  private static void subtractFour(
      double[] c,
      double w0,
      double[] r0,
      double w1,
      double[] r1,
      double w2,
      double[] r2,
      double w3,
      double[] r3,
      int from,
      int to) {
    for (int j = from; j < to; j++) {
      c[j] -= w0 * r0[j] + w1 * r1[j] + (w2 * r2[j] + w3 * r3[j]);
    }
  }

  private static void subtractOne(double[] c, double w, double[] r, int from, int to) {
    for (int j = from; j < to; j++) {
      c[j] -= w * r[j];
    }
  }

  /** {@code c[j] -= w * r[j]}, from <= j < to. */
  static void subtract(double[] c, double w, double[] r, int from, int to) {
    subtractOne(c, w, r, from, to);
  }

  /** Sum of products over from <= j < to, in four partial sums. */
  static double dot(double[] a, double[] b, int from, int to) {
    double s0 = 0;
    double s1 = 0;
    double s2 = 0;
    double s3 = 0;
    int j = from;
    for (; j + 3 < to; j += 4) {
      s0 += a[j] * b[j];
      s1 += a[j + 1] * b[j + 1];
      s2 += a[j + 2] * b[j + 2];
      s3 += a[j + 3] * b[j + 3];
    }
    for (; j < to; j++) {
      s0 += a[j] * b[j];
    }
    return s0 + s1 + (s2 + s3);
  }
}
