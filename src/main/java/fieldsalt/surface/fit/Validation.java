package fieldsalt.surface.fit;

import java.util.List;

/**
 * How well sites (or new samples) that were not used are predicted, and whether the stated errors
 * are true. Errors are value minus prediction.
 *
 * @param unit of rmse, mae, bias and CRPS: {@code ln} or the property's unit
 * @param count number of sites
 * @param rmse of the mean prediction
 * @param mae of the median prediction
 * @param bias mean error of the mean prediction
 * @param skill 1 - CRPS / CRPS of the field's mean; 0 is no better than the mean
 * @param errors whether the stated variances are true
 * @param coverage share of values inside the central intervals of 5, 10, ... 95 %
 */
public record Validation(
    String unit,
    int count,
    double rmse,
    double mae,
    double bias,
    double crps,
    double skill,
    StandardisedErrors errors,
    List<Coverage> coverage) {
  public Validation {
    coverage = List.copyOf(coverage);
  }

  /**
   * Squared errors over their stated variances: mean 1 and median 0.455 if the variances are true
   * (Lark 2000, European Journal of Soil Science 51:717-728); 95 % bands for this number of sites.
   */
  public record StandardisedErrors(
      double mean,
      double meanLow,
      double meanHigh,
      double median,
      double medianLow,
      double medianHigh) {}

  /** Share of values inside the central interval of a chance, both 0 to 1. */
  public record Coverage(double chance, double share) {}

  /**
   * Goodness G: 1 if the intervals hold just what they promise, 0.5 if each holds all data, 0 if
   * none holds any (Deutsch 1997, Geostatistics Wollongong '96).
   */
  public double goodness() {
    double sum = 0;
    for (Coverage c : coverage) {
      double a = c.share() >= c.chance() ? 1 : 0;
      sum += (3 * a - 2) * (c.share() - c.chance());
    }
    return coverage.isEmpty() ? 0 : 1 - sum / coverage.size();
  }
}
