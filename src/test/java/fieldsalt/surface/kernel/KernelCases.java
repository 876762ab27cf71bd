package fieldsalt.surface.kernel;

import fieldsalt.surface.covariance.Anisotropy;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.covariance.Matern32;
import fieldsalt.surface.covariance.Spherical;
import java.util.Random;

/** Invented data for the kernels' tests. */
final class KernelCases {
  static final CovarianceModel SPHERICAL = new CovarianceModel(new Spherical(250), 3, 0.1);
  static final CovarianceModel EXPONENTIAL = new CovarianceModel(new Exponential(120), 0.34, 0.12);
  static final CovarianceModel MATERN =
      new CovarianceModel(new Matern32(60), new Anisotropy(30, 2.5), 1.4, 0);

  private KernelCases() {}

  /** Sites spread over a square of a side in metres, with a smooth value and some noise. */
  static KernelData random(int n, double sideM, long seed) {
    Random random = new Random(seed);
    double[] x = random.doubles(n, 0, sideM).toArray();
    double[] y = random.doubles(n, 0, sideM).toArray();
    double[] value = new double[n];
    for (int i = 0; i < n; i++) {
      value[i] = Math.sin(x[i] / 90) + Math.cos(y[i] / 140) + 0.2 * random.nextGaussian();
    }
    return KernelData.of(x, y, value);
  }

  /** The same with own errors, a drift and two shared columns. */
  static KernelData withEverything(int n, double sideM, long seed) {
    Random random = new Random(seed + 1);
    KernelData data = random(n, sideM, seed);
    double[] drift = new double[n];
    double[] sometimes = new double[n];
    for (int i = 0; i < n; i++) {
      drift[i] = drift(data.xM()[i], data.yM()[i]);
      sometimes[i] = random.nextInt(3) > 0 ? 0.3 : 0;
    }
    return data.withErrorVariance(random.doubles(n, 0, 0.5).toArray())
        .withDrift(drift)
        .withShared(sometimes, random.doubles(n, -0.1, 0.1).toArray());
  }

  static double drift(double x, double y) {
    return Math.sin(x / 33 + y / 71);
  }

  /** Cells of a grid as one group, drift set where the data have it. */
  static KernelGroup group(KernelData data, double west, double south, double cell, int side) {
    KernelGroup group = new KernelGroup(side * side, data.trend().length);
    for (int r = 0; r < side; r++) {
      for (int c = 0; c < side; c++) {
        add(group, r * side + c, west + c * cell, south + r * cell);
      }
    }
    return group;
  }

  static void add(KernelGroup group, int id, double x, double y) {
    int at = group.add(id, x, y);
    if (group.trend.length > 1) {
      group.trend[1][at] = drift(x, y);
    }
  }
}
