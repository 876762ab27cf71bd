package fieldsalt.surface.kernel;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.site.FieldRows;
import fieldsalt.surface.site.Observations;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Many sites made ready for local prediction: the shared offsets, estimated from fewer sites, are
 * taken off the rows, and what error they still have stays with the rows as shared columns; the
 * rows of one site become one, weighted by their precision.
 */
final class LocalSites {
  private final Solved solved;
  private final double[] offsets;

  /** R with R R' = covariance of the offsets' error: offsets x the solver's shared effects. */
  private final double[][] root;

  /**
   * @param solved from fewer sites, whose offsets and drifts' scales are used
   */
  LocalSites(Solved solved) {
    this.solved = solved;
    int fixed = solved.data().drifts().size();
    int count = solved.data().offsets();
    offsets = Arrays.copyOfRange(solved.solution().sharedEffects(), fixed, fixed + count);
    int size = solved.data().shared();
    double[][] inverse = new double[size][size];
    for (int i = 0; i < size; i++) {
      inverse[i][i] = 1;
    }
    solved.solution().sharedFactor().forwardRows(inverse);
    root = new double[count][size];
    for (int k = 0; k < count; k++) {
      for (int m = 0; m < size; m++) {
        root[k][m] = inverse[m][fixed + k];
      }
    }
  }

  /**
   * One field.
   *
   * @param rows all of its sites
   * @param eastM what their x lack to the coordinates of {@code solved}
   * @param northM likewise
   */
  KernelData of(FieldRows rows, double eastM, double northM) {
    int n = rows.sites().size();
    double[] value = new double[n];
    double[] variance = new double[n];
    double[][] shared = new double[solved.data().shared()][n];
    for (int from = 0; from < rows.siteOf().length; ) {
      int to = from;
      while (to < rows.siteOf().length && rows.siteOf()[to] == rows.siteOf()[from]) {
        to++;
      }
      combine(rows, from, to, value, variance, shared);
      from = to;
    }
    return KernelData.of(shifted(rows.x(), eastM), shifted(rows.y(), northM), value)
        .withErrorVariance(variance)
        .withDrift(drift(rows.sites()))
        .withShared(shared);
  }

  private void combine(
      FieldRows rows, int from, int to, double[] value, double[] variance, double[][] shared) {
    int site = rows.siteOf()[from];
    double precision = 0;
    for (int r = from; r < to; r++) {
      precision += 1 / rows.own()[r];
    }
    for (int r = from; r < to; r++) {
      double weight = to - from == 1 ? 1 : 1 / rows.own()[r] / precision;
      value[site] += weight * (rows.rows().get(r).value() - offset(rows, r));
      for (int m = 0; m < shared.length; m++) {
        shared[m][site] += weight * remaining(rows, r, m);
      }
    }
    variance[site] = to - from == 1 ? rows.own()[from] : 1 / precision;
  }

  private double offset(FieldRows rows, int row) {
    double sum = 0;
    for (int k = 0; k < offsets.length; k++) {
      sum += rows.loadings()[k][row] * offsets[k];
    }
    return sum;
  }

  private double remaining(FieldRows rows, int row, int column) {
    double sum = 0;
    for (int k = 0; k < offsets.length; k++) {
      sum += rows.loadings()[k][row] * root[k][column];
    }
    return sum;
  }

  private double[][] drift(List<SiteReadings.Site> sites) {
    List<double[]> columns = new ArrayList<>();
    for (Observations.ScaledDrift drift : solved.data().drifts()) {
      double[] at = sites.stream().mapToDouble(s -> drift.at(s.place())).toArray();
      for (int i = 0; i < at.length; i++) {
        at[i] = Double.isNaN(at[i]) ? 0 : at[i];
      }
      columns.add(at);
    }
    return columns.toArray(double[][]::new);
  }

  private static double[] shifted(double[] x, double by) {
    return Arrays.stream(x).map(v -> v + by).toArray();
  }
}
