package fieldsalt.zones.field;

import fieldsalt.basis.site.ReadingErrors;
import fieldsalt.basis.site.SiteReadings;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * How well the zones of a field predict the readings of their sites; each site by its paste row,
 * else by its most precise one.
 *
 * @param sites number of sites in the field's zones
 * @param predictedShare 1 - (squared errors of the mean of the zone's other sites) / (of the mean
 *     of the field's other sites); empty for fewer than 3 sites or readings all alike
 * @param errorShare share of the variance between the sites' readings that is their own known
 *     error, at most 1; empty as before
 */
public record ZonesAtSites(int sites, OptionalDouble predictedShare, OptionalDouble errorShare) {
  private static final int FEWEST = 3;

  /** Sets the zones of a field against its readings. */
  public static ZonesAtSites of(
      String field, List<Zone> ofField, SiteReadings readings, ReadingErrors errors) {
    ZoneQuality zones = new ZoneQuality(ofField);
    List<SiteReadings.Row> rows = new ArrayList<>();
    List<Integer> group = new ArrayList<>();
    for (int s = 0; s < readings.sites().size(); s++) {
      SiteReadings.Site site = readings.sites().get(s);
      int zone =
          site.field().equals(field) ? zones.zoneAt(site.place().xM(), site.place().yM()) : -1;
      List<SiteReadings.Row> own = zone < 0 ? List.of() : errors.ofSite(s);
      if (!own.isEmpty()) {
        rows.add(own.get(0));
        group.add(zone);
      }
    }
    double[] values = rows.stream().mapToDouble(SiteReadings.Row::value).toArray();
    return new ZonesAtSites(
        values.length,
        ZoneQuality.predictedShare(values, group.stream().mapToInt(g -> g).toArray()),
        errorShare(errors, rows, values));
  }

  /**
   * What errors add to the variance between readings: mean of their variances less the mean of
   * their covariances, over the variance seen.
   */
  private static OptionalDouble errorShare(
      ReadingErrors errors, List<SiteReadings.Row> rows, double[] values) {
    int n = values.length;
    double mean = Arrays.stream(values).average().orElse(0);
    double seen = Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum() / (n - 1.0);
    if (n < FEWEST || !(seen > 0)) {
      return OptionalDouble.empty();
    }
    double own = rows.stream().mapToDouble(r -> errors.variance(r)).sum();
    double all = errors.varianceOfSum(rows);
    double between = own / n - (all - own) / (n * (n - 1.0));
    return OptionalDouble.of(Math.min(1, Math.max(0, between / seen)));
  }
}
