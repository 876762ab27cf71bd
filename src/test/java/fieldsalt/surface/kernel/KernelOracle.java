package fieldsalt.surface.kernel;

import fieldsalt.surface.covariance.CovarianceModel;
import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * Universal kriging as the textbook writes it: one full system with Lagrange multipliers a place
 * (Cressie 1993, section 3.4), solved by elimination with pivoting. Slow and plain: the oracle of
 * the kernels.
 */
final class KernelOracle {
  private KernelOracle() {}

  /** Estimate, variance (without shared error), and the weights of the sites in the order given. */
  record Result(double estimate, double variance, double[] weights) {}

  static Result krige(
      CovarianceModel model,
      KernelData data,
      int[] sites,
      double x,
      double y,
      double[] trend,
      boolean microScale) {
    int n = sites.length;
    int p = trend.length;
    double[][] a = new double[n + p][n + p + 1];
    double[] c = new double[n + p];
    for (int i = 0; i < n; i++) {
      int si = sites[i];
      for (int j = 0; j < n; j++) {
        a[i][j] =
            model.covariance(distance(model, data, si, data.xM()[sites[j]], data.yM()[sites[j]]));
      }
      a[i][i] = model.pointVariance() + data.errorVariance()[si];
      c[i] = model.covariance(distance(model, data, si, x, y));
      for (int q = 0; q < p; q++) {
        a[i][n + q] = data.trend()[q][si];
        a[n + q][i] = data.trend()[q][si];
      }
    }
    System.arraycopy(trend, 0, c, n, p);
    double[] solution = solve(a, c);
    double estimate = 0;
    double variance = microScale ? model.pointVariance() : model.partialSill();
    for (int i = 0; i < n; i++) {
      estimate += solution[i] * data.value()[sites[i]];
    }
    for (int i = 0; i < n + p; i++) {
      variance -= solution[i] * c[i];
    }
    return new Result(estimate, variance, Arrays.copyOf(solution, n));
  }

  private static double distance(
      CovarianceModel model, KernelData data, int i, double x, double y) {
    double[] from = model.anisotropy().stretch(data.xM()[i], data.yM()[i]);
    double[] to = model.anisotropy().stretch(x, y);
    return Math.hypot(from[0] - to[0], from[1] - to[1]);
  }

  /** The k nearest sites, ties to the lower index. */
  static int[] nearest(CovarianceModel model, KernelData data, double x, double y, int k) {
    return IntStream.range(0, data.size())
        .boxed()
        .sorted(
            Comparator.<Integer>comparingDouble(i -> distance(model, data, i, x, y))
                .thenComparing(i -> i))
        .limit(k)
        .mapToInt(i -> i)
        .toArray();
  }

  static int[] all(KernelData data) {
    return IntStream.range(0, data.size()).toArray();
  }

  private static double[] solve(double[][] a, double[] b) {
    int n = b.length;
    for (int i = 0; i < n; i++) {
      a[i][n] = b[i];
    }
    for (int c = 0; c < n; c++) {
      int best = c;
      for (int r = c + 1; r < n; r++) {
        best = Math.abs(a[r][c]) > Math.abs(a[best][c]) ? r : best;
      }
      double[] swap = a[c];
      a[c] = a[best];
      a[best] = swap;
      for (int r = 0; r < n; r++) {
        double f = r == c ? 0 : a[r][c] / a[c][c];
        for (int j = c; f != 0 && j <= n; j++) {
          a[r][j] -= f * a[c][j];
        }
      }
    }
    double[] x = new double[n];
    Arrays.setAll(x, i -> a[i][n] / a[i][i]);
    return x;
  }
}
