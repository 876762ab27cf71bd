package fieldsalt.surface;

import fieldsalt.gaussian.Cholesky;
import java.util.Arrays;

/**
 * Kriging from all sites: one factor of their covariance V serves every place. Variances need L w =
 * c solved for every place, which is done for a whole group at once; estimates alone come by the
 * dual form, {@code x0'b + c'V⁻¹(y - Xb)}, b the generalised least squares coefficients, at a small
 * part of the cost.
 */
final class GlobalKernel implements PredictionKernel {
  private static final int SIDE = 16;

  private final KernelSites sites;
  private final Cholesky v;
  private final boolean variances;

  /** L⁻¹ of trend and values, a row a site. */
  private final double[][] solved;

  private final double[] coefficients;

  /** V⁻¹(y - Xb). */
  private final double[] dual;

  /**
   * @param factor of any covariance V of the sites' rows, in their order, shared errors included
   * @param variances whether variances are wanted; without, they are left 0
   */
  GlobalKernel(KernelSites sites, Cholesky factor, boolean variances) {
    this.sites = sites;
    this.variances = variances;
    v = factor;
    solved = new double[sites.size()][sites.width()];
    for (int i = 0; i < solved.length; i++) {
      sites.copyColumns(i, solved[i], 0);
    }
    v.forwardRows(solved);
    KernelSums sums = sites.sums(0);
    for (double[] row : solved) {
      sums.addRow(row, 0, 0, row, 0);
    }
    coefficients = sums.coefficients();
    dual = v.solve(residual());
  }

  /** Factors the covariance of the sites: partial sill x rho; micro-scale and own variance. */
  static GlobalKernel of(KernelSites sites, boolean variances) {
    KernelRows rows = new KernelRows(sites, sites.size(), 0);
    int[] all = new int[sites.size()];
    Arrays.setAll(all, i -> i);
    double[][] v = rows.fill(all, all.length, new KernelGroup(0, 1), 0, 0);
    return new GlobalKernel(sites, Cholesky.factor(v), variances);
  }

  private double[] residual() {
    double[] residual = sites.data().value().clone();
    for (int q = 0; q < coefficients.length; q++) {
      for (int i = 0; i < residual.length; i++) {
        residual[i] -= coefficients[q] * sites.data().trend()[q][i];
      }
    }
    return residual;
  }

  @Override
  public int groupSide() {
    return SIDE;
  }

  @Override
  public Solver solver() {
    return new GlobalSolver();
  }

  private final class GlobalSolver implements Solver {
    private final double[][] c = new double[sites.size()][SIDE * SIDE];
    private final Covariances covariances = sites.covariances(SIDE * SIDE);
    private final KernelSums sums = sites.sums(SIDE * SIDE);

    @Override
    public void predict(KernelGroup group) {
      group.stretch(sites.anisotropy());
      int places = group.count();
      KernelData data = sites.data();
      for (int i = 0; i < c.length; i++) {
        covariances.fill(data.xM()[i], data.yM()[i], group.x, group.y, 0, places, c[i]);
      }
      if (variances) {
        solve(group, places);
      } else {
        estimate(group, places);
      }
    }

    private void solve(KernelGroup group, int places) {
      v.forwardRows(c, places);
      sums.clear(0, places);
      for (int i = 0; i < c.length; i++) {
        sums.addRow(c[i], 0, places, solved[i], 0);
      }
      sums.close(group, 0, places, 0);
    }

    private void estimate(KernelGroup group, int places) {
      for (int j = 0; j < places; j++) {
        double mean = 0;
        for (int q = 0; q < coefficients.length; q++) {
          mean += coefficients[q] * group.trend[q][j];
        }
        group.estimate[j] = mean;
        group.variance[j] = 0;
      }
      for (int i = 0; i < c.length; i++) {
        KernelSums.addMultiple(group.estimate, dual[i], c[i], 0, places);
      }
    }
  }
}
