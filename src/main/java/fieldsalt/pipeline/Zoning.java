package fieldsalt.pipeline;

import fieldsalt.zones.sodicity.Sodicity;
import fieldsalt.basis.site.ReadingErrors;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.report.input.PageZoning;
import fieldsalt.zones.field.ZoneMap;
import fieldsalt.zones.field.ZoneQuality;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** How good the zones of each field are, against the map and against the readings. */
final class Zoning {
  private static final int FEWEST = 3;

  private final Prepared prepared;
  private final Mapped mapped;

  Zoning(Prepared prepared, Mapped mapped) {
    this.prepared = prepared;
    this.mapped = mapped;
  }

  List<PageZoning> fields() {
    ZoneMap zones = mapped.zones();
    List<PageZoning> fields = new ArrayList<>();
    for (FieldBoundary field : prepared.ranch().fields()) {
      String name = field.name();
      if (mapped.schemes().containsKey(name)) {
        fields.add(
            new PageZoning(
                name,
                field.shapeM().getArea() / 10_000,
                zones.changedHaByField().get(name),
                zones.uncertainHaByField().get(name),
                zones.varianceExplainedByField().get(name),
                atSites(name),
                mapped.sodicity().flatMap(s -> sodicity(s, name))));
      }
    }
    return fields;
  }

  private Optional<PageZoning.BySodicity> sodicity(Sodicity sodicity, String field) {
    return Optional.ofNullable(sodicity.byField().get(field))
        .map(
            m ->
                new PageZoning.BySodicity(
                    m.property().label(),
                    m.property().unit(),
                    m.limit(),
                    prepared.job().amount("gypsum.depth-cm"),
                    m.readings().sitesIn(field),
                    m.surface().report().chosen()));
  }

  /** Each site by its paste row, else by its most precise one. */
  private PageZoning.AtSites atSites(String field) {
    SiteReadings readings = prepared.readings();
    ReadingErrors errors = ReadingErrors.of(readings);
    ZoneQuality zones = new ZoneQuality(mapped.zones().zonesOf(field));
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
    return new PageZoning.AtSites(
        values.length,
        ZoneQuality.shareForetold(values, group.stream().mapToInt(g -> g).toArray()),
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
