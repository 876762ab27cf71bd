package fieldsalt.plan.soil;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.plan.draw.Draws;
import fieldsalt.plan.draw.Futures;
import fieldsalt.plan.draw.JointLognormal;
import fieldsalt.plan.draw.Known;
import fieldsalt.plan.draw.Known.Source;
import fieldsalt.plan.draw.ZoneDraws;
import fieldsalt.surface.SampledProperty;
import fieldsalt.surface.area.JointMeans;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * Draws the means of a field's zones of a measured property: by the surface where the field has
 * sites enough for it, else about the mean of the field's few sites.
 */
final class PropertyDraws {
  /** Spread between sites (ln, or relative) assumed before the few sites speak (judgement). */
  private static final double SINGLE_SITE_SPREAD = 0.4;

  /** Share of the variance between sites by which a zone's mean leaves the field's (judgement). */
  private static final double ZONE_SHARE = 0.5;

  private final String field;
  private final List<ZoneGround> zones;
  private final Draws draws;
  private final Futures futures;

  /**
   * @param zones of one field
   * @param draws of that field
   */
  PropertyDraws(String field, List<ZoneGround> zones, Draws draws, Futures futures) {
    this.field = field;
    this.zones = zones;
    this.draws = draws;
    this.futures = futures;
  }

  /** Zones of which nothing was measured stay unknown. */
  ZoneDraws of(Optional<SampledProperty> property, Futures.Kind kind) {
    int sites = property.map(p -> p.sitesIn(field)).orElse(0);
    if (sites == 0) {
      return all(new double[zones.size()][], Known.nothing());
    }
    return property.orElseThrow().mapped(field)
        ? all(fromSurface(property.orElseThrow(), kind), new Known(Source.SURFACE, sites))
        : all(fromFieldMean(property.orElseThrow()), new Known(Source.FIELD_MEAN, sites));
  }

  private static ZoneDraws all(double[][] values, Known known) {
    return new ZoneDraws(values, Collections.nCopies(values.length, known));
  }

  private double[][] fromSurface(SampledProperty property, Futures.Kind kind) {
    JointMeans means =
        property.surface().orElseThrow().areaMeans(zones.stream().map(ZoneGround::points).toList());
    return positive(means).draw(draws, futures.shared(kind, means.shared()[0].length));
  }

  /** A mean that an unlucky surface puts at or below 0 is held just above it. */
  private static JointLognormal positive(JointMeans means) {
    double[] mean = Draws.map(means.mean(), m -> Math.max(m, 1e-3));
    return new JointLognormal(mean, means.covariance(), means.shared());
  }

  private double[][] fromFieldMean(SampledProperty property) {
    FieldMean mean = FieldMean.of(property.readings(), property.rowsIn(field));
    double[] shared = draws.standard();
    double[][] values = new double[zones.size()][];
    for (int z = 0; z < values.length; z++) {
      values[z] = about(mean, shared);
    }
    return values;
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

  /**
   * Mean of a field's sites on the scale of the readings.
   *
   * @param error standard error of the mean, shared laboratory error included
   * @param spread standard deviation between sites
   */
  private record FieldMean(double mean, double error, double spread, Scale scale) {
    static FieldMean of(SiteReadings readings, List<SiteReadings.Row> rows) {
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
