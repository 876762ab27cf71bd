package fieldsalt.surface.fit;

import fieldsalt.gaussian.Normal;

/**
 * A weighted mixture of normals: what is known of z at a point when predictions are averaged over
 * variograms; one component where they are not.
 *
 * @param weight sums to 1
 * @param sd at least 0
 */
public record Mixture(double[] weight, double[] mean, double[] sd) {

  public double expectation() {
    double sum = 0;
    for (int k = 0; k < weight.length; k++) {
      sum += weight[k] * mean[k];
    }
    return sum;
  }

  public double variance() {
    double centre = expectation();
    double sum = 0;
    for (int k = 0; k < weight.length; k++) {
      double d = mean[k] - centre;
      sum += weight[k] * (sd[k] * sd[k] + d * d);
    }
    return sum;
  }

  /** Mean of exp(z). */
  public double meanOfExp() {
    double sum = 0;
    for (int k = 0; k < weight.length; k++) {
      sum += weight[k] * Math.exp(mean[k] + sd[k] * sd[k] / 2);
    }
    return sum;
  }

  /** Chance to be below x. */
  public double below(double x) {
    double sum = 0;
    for (int k = 0; k < weight.length; k++) {
      sum += weight[k] * below(x, mean[k], sd[k]);
    }
    return Math.min(1, sum);
  }

  private static double below(double x, double mean, double sd) {
    if (sd > 0) {
      return Normal.below((x - mean) / sd);
    }
    return x < mean ? 0 : 1;
  }

  private double density(double x) {
    double sum = 0;
    for (int k = 0; k < weight.length; k++) {
      sum += sd[k] > 0 ? weight[k] * Normal.density((x - mean[k]) / sd[k]) / sd[k] : 0;
    }
    return sum;
  }

  /**
   * The value below which z lies with chance p, 0 &lt; p &lt; 1: Newton's steps inside a bracket.
   */
  public double quantile(double p) {
    double z = Normal.quantile(p);
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < weight.length; k++) {
      low = Math.min(low, mean[k] + z * sd[k]);
      high = Math.max(high, mean[k] + z * sd[k]);
    }
    double spread = Math.sqrt(variance());
    double x = Math.min(high, Math.max(low, expectation() + z * spread));
    for (int i = 0; i < 60 && high - low > 1e-13 * (1 + Math.abs(x)); i++) {
      double f = below(x) - p;
      low = f <= 0 ? x : low;
      high = f >= 0 ? x : high;
      double slope = density(x);
      double next = slope > 0 ? x - f / slope : low;
      next = next > low && next < high ? next : (low + high) / 2;
      if (Math.abs(next - x) < 1e-12 * (spread + 1e-300)) {
        return next;
      }
      x = next;
    }
    return x;
  }
}
