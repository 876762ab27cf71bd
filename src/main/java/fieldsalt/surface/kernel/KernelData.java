package fieldsalt.surface.kernel;

import fieldsalt.surface.covariance.Anisotropy;
import java.util.Arrays;
import java.util.Comparator;

/**
 * What the fast kernels predict from: one row a site of one field, y = trend + z + G e + own error.
 * All arrays hold one number a site.
 *
 * @param xM metres
 * @param yM metres
 * @param value y: the property (or its logarithm), known shared offsets taken off
 * @param errorVariance known variance of each site's own error, at least 0; 0 where it has none
 * @param trend columns of the trend, the first all 1; further ones are drift
 * @param shared columns of G = H R, R R' the covariance of the offsets' remaining error: their
 *     (l'H)Var(u)(l'H)' is the sum of squares of what the weights l make of these columns. None
 *     where no error is shared.
 */
record KernelData(
    double[] xM,
    double[] yM,
    double[] value,
    double[] errorVariance,
    double[][] trend,
    double[][] shared) {
  KernelData {
    int n = xM.length;
    if (n == 0) {
      throw new IllegalArgumentException("prediction needs at least one site");
    }
    check(n, xM, yM, value, errorVariance);
    check(n, trend);
    check(n, shared);
    if (trend.length == 0) {
      throw new IllegalArgumentException("the trend needs at least its constant column");
    }
    for (double v : errorVariance) {
      if (v < 0) {
        throw new IllegalArgumentException("an error variance must be at least 0, was " + v);
      }
    }
  }

  /** Values without error of their own, constant trend. */
  static KernelData of(double[] xM, double[] yM, double[] value) {
    int n = xM.length;
    return new KernelData(xM, yM, value, new double[n], new double[][] {ones(n)}, new double[0][]);
  }

  KernelData withErrorVariance(double[] variance) {
    return new KernelData(xM, yM, value, variance, trend, shared);
  }

  /** The constant and these columns of drift. */
  KernelData withDrift(double[]... drift) {
    double[][] columns = new double[drift.length + 1][];
    columns[0] = ones(size());
    System.arraycopy(drift, 0, columns, 1, drift.length);
    return new KernelData(xM, yM, value, errorVariance, columns, shared);
  }

  KernelData withShared(double[]... columns) {
    return new KernelData(xM, yM, value, errorVariance, trend, columns);
  }

  int size() {
    return xM.length;
  }

  /** Value columns to which the weights are applied: the property, then the shared ones. */
  double[][] columns() {
    double[][] all = new double[1 + shared.length][];
    all[0] = value;
    System.arraycopy(shared, 0, all, 1, shared.length);
    return all;
  }

  /** The same data in coordinates in which plain distance is the model's distance. */
  KernelData stretched(Anisotropy anisotropy) {
    double[] along = new double[size()];
    double[] across = new double[size()];
    for (int i = 0; i < size(); i++) {
      double[] to = anisotropy.stretch(xM[i], yM[i]);
      along[i] = to[0];
      across[i] = to[1];
    }
    return new KernelData(along, across, value, errorVariance, trend, shared);
  }

  /**
   * One row a place, for models without micro-scale variance: there, two error-free values at one
   * place contradict each other (their covariance matrix is singular), and their mean stands for
   * both. Rows with an error of their own are left as they are.
   */
  KernelData withPlacesMerged() {
    Integer[] order = new Integer[size()];
    Arrays.setAll(order, i -> i);
    Arrays.sort(
        order,
        Comparator.<Integer>comparingDouble(i -> xM[i])
            .thenComparingDouble(i -> yM[i])
            .thenComparing(i -> errorVariance[i] > 0)
            .thenComparing(i -> i));
    int[] groupOf = new int[size()];
    boolean merged = false;
    for (int k = 0; k < order.length; k++) {
      boolean same = k > 0 && isSamePlace(order[k - 1], order[k]);
      merged |= same;
      groupOf[order[k]] = same ? groupOf[order[k - 1]] : order[k];
    }
    return merged ? meansOver(groupOf) : this;
  }

  private boolean isSamePlace(int a, int b) {
    return xM[a] == xM[b] && yM[a] == yM[b] && errorVariance[a] == 0 && errorVariance[b] == 0;
  }

  /** Groups are named by their first member's index, so that the order of sites is kept. */
  private KernelData meansOver(int[] groupOf) {
    int[] members = new int[size()];
    for (int group : groupOf) {
      members[group]++;
    }
    return new KernelData(
        means(xM, groupOf, members),
        means(yM, groupOf, members),
        means(value, groupOf, members),
        means(errorVariance, groupOf, members),
        means(trend, groupOf, members),
        means(shared, groupOf, members));
  }

  private static double[][] means(double[][] columns, int[] groupOf, int[] members) {
    double[][] means = new double[columns.length][];
    Arrays.setAll(means, c -> means(columns[c], groupOf, members));
    return means;
  }

  private static double[] means(double[] column, int[] groupOf, int[] members) {
    double[] sum = new double[column.length];
    for (int i = 0; i < column.length; i++) {
      sum[groupOf[i]] += column[i];
    }
    double[] mean = new double[column.length];
    int count = 0;
    for (int g = 0; g < column.length; g++) {
      if (members[g] > 0) {
        mean[count++] = members[g] == 1 ? column[g] : sum[g] / members[g];
      }
    }
    return Arrays.copyOf(mean, count);
  }

  private static double[] ones(int n) {
    double[] ones = new double[n];
    Arrays.fill(ones, 1);
    return ones;
  }

  private static void check(int n, double[]... columns) {
    for (double[] column : columns) {
      if (column.length != n) {
        throw new IllegalArgumentException(n + " sites, but a column of " + column.length);
      }
      for (double v : column) {
        if (!Double.isFinite(v)) {
          throw new IllegalArgumentException("every number must be finite, one was " + v);
        }
      }
    }
  }
}
