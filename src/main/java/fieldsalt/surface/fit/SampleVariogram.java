package fieldsalt.surface.fit;

import fieldsalt.surface.site.DriftRegression;
import fieldsalt.surface.site.FieldRows;
import fieldsalt.surface.site.Observations;
import java.util.ArrayList;
import java.util.List;

/**
 * The sample variogram: half the mean squared difference of pairs of sites by distance, pairs
 * within fields only, of what drifts leave if there are any. The known errors' part is taken off
 * each pair, so that what is left is the property's own: γ(h) + c_micro.
 */
public final class SampleVariogram {
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
   * paste row, else its most precise one, repeats of it averaged.
   *
   * @return lags that hold pairs, shortest first
   */
  public static List<SurfaceDetails.Lag> of(Observations data) {
    SampleVariogram sample = new SampleVariogram(RangeBounds.longestDiagonal(data) / 3);
    List<Best> best = data.parts().stream().map(Best::of).toList();
    DriftRegression drift = DriftRegression.of(data, best.stream().map(Best::value).toList());
    for (int part = 0; part < best.size(); part++) {
      FieldRows rows = data.parts().get(part);
      sample.add(rows, best.get(part), drift.residuals(rows, best.get(part).value()));
    }
    return sample.lags();
  }

  /**
   * What each site counts with.
   *
   * @param row its paste row, else its most precise one
   * @param value of that row, or the mean of rows that differ from it by their own error only
   * @param own variance of the own error of that value
   */
  private record Best(int[] row, double[] value, double[] own) {
    static Best of(FieldRows part) {
      int n = part.sites().size();
      Best best = new Best(new int[n], new double[n], new double[n]);
      for (int s = 0; s < n; s++) {
        int[] members = part.rowsOf(s);
        best.row[s] = members[part.bestOf(members)];
        best.value[s] = part.rows().get(best.row[s]).value();
        best.own[s] = part.own()[best.row[s]];
        if (members.length > 1) {
          best.average(part, members, s);
        }
      }
      return best;
    }

    private void average(FieldRows part, int[] members, int site) {
      double precision = 0;
      double sum = 0;
      for (int r : members) {
        if (isAlike(part, r, row[site])) {
          precision += 1 / part.own()[r];
          sum += part.rows().get(r).value() / part.own()[r];
        }
      }
      value[site] = sum / precision;
      own[site] = 1 / precision;
    }

    private static boolean isAlike(FieldRows part, int one, int other) {
      return part.rows().get(one).method().equals(part.rows().get(other).method())
          && shared(part, one, other) == 0;
    }
  }

  private void add(FieldRows part, Best best, double[] left) {
    for (int i = 0; i < left.length; i++) {
      for (int j = 0; j < i; j++) {
        double h = Math.hypot(part.x()[i] - part.x()[j], part.y()[i] - part.y()[j]);
        if (h <= cutoffM) {
          double known = best.own[i] + best.own[j] + shared(part, best.row[i], best.row[j]);
          add(h, left[i] - left[j], known);
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

  /** Variance of the difference of two rows' shared errors. */
  private static double shared(FieldRows part, int i, int j) {
    double sum = 0;
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
