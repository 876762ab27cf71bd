package fieldsalt.plan.soil;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.plan.draw.Draws;
import fieldsalt.plan.draw.JointLognormal;
import fieldsalt.plan.draw.Known;
import fieldsalt.plan.draw.Known.Source;
import fieldsalt.plan.draw.ZoneDraws;
import fieldsalt.surface.SampledProperty;
import fieldsalt.surface.area.AreaMeans;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Draws the zone means of a measured property: by the surface where the field has sites enough for
 * it, else about the mean of the field's few sites.
 */
final class PropertyDraws {
  /** Spread between sites (ln, or relative) assumed before the few sites speak (judgement). */
  private static final double SINGLE_SITE_SPREAD = 0.4;

  /** Share of the variance between sites by which a zone's mean leaves the field's (judgement). */
  private static final double ZONE_SHARE = 0.5;

  private final List<ZoneGround> zones;
  private final Draws draws;

  PropertyDraws(List<ZoneGround> zones, Draws draws) {
    this.zones = zones;
    this.draws = draws;
  }

  /** Zones of which nothing was measured stay unknown. */
  ZoneDraws of(Optional<SampledProperty> property) {
    double[][] values = new double[zones.size()][];
    List<Known> known = new ArrayList<>(Collections.nCopies(zones.size(), Known.nothing()));
    property.ifPresent(
        p -> {
          fromSurface(p, values, known);
          fromFieldMeans(p, values, known);
        });
    return new ZoneDraws(values, known);
  }

  private void fromSurface(SampledProperty property, double[][] values, List<Known> known) {
    List<Integer> mapped = new ArrayList<>();
    for (int z = 0; z < zones.size(); z++) {
      if (property.mapped(field(z))) {
        mapped.add(z);
      }
    }
    if (mapped.isEmpty()) {
      return;
    }
    AreaMeans means =
        property
            .surface()
            .orElseThrow()
            .areaMeans(mapped.stream().map(z -> zones.get(z).points()).toList());
    double[][] drawn = positive(means).draw(draws);
    for (int k = 0; k < mapped.size(); k++) {
      int z = mapped.get(k);
      values[z] = drawn[k];
      known.set(z, new Known(Source.SURFACE, property.sitesIn(field(z))));
    }
  }

  /** A mean that an unlucky surface puts at or below 0 is held just above it. */
  private static JointLognormal positive(AreaMeans means) {
    double[] mean = means.mean().clone();
    for (int k = 0; k < mean.length; k++) {
      mean[k] = Math.max(mean[k], 1e-3);
    }
    return new JointLognormal(mean, means.covariance());
  }

  private void fromFieldMeans(SampledProperty property, double[][] values, List<Known> known) {
    Set<String> fields = new LinkedHashSet<>();
    zones.forEach(z -> fields.add(z.zone().field()));
    for (String field : fields) {
      int sites = property.sitesIn(field);
      if (sites > 0 && !property.mapped(field)) {
        FieldMean mean = FieldMean.of(property.readings(), field);
        double[] shared = draws.standard();
        for (int z = 0; z < zones.size(); z++) {
          if (field(z).equals(field)) {
            values[z] = about(mean, shared);
            known.set(z, new Known(Source.FIELD_MEAN, sites));
          }
        }
      }
    }
  }

  private double[] about(FieldMean mean, double[] shared) {
    double[] own = draws.standard();
    double[] out = new double[Draws.COUNT];
    double ownSd = Math.sqrt(ZONE_SHARE) * mean.spread();
    for (int d = 0; d < out.length; d++) {
      double x = mean.mean() + mean.error() * shared[d] + ownSd * own[d];
      out[d] = mean.scale() == Scale.LOG ? Math.exp(x) : Math.max(0, x);
    }
    return out;
  }

  private String field(int zone) {
    return zones.get(zone).zone().field();
  }

  /**
   * Mean of a field's sites on the scale of the readings.
   *
   * @param error standard error of the mean, shared laboratory error included
   * @param spread standard deviation between sites
   */
  private record FieldMean(double mean, double error, double spread, Scale scale) {
    static FieldMean of(SiteReadings readings, String field) {
      List<SiteReadings.Row> rows =
          readings.rows().stream()
              .filter(r -> readings.sites().get(r.site()).field().equals(field))
              .toList();
      double mean = rows.stream().mapToDouble(SiteReadings.Row::value).average().orElseThrow();
      double spread = spread(rows, mean, readings.scale());
      double own = rows.stream().mapToDouble(SiteReadings.Row::ownVariance).average().orElse(0);
      double error =
          Math.sqrt((spread * spread + own) / rows.size() + sharedVariance(readings, rows));
      return new FieldMean(mean, error, spread, readings.scale());
    }

    /** The assumed spread counts as one degree of freedom beside those of the few sites. */
    private static double spread(List<SiteReadings.Row> rows, double mean, Scale scale) {
      double assumed = SINGLE_SITE_SPREAD * (scale == Scale.LOG ? 1 : Math.abs(mean));
      double sum = assumed * assumed;
      for (SiteReadings.Row row : rows) {
        sum += (row.value() - mean) * (row.value() - mean);
      }
      return Math.sqrt(sum / rows.size());
    }

    private static double sharedVariance(SiteReadings readings, List<SiteReadings.Row> rows) {
      double[] weights = new double[readings.offsets().size()];
      for (SiteReadings.Row row : rows) {
        for (SiteReadings.Loading loading : row.loadings()) {
          weights[loading.offset()] += loading.weight() / rows.size();
        }
      }
      double variance = 0;
      for (int i = 0; i < weights.length; i++) {
        for (int j = 0; j < weights.length; j++) {
          variance += weights[i] * weights[j] * readings.offsetCovariance()[i][j];
        }
      }
      return variance;
    }
  }
}
