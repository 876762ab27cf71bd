package fieldsalt.plan.draw;

import fieldsalt.gaussian.Cholesky;
import fieldsalt.gaussian.NotPositiveDefinite;

/**
 * Positive amounts that move together, matched by a joint lognormal to their means and covariance:
 * covariance of the logarithms ln(1 + C_ij / (M_i M_j)), exact for the moments.
 */
public final class JointLognormal {
  private final double[] logMean;
  private final double[][] logCovariance;

  /**
   * @param mean above 0
   * @param covariance of the amounts themselves
   */
  public JointLognormal(double[] mean, double[][] covariance) {
    int n = mean.length;
    logMean = new double[n];
    logCovariance = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        double ratio = covariance[i][j] / (mean[i] * mean[j]);
        logCovariance[i][j] = Math.log1p(Math.max(-0.99, ratio));
      }
      logMean[i] = Math.log(mean[i]) - logCovariance[i][i] / 2;
    }
  }

  double logMean(int i) {
    return logMean[i];
  }

  double logVariance(int i) {
    return logCovariance[i][i];
  }

  /** Draws, one row an amount. */
  public double[][] draw(Draws draws) {
    int n = logMean.length;
    double[][] z = draws.standard(n);
    Cholesky factor = factor();
    double[][] out = new double[n][Draws.COUNT];
    double[] column = new double[n];
    for (int d = 0; d < Draws.COUNT; d++) {
      for (int i = 0; i < n; i++) {
        column[i] = z[i][d];
      }
      double[] y = factor.correlate(column);
      for (int i = 0; i < n; i++) {
        out[i][d] = Math.exp(logMean[i] + y[i]);
      }
    }
    return out;
  }

  /**
   * Zones that share all of their error make the matrix singular: a trace is added until it is not.
   */
  private Cholesky factor() {
    double largest = 1e-12;
    for (int i = 0; i < logMean.length; i++) {
      largest = Math.max(largest, logCovariance[i][i]);
    }
    return factor(1e-10 * largest);
  }

  private Cholesky factor(double trace) {
    if (trace > 10) {
      throw new IllegalStateException("not a covariance of " + logMean.length + " zone means");
    }
    try {
      return Cholesky.factor(withTrace(trace));
    } catch (NotPositiveDefinite addMore) {
      return factor(trace * 10);
    }
  }

  private double[][] withTrace(double trace) {
    double[][] a = new double[logMean.length][];
    for (int i = 0; i < a.length; i++) {
      a[i] = logCovariance[i].clone();
      a[i][i] += trace;
    }
    return a;
  }
}
