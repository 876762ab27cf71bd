package fieldsalt.basis.site;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** How wide readings are, shared errors included; rows are looked up by their site. */
public final class ReadingErrors {
  private final SiteReadings readings;
  private final List<List<SiteReadings.Row>> bySite;

  private ReadingErrors(SiteReadings readings) {
    this.readings = readings;
    this.bySite =
        IntStream.range(0, readings.sites().size())
            .<List<SiteReadings.Row>>mapToObj(s -> new ArrayList<>())
            .toList();
    readings.rows().forEach(row -> bySite.get(row.site()).add(row));
    Comparator<SiteReadings.Row> pasteFirst = Comparator.comparing(row -> !row.paste());
    bySite.forEach(rows -> rows.sort(pasteFirst.thenComparingDouble(this::variance)));
  }

  /** Errors of these readings. */
  public static ReadingErrors of(SiteReadings readings) {
    return new ReadingErrors(readings);
  }

  /** Median standard error of the rows of a field, on their own scale; 0 without rows. */
  public double median(String field) {
    double[] sorted =
        readings.rows().stream()
            .filter(row -> readings.sites().get(row.site()).field().equals(field))
            .mapToDouble(row -> Math.sqrt(variance(row)))
            .sorted()
            .toArray();
    int n = sorted.length;
    return n == 0 ? 0 : (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
  }

  /** Variance of one row: its own and that of the offsets it carries. */
  public double variance(SiteReadings.Row row) {
    return varianceOfSum(List.of(row));
  }

  /** Variance of the sum of rows: an offset that many carry counts with its whole weight. */
  public double varianceOfSum(List<SiteReadings.Row> rows) {
    double[] weight = new double[readings.offsets().size()];
    double variance = 0;
    for (SiteReadings.Row row : rows) {
      variance += row.ownVariance();
      row.loadings().forEach(l -> weight[l.offset()] += l.weight());
    }
    for (int a = 0; a < weight.length; a++) {
      for (int b = 0; weight[a] != 0 && b < weight.length; b++) {
        variance += weight[a] * weight[b] * readings.offsetCovariance()[a][b];
      }
    }
    return variance;
  }

  /** Rows of a site: pastes first, then the most precise. */
  public List<SiteReadings.Row> ofSite(int site) {
    return bySite.get(site);
  }
}
