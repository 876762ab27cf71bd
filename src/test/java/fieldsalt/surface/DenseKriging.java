package fieldsalt.surface;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.site.Target;

/**
 * Kriging as the textbooks write it (Cressie 1993, Statistics for Spatial Data, section 3.4.5),
 * with the dense V of all rows and Gaussian elimination; slow, plain, and independent of the
 * product.
 */
public final class DenseKriging {
  private final SiteReadings readings;
  private final CovarianceModel model;
  private final double[][] v;
  private final double[][] x;

  public DenseKriging(SiteReadings readings, CovarianceModel model) {
    this.readings = readings;
    this.model = model;
    int n = readings.rows().size();
    v = new double[n][n];
    x = new double[n][];
    for (int i = 0; i < n; i++) {
      x[i] = indicator(site(i).field());
      for (int j = 0; j < n; j++) {
        boolean one = readings.rows().get(i).site() == readings.rows().get(j).site();
        v[i][j] = covariance(site(i), site(j)) + (one ? model.microScale() : 0) + shared(i, j);
      }
      v[i][i] += readings.rows().get(i).ownVariance();
    }
  }

  private SiteReadings.Site site(int row) {
    return readings.sites().get(readings.rows().get(row).site());
  }

  private double[] indicator(String field) {
    String[] fields =
        readings.sites().stream().map(SiteReadings.Site::field).distinct().toArray(String[]::new);
    double[] x = new double[fields.length];
    for (int f = 0; f < x.length; f++) {
      x[f] = fields[f].equals(field) ? 1 : 0;
    }
    return x;
  }

  private double covariance(SiteReadings.Site a, SiteReadings.Site b) {
    return a.field().equals(b.field())
        ? model.partialSill() * model.correlation().rho(a.place().distanceM(b.place()))
        : 0;
  }

  private double shared(int i, int j) {
    double sum = 0;
    for (SiteReadings.Loading a : readings.rows().get(i).loadings()) {
      for (SiteReadings.Loading b : readings.rows().get(j).loadings()) {
        sum += a.weight() * b.weight() * readings.offsetCovariance()[a.offset()][b.offset()];
      }
    }
    return sum;
  }

  /** {@code {estimate, variance}} of z at a place, micro-scale included. */
  public double[] at(Target target) {
    SiteReadings.Site here =
        SurfaceCases.site("here", target.field(), target.place().xM(), target.place().yM());
    int n = v.length;
    int p = x[0].length;
    double[] x0 = indicator(target.field());
    double[][] system = new double[n + p][n + p];
    double[] right = new double[n + p];
    for (int i = 0; i < n; i++) {
      System.arraycopy(v[i], 0, system[i], 0, n);
      for (int k = 0; k < p; k++) {
        system[i][n + k] = x[i][k];
        system[n + k][i] = x[i][k];
      }
      right[i] = covariance(site(i), here);
    }
    System.arraycopy(x0, 0, right, n, p);
    double[] solution = eliminate(system, right.clone());
    double estimate = 0;
    double variance = model.pointVariance();
    for (int i = 0; i < n; i++) {
      estimate += solution[i] * readings.rows().get(i).value();
    }
    for (int i = 0; i < n + p; i++) {
      variance -= solution[i] * right[i];
    }
    return new double[] {estimate, variance};
  }

  /** Gaussian elimination with row exchanges. */
  public static double[] eliminate(double[][] a, double[] b) {
    int n = b.length;
    for (int k = 0; k < n; k++) {
      int best = k;
      for (int i = k + 1; i < n; i++) {
        best = Math.abs(a[i][k]) > Math.abs(a[best][k]) ? i : best;
      }
      double[] row = a[k];
      a[k] = a[best];
      a[best] = row;
      double value = b[k];
      b[k] = b[best];
      b[best] = value;
      for (int i = k + 1; i < n; i++) {
        double f = a[i][k] / a[k][k];
        for (int j = k; j < n; j++) {
          a[i][j] -= f * a[k][j];
        }
        b[i] -= f * b[k];
      }
    }
    for (int i = n - 1; i >= 0; i--) {
      for (int j = i + 1; j < n; j++) {
        b[i] -= a[i][j] * b[j];
      }
      b[i] /= a[i][i];
    }
    return b;
  }
}
