package fieldsalt.surface.kernel;

import fieldsalt.gaussian.Elimination;
import java.util.Arrays;

/**
 * From eliminated rows to estimates and variances. With w = L⁻¹c the row elements of a place, T =
 * L⁻¹X those of the trend and Y = L⁻¹y those of the values, universal kriging is
 *
 * <pre>
 *   r        = x0 - T'w                       what the trend must still explain
 *   estimate = w'Y + r'(T'T)⁻¹T'Y
 *   variance = c00 - w'w + r'(T'T)⁻¹r
 * </pre>
 *
 * (Cressie 1993, Statistics for Spatial Data, equations 3.4.63 to 3.4.65, written in the factor.)
 * The sums are taken row by row, for all places of a group at once; they stand at the column of
 * their place in the rows, so that the loops have one index and are vectorised.
 */
final class KernelSums {
  private final double pointVariance;

  /** T'T | T'Y. */
  private final double[][] tt;

  /** The same eliminated: U | its solved right-hand sides. */
  private final double[][] factor;

  private final double[] ww;
  private final double[][] tw;
  private final double[][] yw;

  /** U'⁻¹ r of one place. */
  private final double[] e;

  /**
   * @param pointVariance c00: variance of what is predicted
   * @param trends columns of the trend
   * @param values columns that are estimated: the property, then the shared errors
   * @param columns room for places up to this column
   */
  KernelSums(double pointVariance, int trends, int values, int columns) {
    this.pointVariance = pointVariance;
    tt = new double[trends][trends + values];
    factor = new double[trends][trends + values];
    ww = new double[columns];
    tw = new double[trends][columns];
    yw = new double[values][columns];
    e = new double[trends];
  }

  /** Forgets all, for places at the columns from..to-1. */
  void clear(int from, int to) {
    for (double[] row : tt) {
      Arrays.fill(row, 0);
    }
    Arrays.fill(ww, from, to, 0);
    for (double[] sum : tw) {
      Arrays.fill(sum, from, to, 0);
    }
    for (double[] sum : yw) {
      Arrays.fill(sum, from, to, 0);
    }
  }

  /**
   * Adds one eliminated row.
   *
   * @param row its elements for the places, at the columns from..to-1
   * @param ends its elements for trend and values, from {@code endsAt}
   */
  void addRow(double[] row, int from, int to, double[] ends, int endsAt) {
    addTrend(ends, endsAt);
    addSquares(ww, row, from, to);
    for (int q = 0; q < tw.length; q++) {
      addMultiple(tw[q], ends[endsAt + q], row, from, to);
    }
    for (int v = 0; v < yw.length; v++) {
      addMultiple(yw[v], ends[endsAt + tw.length + v], row, from, to);
    }
  }

  private void addTrend(double[] ends, int at) {
    for (int q = 0; q < tt.length; q++) {
      double t = ends[at + q];
      for (int k = q; k < tt[q].length; k++) {
        tt[q][k] += t * ends[at + k];
      }
    }
  }

  private static void addSquares(double[] sum, double[] row, int from, int to) {
    for (int j = from; j < to; j++) {
      sum[j] += row[j] * row[j];
    }
  }

  static void addMultiple(double[] sum, double t, double[] row, int from, int to) {
    for (int j = from; j < to; j++) {
      sum[j] += t * row[j];
    }
  }

  /** Writes the results of the group's places from..to-1, whose sums begin at a column. */
  void close(KernelGroup group, int from, int to, int column) {
    factorTrend();
    for (int at = from; at < to; at++) {
      int j = column + at - from;
      solveTrend(group, at, j);
      double variance = pointVariance - ww[j];
      for (double part : e) {
        variance += part * part;
      }
      group.estimate[at] = estimate(0, j);
      group.variance[at] = Math.max(0, variance) + sharedVariance(group, at, j);
    }
  }

  /**
   * A column of the trend that the others determine among these sites becomes 0: it is left out.
   */
  private void factorTrend() {
    int p = tt.length;
    for (int q = 0; q < p; q++) {
      System.arraycopy(tt[q], q, factor[q], q, tt[q].length - q);
    }
    Elimination.eliminate(factor, p, p, p + yw.length);
  }

  private void solveTrend(KernelGroup group, int at, int j) {
    for (int q = 0; q < e.length; q++) {
      double r = group.trend[q][at] - tw[q][j];
      for (int k = 0; k < q; k++) {
        r -= factor[k][q] * e[k];
      }
      e[q] = factor[q][q] == 0 ? 0 : r / factor[q][q];
    }
  }

  private double estimate(int column, int j) {
    double sum = yw[column][j];
    for (int q = 0; q < e.length; q++) {
      sum += e[q] * factor[q][e.length + column];
    }
    return sum;
  }

  private double sharedVariance(KernelGroup group, int at, int j) {
    double sum = 0;
    for (int v = 1; v < yw.length; v++) {
      double s = estimate(v, j);
      sum += s * s;
      if (group.shared.length > 0) {
        group.shared[v - 1][at] = s;
      }
    }
    return sum;
  }
}
