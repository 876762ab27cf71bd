package fieldsalt.pipeline;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.basis.site.SiteReadings.Loading;
import java.util.Arrays;
import java.util.List;

/** How wide the readings of a field are, shared errors included. */
final class ReadingErrors {
  private ReadingErrors() {}

  /** Median standard error of the rows of a field, on their own scale; 0 without rows. */
  static double median(SiteReadings readings, String field) {
    double[] sorted =
        readings.rows().stream()
            .filter(row -> readings.sites().get(row.site()).field().equals(field))
            .mapToDouble(row -> Math.sqrt(variance(readings, row)))
            .sorted()
            .toArray();
    int n = sorted.length;
    return n == 0 ? 0 : (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
  }

  /** Variance of one row: its own and that of the offsets it carries. */
  static double variance(SiteReadings readings, SiteReadings.Row row) {
    double shared = 0;
    for (Loading a : row.loadings()) {
      for (Loading b : row.loadings()) {
        double covariance = readings.offsetCovariance()[a.offset()][b.offset()];
        shared += a.weight() * b.weight() * covariance;
      }
    }
    return row.ownVariance() + shared;
  }

  /** Variance of the sum of rows: an offset that many carry counts with its whole weight. */
  static double varianceOfSum(SiteReadings readings, List<SiteReadings.Row> rows) {
    double[] weight = new double[readings.offsets().size()];
    double variance = 0;
    for (SiteReadings.Row row : rows) {
      variance += row.ownVariance();
      row.loadings().forEach(l -> weight[l.offset()] += l.weight());
    }
    for (int a = 0; a < weight.length; a++) {
      for (int b = 0; b < weight.length; b++) {
        variance += weight[a] * weight[b] * readings.offsetCovariance()[a][b];
      }
    }
    return variance;
  }

  /** Rows of a field, most precise first. */
  static SiteReadings.Row[] ofSite(SiteReadings readings, int site) {
    SiteReadings.Row[] rows =
        readings.rows().stream().filter(row -> row.site() == site).toArray(SiteReadings.Row[]::new);
    Arrays.sort(
        rows,
        (a, b) ->
            a.paste() == b.paste()
                ? Double.compare(variance(readings, a), variance(readings, b))
                : Boolean.compare(b.paste(), a.paste()));
    return rows;
  }
}
