package fieldsalt.gaussian;

import java.util.Arrays;

/**
 * Unknowns seen from the data. The error covariance of two of them is their prior covariance given
 * the effects; if they are of one block, minus the product of their columns of {@code fromData} and
 * plus that of {@code fromOwn}; and in any case plus that of {@code fromShared}.
 *
 * @param mean one an unknown
 * @param fromData one array a datum of the block, each with one value an unknown
 * @param fromOwn one array an own effect of the block, likewise
 * @param fromShared one array a shared effect, likewise
 */
public record Prediction(
    int block, double[] mean, double[][] fromData, double[][] fromOwn, double[][] fromShared) {
  /** Variance added to (negative: taken from) the prior variance given the effects. */
  public double[] varianceChange() {
    double[] change = new double[mean.length];
    addSquares(change, fromOwn, 1);
    addSquares(change, fromShared, 1);
    addSquares(change, fromData, -1);
    return change;
  }

  private static void addSquares(double[] sum, double[][] rows, double sign) {
    for (double[] row : rows) {
      for (int j = 0; j < sum.length; j++) {
        sum[j] += sign * row[j] * row[j];
      }
    }
  }

  /** A weighted sum of the unknowns as one unknown. */
  public Prediction sum(double[] weights) {
    return new Prediction(
        block,
        new double[] {MixedModel.dot(mean, weights)},
        sums(fromData, weights),
        sums(fromOwn, weights),
        sums(fromShared, weights));
  }

  private static double[][] sums(double[][] rows, double[] weights) {
    double[][] sums = new double[rows.length][];
    Arrays.setAll(sums, i -> new double[] {MixedModel.dot(rows[i], weights)});
    return sums;
  }

  /**
   * The same between every unknown here and every unknown of another prediction: one row an unknown
   * of this, one column an unknown of the other.
   */
  public double[][] covarianceChange(Prediction other) {
    double[][] change = ownCovarianceChange(other);
    int n = other.mean.length;
    double[][] negative = negated(fromShared);
    for (int i = 0; i < mean.length; i++) {
      RowKernel.subtract(change[i], negative, i, other.fromShared, 0, negative.length, 0, n);
    }
    return change;
  }

  /** The same given the shared effects: 0 between blocks. */
  public double[][] ownCovarianceChange(Prediction other) {
    double[][] change = new double[mean.length][other.mean.length];
    int n = other.mean.length;
    double[][] negative = negated(fromOwn);
    for (int i = 0; i < mean.length && block == other.block; i++) {
      RowKernel.subtract(change[i], fromData, i, other.fromData, 0, fromData.length, 0, n);
      RowKernel.subtract(change[i], negative, i, other.fromOwn, 0, negative.length, 0, n);
    }
    return change;
  }

  private static double[][] negated(double[][] rows) {
    return Arrays.stream(rows)
        .map(row -> Arrays.stream(row).map(v -> -v).toArray())
        .toArray(double[][]::new);
  }
}
