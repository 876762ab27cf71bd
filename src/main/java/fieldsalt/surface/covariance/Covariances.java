package fieldsalt.surface.covariance;

/**
 * Many covariances of the error-free property at once: {@link CovarianceModel#covariance} in a form
 * that the compiler vectorises, equal to it within 2e-15 of the partial sill. Coordinates are
 * stretched ({@link Anisotropy#stretch}) already.
 *
 * <p>Why these loops look as they do: Java 17 vectorises a loop whose arrays all have the loop's
 * own index and whose body is short; so results stand at the index of their point, and the
 * exponential takes three loops. An object serves one thread.
 */
public final class Covariances {
  /** exp(-u) below this u is less than half a unit in the last place of 1. */
  private static final double FARTHEST = 37;

  private final Variogram correlation;
  private final double partialSill;
  private final double[] scratch;

  /**
   * @param points room for so many
   */
  public Covariances(CovarianceModel model, int points) {
    correlation = model.correlation();
    partialSill = model.partialSill();
    scratch = new double[points];
  }

  /** Covariance between one place and each point {@code from <= i < to}, into {@code out[i]}. */
  public void fill(double x0, double y0, double[] x, double[] y, int from, int to, double[] out) {
    double perRange = 1 / correlation.rangeM();
    for (int i = from; i < to; i++) {
      double dx = x[i] - x0;
      double dy = y[i] - y0;
      out[i] = Math.sqrt(dx * dx + dy * dy) * perRange;
    }
    covariances(out, from, to);
  }

  /** Distances in ranges are replaced by covariances. */
  private void covariances(double[] out, int from, int to) {
    if (correlation instanceof Spherical) {
      spherical(out, from, to);
    } else if (correlation instanceof Exponential) {
      exponential(out, from, to);
    } else {
      matern32(out, from, to);
    }
  }

  private void spherical(double[] u, int from, int to) {
    for (int i = from; i < to; i++) {
      double v = Math.min(u[i], 1);
      u[i] = partialSill * (1 - v * (1.5 - 0.5 * v * v));
    }
  }

  private void exponential(double[] u, int from, int to) {
    expMinus(u, from, to);
    for (int i = from; i < to; i++) {
      u[i] *= partialSill;
    }
  }

  private void matern32(double[] u, int from, int to) {
    System.arraycopy(u, from, scratch, from, to - from);
    expMinus(scratch, from, to);
    for (int i = from; i < to; i++) {
      u[i] = partialSill * (1 + Math.min(u[i], FARTHEST)) * scratch[i];
    }
  }

  /**
   * Replaces u by exp(-u), or by exp(-37) beyond it: Taylor's series of e^a - 1 to the eighth power
   * at a = -u/128, doubled five times by e^2a - 1 = m (m + 2), which keeps the digits near 1, then
   * squared twice, which keeps those near 0.
   */
  static void expMinus(double[] u, int from, int to) {
    for (int i = from; i < to; i++) {
      double a = Math.min(u[i], FARTHEST) * (-1.0 / 128);
      double high =
          1.0 / 24 + a * (1.0 / 120 + a * (1.0 / 720 + a * (1.0 / 5040 + a * (1.0 / 40320))));
      u[i] = a * (1 + a * (1.0 / 2 + a * (1.0 / 6 + a * high)));
    }
    for (int i = from; i < to; i++) {
      double m = u[i];
      m *= m + 2;
      m *= m + 2;
      m *= m + 2;
      m *= m + 2;
      u[i] = m * (m + 2);
    }
    for (int i = from; i < to; i++) {
      double quarter = 1 + u[i];
      double half = quarter * quarter;
      u[i] = half * half;
    }
  }
}
