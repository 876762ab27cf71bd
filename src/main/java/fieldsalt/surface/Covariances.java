package fieldsalt.surface;

/**
 * Many covariances of the error-free property at once: {@link CovarianceModel#covariance} in a form
 * that the compiler vectorises, equal to it within 2e-15 of the partial sill. Coordinates are
 * stretched ({@link Anisotropy#stretch}) already.
 */
final class Covariances {
  /** exp(-u) below this u is less than half a unit in the last place of 1. */
  private static final double FARTHEST = 37;

  /** How often the argument of the exponential is halved. */
  private static final double HALVED = 1.0 / 128;

  private final Variogram correlation;
  private final double partialSill;

  Covariances(CovarianceModel model) {
    correlation = model.correlation();
    partialSill = model.partialSill();
  }

  /**
   * Covariances between one place and the first {@code count} of others, into {@code out[at + i]}.
   */
  void fill(double x0, double y0, double[] x, double[] y, int from, int to, double[] out, int at) {
    scaledDistances(x0, y0, x, y, from, to, out, at);
    int last = at + to - from;
    if (correlation instanceof Spherical) {
      spherical(out, at, last);
    } else if (correlation instanceof Exponential) {
      exponential(out, at, last);
    } else {
      matern32(out, at, last);
    }
  }

  private void scaledDistances(
      double x0, double y0, double[] x, double[] y, int from, int to, double[] out, int at) {
    double perRange = 1 / correlation.rangeM();
    int shift = at - from;
    for (int i = from; i < to; i++) {
      double dx = x[i] - x0;
      double dy = y[i] - y0;
      out[shift + i] = Math.sqrt(dx * dx + dy * dy) * perRange;
    }
  }

  private void spherical(double[] u, int from, int to) {
    for (int i = from; i < to; i++) {
      double v = Math.min(u[i], 1);
      u[i] = partialSill * (1 - v * (1.5 - 0.5 * v * v));
    }
  }

  private void exponential(double[] u, int from, int to) {
    for (int i = from; i < to; i++) {
      u[i] = partialSill * expMinus(Math.min(u[i], FARTHEST));
    }
  }

  private void matern32(double[] u, int from, int to) {
    for (int i = from; i < to; i++) {
      double v = Math.min(u[i], FARTHEST);
      u[i] = partialSill * (1 + v) * expMinus(v);
    }
  }

  /**
   * exp(-u) for u from 0 to {@link #FARTHEST}: Taylor's series of e^a - 1 to the eighth power at a
   * = -u/128, doubled five times by e^2a - 1 = m (m + 2), which keeps the digits near 1, then
   * squared twice, which keeps those near 0. No branch, so that it vectorises.
   */
  static double expMinus(double u) {
    double a = -u * HALVED;
    double high = 1.0 / 120 + a * (1.0 / 720 + a * (1.0 / 5040 + a / 40320));
    double m = a * (1 + a * (1.0 / 2 + a * (1.0 / 6 + a * (1.0 / 24 + a * high))));
    m *= m + 2;
    m *= m + 2;
    m *= m + 2;
    m *= m + 2;
    m *= m + 2;
    double quarter = 1 + m;
    double half = quarter * quarter;
    return half * half;
  }
}
