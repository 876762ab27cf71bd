package fieldsalt.basis;

import java.util.List;

/**
 * Slope of ln ECe on ln EC through the pairs of one laboratory and method, both with error: the
 * structural line with known ratio of error variances (Fuller 1987, Measurement Error Models,
 * section 1.3), which does not bend to 0 as least squares does.
 *
 * @param slope 1 where a multiplier fits at every salinity
 * @param low lower end of its 90 % interval
 * @param high upper end of its 90 % interval
 */
public record LnSlope(
    String laboratory, String method, int pairs, double slope, double low, double high) {
  static final int LEAST_PAIRS = 12;

  /** Whether the interval excludes 1: a multiplier is then wrong at one end. */
  public boolean isCurved() {
    return low > 1 || high < 1;
  }

  /**
   * @param x ln EC converted with published factors
   * @param y ln ECe of the paste
   * @param varianceX mean own variance of x
   * @param varianceY mean own variance of y
   */
  static LnSlope fit(
      String laboratory,
      String method,
      List<Double> x,
      List<Double> y,
      double varianceX,
      double varianceY) {
    int n = x.size();
    double mx = x.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    double my = y.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    double sxx = 0;
    double syy = 0;
    double sxy = 0;
    for (int i = 0; i < n; i++) {
      sxx += (x.get(i) - mx) * (x.get(i) - mx) / (n - 1);
      syy += (y.get(i) - my) * (y.get(i) - my) / (n - 1);
      sxy += (x.get(i) - mx) * (y.get(i) - my) / (n - 1);
    }
    double delta = varianceY / varianceX;
    double spread = syy - delta * sxx;
    double slope = (spread + Math.sqrt(spread * spread + 4 * delta * sxy * sxy)) / (2 * sxy);
    double residual = Math.max(0, syy - 2 * slope * sxy + slope * slope * sxx) * (n - 1) / (n - 2);
    double errorX = residual / (delta + slope * slope);
    double trueX = Math.max(1e-9, sxy / slope);
    double variance =
        (trueX * residual + errorX * residual - slope * slope * errorX * errorX)
            / ((n - 1) * trueX * trueX);
    double half = StudentT.quantile95(n - 2) * Math.sqrt(Math.max(0, variance));
    return new LnSlope(laboratory, method, n, slope, slope - half, slope + half);
  }
}
