package fieldsalt.surface.area;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.geo.PlaceM;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.choice.Tried;
import fieldsalt.surface.site.FieldLattice;
import fieldsalt.surface.site.Observations;
import fieldsalt.surface.site.Points;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Brings readings of composites into a surface that was fitted to the sites: the covariance model,
 * the choice of the method and the validation stay those of the sites, because a mixture says
 * nothing of how values differ from place to place.
 */
public final class FieldMeans {
  /** Places that stand for a field. */
  private static final int PLACES = 64;

  /** A composite farther than this from what the sites say is not of that field, or misread. */
  private static final double TOO_FAR_SIGMAS = 3;

  private final Tried fitted;
  private final Scale scale;
  private final Map<String, FieldBoundary> boundaries;
  private final List<Finding> findings;

  private FieldMeans(
      Tried fitted, Scale scale, List<FieldBoundary> mapped, List<Finding> findings) {
    this.fitted = fitted;
    this.scale = scale;
    this.boundaries =
        mapped.stream().collect(Collectors.toMap(FieldBoundary::name, Function.identity()));
    this.findings = findings;
  }

  /**
   * The same method, informed.
   *
   * @param mapped fields that have a surface; composites of others are findings
   */
  public static Tried inform(
      Tried fitted,
      List<SiteReadings.FieldMean> readings,
      Scale scale,
      List<FieldBoundary> mapped,
      List<Finding> findings) {
    return readings.isEmpty()
        ? fitted
        : new FieldMeans(fitted, scale, mapped, findings).informed(readings);
  }

  private Tried informed(List<SiteReadings.FieldMean> readings) {
    List<AreaReading> asked = new ArrayList<>();
    for (SiteReadings.FieldMean reading : readings) {
      if (!boundaries.containsKey(reading.field())) {
        findings.add(
            new Finding(
                Code.COMPOSITE_UNUSED,
                place(reading),
                "a composite of a field that is not mapped",
                "not used; a map needs at least 3 places with a reading"));
      } else {
        asked.add(areaReading(reading));
      }
    }
    List<AreaReading> used = withoutFar(asked);
    if (used.isEmpty()) {
      return fitted;
    }
    List<Informed> informed =
        fitted.predictors().stream().map(p -> new Informed(p, used, scale)).toList();
    return new Tried(
        fitted.method(), fitted.data(), Informed.reweighted(informed), fitted.leftOut());
  }

  private AreaReading areaReading(SiteReadings.FieldMean reading) {
    Observations data = fitted.data();
    List<PlaceM> places = FieldLattice.of(boundaries.get(reading.field()), PLACES);
    double[] loadings = new double[data.offsetRoot().length];
    reading.loadings().forEach(l -> loadings[l.offset()] += l.weight());
    return new AreaReading(
        reading,
        Points.of(data, data.indexOf(reading.field()), places),
        data.standardised(loadings));
  }

  private List<AreaReading> withoutFar(List<AreaReading> asked) {
    List<AreaReading> used = new ArrayList<>();
    for (AreaReading one : asked) {
      double sigmas = new Informed(fitted.likeliest(), List.of(one), scale).sigmas();
      if (Math.abs(sigmas) > TOO_FAR_SIGMAS) {
        findings.add(
            new Finding(
                Code.COMPOSITE_APART,
                place(one.reading()),
                String.format(
                    Locale.ROOT,
                    "%.1f standard errors from what the sites of the field say of its mean",
                    sigmas),
                "not used for the map; check its field, method, unit and depth"));
      } else {
        used.add(one);
      }
    }
    return used;
  }

  private static Place place(SiteReadings.FieldMean reading) {
    return new Place.Site(reading.sample(), reading.field(), true);
  }
}
