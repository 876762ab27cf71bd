package fieldsalt.surface;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The sample variogram: half the mean squared difference of pairs of sites by distance, pairs
 * within fields only, of what drifts leave if there are any. The known errors' part is taken off
 * each pair, so that what is left is the property's own: γ(h) + c_micro.
 */
final class SampleVariogram {
  private static final int LAGS = 15;
  private final double cutoffM;
  private final int[] pairs = new int[LAGS];
  private final double[] distances = new double[LAGS];
  private final double[] squares = new double[LAGS];
  private final double[] roots = new double[LAGS];

  private SampleVariogram(double cutoffM) {
    this.cutoffM = cutoffM;
  }

  /**
   * 15 lags up to a third of the diagonal of the longest field's sites; a site counts with its
   * paste row, else its most precise one.
   *
   * @return lags that hold pairs, shortest first
   */
  static List<SurfaceDetails.Lag> of(Observations data) {
    SampleVariogram sample = new SampleVariogram(RangeBounds.longestDiagonal(data) / 3);
    List<int[]> best = data.parts().stream().map(SampleVariogram::best).toList();
    List<double[]> values = new ArrayList<>();
    for (int part = 0; part < best.size(); part++) {
      double[] all = data.parts().get(part).values();
      values.add(Arrays.stream(best.get(part)).mapToDouble(row -> all[row]).toArray());
    }
    DriftRegression drift = DriftRegression.of(data, values);
    for (int part = 0; part < best.size(); part++) {
      FieldRows rows = data.parts().get(part);
      sample.add(rows, best.get(part), drift.residuals(rows, values.get(part)));
    }
    return sample.lags();
  }

  private static int[] best(FieldRows part) {
    int[] best = new int[part.sites().size()];
    for (int s = 0; s < best.length; s++) {
      int[] members = part.rowsOf(s);
      best[s] = members[part.bestOf(members)];
    }
    return best;
  }

  private void add(FieldRows part, int[] best, double[] values) {
    for (int i = 0; i < best.length; i++) {
      for (int j = 0; j < i; j++) {
        double h = Math.hypot(part.x()[i] - part.x()[j], part.y()[i] - part.y()[j]);
        if (h <= cutoffM) {
          add(h, values[i] - values[j], known(part, best[i], best[j]));
        }
      }
    }
  }

  private void add(double h, double difference, double known) {
    int lag = (int) Math.min(LAGS - 1, Math.max(0, Math.ceil(h / cutoffM * LAGS) - 1));
    pairs[lag]++;
    distances[lag] += h;
    squares[lag] += difference * difference - known;
    roots[lag] += Math.sqrt(Math.abs(difference));
  }

  /** Variance of the difference of two rows' errors. */
  private static double known(FieldRows part, int i, int j) {
    double sum = part.own()[i] + part.own()[j];
    for (double[] loading : part.loadings()) {
      double d = loading[i] - loading[j];
      sum += d * d;
    }
    return sum;
  }

  private List<SurfaceDetails.Lag> lags() {
    List<SurfaceDetails.Lag> lags = new ArrayList<>();
    for (int k = 0; k < LAGS; k++) {
      if (pairs[k] > 0) {
        double n = pairs[k];
        lags.add(
            new SurfaceDetails.Lag(
                pairs[k], distances[k] / n, squares[k] / (2 * n), cressieHawkins(roots[k] / n, n)));
      }
    }
    return lags;
  }

  private static double cressieHawkins(double meanRoot, double n) {
    return Math.pow(meanRoot, 4) / (2 * (0.457 + 0.494 / n));
  }
}
