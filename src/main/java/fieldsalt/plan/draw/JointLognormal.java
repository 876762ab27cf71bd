package fieldsalt.plan.draw;

import fieldsalt.gaussian.Cholesky;
import fieldsalt.gaussian.NotPositiveDefinite;
import java.util.Optional;

/**
 * Positive amounts of one field that move together, matched by a joint lognormal to their means and
 * covariance: covariance of the logarithms ln(1 + C_ij / (M_i M_j)), exact for the moments. What
 * they have in common with other fields goes through shared scores, the rest through the field's
 * own, so that fields can be drawn one after another.
 */
public final class JointLognormal {
  private final double[] logMean;
  private final double[][] shared;
  private final Cholesky own;

  /**
   * @param mean above 0
   * @param covariance of the amounts themselves
   * @param shared loadings of the logarithms on effects that all fields share: one row an amount
   */
  public JointLognormal(double[] mean, double[][] covariance, double[][] shared) {
    int n = mean.length;
    logMean = new double[n];
    double[][] log = new double[n][n];
    double largest = 1e-12;
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        double ratio = covariance[i][j] / (mean[i] * mean[j]);
        log[i][j] = Math.log1p(Math.max(-0.99, ratio));
      }
      logMean[i] = Math.log(mean[i]) - log[i][i] / 2;
      largest = Math.max(largest, log[i][i]);
    }
    Split split = Split.of(log, shared, largest);
    this.shared = split.shared();
    this.own = split.own();
  }

  /** The logarithms' covariance as shared loadings and the factor of what is left. */
  private record Split(double[][] shared, Cholesky own) {
    /** Traces tried, as shares of the largest variance: zones may share all of their error. */
    private static final double[] TRACES = {1e-10, 1e-9, 1e-8, 1e-7, 1e-6, 1e-5};

    private static final int STEPS = 20;

    /**
     * Matching the moments by lognormals can leave a field less variance than its shared part says;
     * that part is then made smaller until what is left is a covariance.
     */
    static Split of(double[][] log, double[][] loadings, double largest) {
      for (int step = STEPS; step >= 0; step--) {
        double[][] less = times(loadings, (double) step / STEPS);
        for (double trace : TRACES) {
          Optional<Cholesky> own = factor(left(log, less, trace * largest));
          if (own.isPresent()) {
            return new Split(less, own.get());
          }
        }
      }
      return new Split(times(loadings, 0), diagonal(log, largest));
    }

    private static Optional<Cholesky> factor(double[][] a) {
      try {
        return Optional.of(Cholesky.factor(a));
      } catch (NotPositiveDefinite notYet) {
        return Optional.empty();
      }
    }

    private static double[][] times(double[][] rows, double by) {
      double[][] out = new double[rows.length][];
      for (int i = 0; i < rows.length; i++) {
        out[i] = Draws.map(rows[i], v -> v * by);
      }
      return out;
    }

    private static double[][] left(double[][] log, double[][] loadings, double trace) {
      double[][] a = new double[log.length][log.length];
      for (int i = 0; i < a.length; i++) {
        for (int j = 0; j < a.length; j++) {
          a[i][j] = log[i][j] + (i == j ? trace : 0);
          for (int k = 0; k < loadings[i].length; k++) {
            a[i][j] -= loadings[i][k] * loadings[j][k];
          }
        }
      }
      return a;
    }

    /** Logarithms of moments need not be a covariance at all: then each amount by itself. */
    private static Cholesky diagonal(double[][] log, double largest) {
      double[][] a = new double[log.length][log.length];
      for (int i = 0; i < a.length; i++) {
        a[i][i] = Math.max(log[i][i], 1e-10 * largest);
      }
      return Cholesky.factor(a);
    }
  }

  /** Draws, one row an amount, by the field's own draws and the scores of what all fields share. */
  public double[][] draw(Draws draws, double[][] scores) {
    int n = logMean.length;
    double[][] z = draws.standard(n);
    double[][] out = new double[n][Draws.COUNT];
    double[] column = new double[n];
    for (int d = 0; d < Draws.COUNT; d++) {
      for (int i = 0; i < n; i++) {
        column[i] = z[i][d];
      }
      double[] y = own.correlate(column);
      for (int i = 0; i < n; i++) {
        double sum = logMean[i] + y[i];
        for (int k = 0; k < shared[i].length; k++) {
          sum += shared[i][k] * scores[k][d];
        }
        out[i][d] = Math.exp(sum);
      }
    }
    return out;
  }
}
