package fieldsalt.surface;

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
 * The sums are taken row by row, for all places of a group at once.
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
   * @param places room for so many
   */
  KernelSums(double pointVariance, int trends, int values, int places) {
    this.pointVariance = pointVariance;
    tt = new double[trends][trends + values];
    factor = new double[trends][trends + values];
    ww = new double[places];
    tw = new double[trends][places];
    yw = new double[values][places];
    e = new double[trends];
  }

  void clear(int places) {
    for (double[] row : tt) {
      Arrays.fill(row, 0);
    }
    Arrays.fill(ww, 0, places, 0);
    for (double[] sum : tw) {
      Arrays.fill(sum, 0, places, 0);
    }
    for (double[] sum : yw) {
      Arrays.fill(sum, 0, places, 0);
    }
  }

  /** Takes over what another has of one place, as the place 0. */
  void copy(KernelSums from, int place) {
    for (int q = 0; q < tt.length; q++) {
      System.arraycopy(from.tt[q], 0, tt[q], 0, tt[q].length);
      tw[q][0] = from.tw[q][place];
    }
    ww[0] = from.ww[place];
    for (int v = 0; v < yw.length; v++) {
      yw[v][0] = from.yw[v][place];
    }
  }

  /**
   * Adds one eliminated row.
   *
   * @param row its elements for the places, from {@code at}
   * @param ends its elements for trend and values, from {@code endsAt}
   */
  void addRow(double[] row, int at, double[] ends, int endsAt, int places) {
    addTrend(ends, endsAt);
    addSquares(ww, row, at, places);
    for (int q = 0; q < tw.length; q++) {
      addMultiple(tw[q], 0, ends[endsAt + q], row, at, places);
    }
    for (int v = 0; v < yw.length; v++) {
      addMultiple(yw[v], 0, ends[endsAt + tw.length + v], row, at, places);
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

  private static void addSquares(double[] sum, double[] row, int at, int places) {
    for (int j = 0; j < places; j++) {
      sum[j] += row[at + j] * row[at + j];
    }
  }

  /** {@code sum[into + j] += t * row[at + j]}. */
  static void addMultiple(double[] sum, int into, double t, double[] row, int at, int places) {
    for (int j = 0; j < places; j++) {
      sum[into + j] += t * row[at + j];
    }
  }

  /** Writes the results of the group's places from..to-1, which the sums hold from 0. */
  void close(KernelGroup group, int from, int to) {
    factorTrend();
    for (int j = 0; j < to - from; j++) {
      solveTrend(group, from + j, j);
      double variance = pointVariance - ww[j];
      for (double part : e) {
        variance += part * part;
      }
      group.estimate[from + j] = estimate(0, j);
      group.variance[from + j] = Math.max(0, variance) + sharedVariance(j);
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

  private double sharedVariance(int j) {
    double sum = 0;
    for (int v = 1; v < yw.length; v++) {
      double s = estimate(v, j);
      sum += s * s;
    }
    return sum;
  }

  /** Generalised least squares coefficients of the property, (T'T)⁻¹T'Y. */
  double[] coefficients() {
    factorTrend();
    int p = tt.length;
    double[] b = new double[p];
    for (int q = p - 1; q >= 0; q--) {
      double sum = factor[q][p];
      for (int k = q + 1; k < p; k++) {
        sum -= factor[q][k] * b[k];
      }
      b[q] = factor[q][q] == 0 ? 0 : sum / factor[q][q];
    }
    return b;
  }
}
