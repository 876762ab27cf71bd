package fieldsalt.surface.site;

import fieldsalt.gaussian.Cholesky;
import java.util.Arrays;
import java.util.List;

/**
 * Ordinary least squares of one value a site on the drifts, each field with its own mean. The
 * variogram of its residuals is a little low, because the line was fitted to them; each drift takes
 * one degree of freedom, which among the hundreds of sites that moments are for is well below 1 %
 * of the sill.
 */
public record DriftRegression(double[] slopes) {

  /**
   * Fits.
   *
   * @param siteValues one array a part of the data
   * @throws fieldsalt.gaussian.NotPositiveDefinite if a drift is a combination of the field means
   *     and the other
   */
  public static DriftRegression of(Observations data, List<double[]> siteValues) {
    int count = data.drifts().size();
    double[][] cross = new double[count][count];
    double[] right = new double[count];
    for (int part = 0; part < siteValues.size(); part++) {
      double[] y = centred(siteValues.get(part));
      double[][] x = data.parts().get(part).drift();
      for (int d = 0; d < count; d++) {
        double[] own = centred(x[d]);
        right[d] += dot(own, y);
        for (int e = 0; e < count; e++) {
          cross[d][e] += dot(own, x[e]);
        }
      }
    }
    return new DriftRegression(count == 0 ? right : Cholesky.factor(cross).solve(right));
  }

  private static double[] centred(double[] values) {
    double mean = Arrays.stream(values).average().orElse(0);
    return Arrays.stream(values).map(v -> v - mean).toArray();
  }

  /** The values of a part's sites less the drifts' effects; the field's mean stays in. */
  public double[] residuals(FieldRows part, double[] siteValues) {
    double[] left = siteValues.clone();
    for (int d = 0; d < slopes.length; d++) {
      for (int s = 0; s < left.length; s++) {
        left[s] -= slopes[d] * part.drift()[d][s];
      }
    }
    return left;
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}
