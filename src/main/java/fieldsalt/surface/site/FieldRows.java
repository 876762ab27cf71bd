package fieldsalt.surface.site;

import fieldsalt.basis.site.SiteReadings;
import java.util.Arrays;
import java.util.List;

/**
 * The data of one field: its sites, and the rows that stand at them.
 *
 * @param sites sorted by id, date and place
 * @param x easting of each site in metres from the ranch's origin
 * @param y northing likewise
 * @param rows sorted by site
 * @param siteOf position in {@code sites} of each row's site
 * @param own variance of each row's own error
 * @param loadings of each standardised shared offset on each row: offsets x rows
 * @param drift standardised value of each drift at each site: drifts x sites
 * @param siteError variance of an error that all rows of a site have in common, by site; 0 unless
 *     the site is in doubt or has no value of a drift
 */
public record FieldRows(
    String field,
    List<SiteReadings.Site> sites,
    double[] x,
    double[] y,
    List<SiteReadings.Row> rows,
    int[] siteOf,
    double[] own,
    double[][] loadings,
    double[][] drift,
    double[] siteError) {

  public double[] values() {
    return rows.stream().mapToDouble(SiteReadings.Row::value).toArray();
  }

  /** One value a site. */
  public double[] siteValues() {
    double[] share = IdwRule.rowShares(this);
    double[] values = new double[sites.size()];
    for (int r = 0; r < share.length; r++) {
      values[siteOf[r]] += share[r] * rows.get(r).value();
    }
    return values;
  }

  FieldRows withOwnErrors(double factor) {
    double[] scaled = Arrays.stream(own).map(v -> v * factor).toArray();
    return new FieldRows(field, sites, x, y, rows, siteOf, scaled, loadings, drift, siteError);
  }

  FieldRows withSiteErrors(boolean[] which, double variance) {
    double[] errors = siteError.clone();
    for (int s = 0; s < errors.length; s++) {
      errors[s] += which[s] ? variance : 0;
    }
    return new FieldRows(field, sites, x, y, rows, siteOf, own, loadings, drift, errors);
  }

  FieldRows withDrift(double[][] other, double[] errors) {
    return new FieldRows(field, sites, x, y, rows, siteOf, own, loadings, other, errors);
  }

  /** Positions of the rows of one site. */
  public int[] rowsOf(int site) {
    int from = 0;
    while (siteOf[from] != site) {
      from++;
    }
    int to = from;
    while (to < siteOf.length && siteOf[to] == site) {
      to++;
    }
    int first = from;
    int[] members = new int[to - from];
    Arrays.setAll(members, i -> first + i);
    return members;
  }

  /** Variance of a row's error, its own and the shared. */
  double errorVariance(int row) {
    double sum = own[row];
    for (double[] loading : loadings) {
      sum += loading[row] * loading[row];
    }
    return sum;
  }

  /** Which of some rows of a site is closest to the truth: a paste row, else the most precise. */
  public int bestOf(int[] members) {
    int best = 0;
    for (int i = 1; i < members.length; i++) {
      if (better(members[i], members[best])) {
        best = i;
      }
    }
    return best;
  }

  private boolean better(int row, int than) {
    boolean paste = rows.get(row).paste();
    if (paste != rows.get(than).paste()) {
      return paste;
    }
    return errorVariance(row) < errorVariance(than);
  }
}
