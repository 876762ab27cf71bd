package fieldsalt.surface.choice;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.surface.fit.Accuracy;
import fieldsalt.surface.fit.Influence;
import fieldsalt.surface.fit.LeftOut;
import fieldsalt.surface.fit.Modelled;
import fieldsalt.surface.fit.SampleVariogram;
import fieldsalt.surface.fit.SurfaceDetails;
import fieldsalt.surface.fit.SurfaceMethod;
import fieldsalt.surface.fit.SurfaceReport;
import fieldsalt.surface.site.Drift;
import fieldsalt.surface.site.Observations;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Gathers plots, validation and warnings of the methods chosen. */
public final class DetailsMaker {
  private static final int MOST_FOR_REFITS = 500;
  private final SiteReadings readings;
  private final List<FittedGroup> groups;
  private final Tried mean;
  private final List<Finding> findings;

  /**
   * @param readings of all fields
   * @param groups of fields, the first of which the plots speak of
   * @param mean of each field as the method
   */
  public DetailsMaker(
      SiteReadings readings, List<FittedGroup> groups, Tried mean, List<Finding> findings) {
    this.readings = readings;
    this.groups = List.copyOf(groups);
    this.mean = mean;
    this.findings = findings;
  }

  /**
   * Everything that is asked for.
   *
   * @param plain the models of all fields without drift
   */
  public SurfaceDetails of(Modelled plain, Optional<SurfaceDetails.DriftCheck> drift) {
    Modelled first = groups.get(0).modelled();
    Modelled ofAll = groups.size() == 1 ? first : plain;
    List<LeftOut> left = groups.stream().flatMap(g -> chosen(g).leftOut().stream()).toList();
    String ln = readings.scale() == Scale.LOG ? "ln" : readings.unit();
    List<SurfaceDetails.Doubtful> doubtful = new ArrayList<>();
    for (FittedGroup group : groups) {
      Observations data = group.modelled().likelihood().data();
      group.doubts().forEach(d -> doubtful.add(DoubtfulSites.of(readings, data, d)));
    }
    doubtful.sort(Comparator.comparingDouble(d -> -d.chance()));
    return new SurfaceDetails(
        SampleVariogram.of(first.likelihood().data()),
        first.fit().model().anisotropy(),
        groups.stream().flatMap(g -> influential(g).stream()).toList(),
        List.of(
            Judge.onFitScale(left, mean.leftOut(), ln),
            Judge.inUnit(left, mean.leftOut(), readings.scale(), readings.unit())),
        groups.stream()
            .flatMap(g -> chosen(g).leftOut().stream().map(l -> siteCheck(chosen(g).data(), l)))
            .toList(),
        laboratories(ofAll),
        drift,
        doubtful);
  }

  private static Tried chosen(FittedGroup group) {
    return group.choice().chosen();
  }

  /** How well sites that were left out are predicted; empty where none could be left out. */
  public Optional<Accuracy> accuracy() {
    return accuracy(Set.of());
  }

  /** The same without the sites in doubt; empty where there are none. */
  public Optional<Accuracy> accuracyWithoutDoubtful() {
    Set<String> doubtful =
        groups.stream().flatMap(g -> g.doubtful().stream()).collect(Collectors.toSet());
    return doubtful.isEmpty() ? Optional.empty() : accuracy(doubtful);
  }

  private Optional<Accuracy> accuracy(Set<String> without) {
    List<LeftOut> left =
        groups.stream().flatMap(g -> chosen(g).leftOutWithout(without).stream()).toList();
    return left.isEmpty()
        ? Optional.empty()
        : Optional.of(Judge.accuracy(left, mean.leftOutWithout(without)));
  }

  /** The group that a survey or raster steers; empty where none does. */
  public Optional<SurfaceReport.Steering> steering(Tried kriging) {
    return groups.stream()
        .filter(g -> chosen(g).method() == SurfaceMethod.DRIFT)
        .findFirst()
        .map(
            g -> {
              List<LeftOut> ofMean = mean.judgedIn(g.fields()).leftOut();
              return new SurfaceReport.Steering(
                  g.fields().stream().sorted().toList(),
                  chosen(g).data().drifts().stream().map(d -> d.drift().name()).toList(),
                  g.choice().why(),
                  g.candidates().stream().map(Tried::candidate).toList(),
                  g.modelled().described(),
                  Judge.accuracy(chosen(g).leftOut(), ofMean).explained(),
                  Judge.accuracy(kriging.judgedIn(g.fields()).leftOut(), ofMean).explained());
            });
  }

  private List<SurfaceDetails.LaboratoryCheck> laboratories(Modelled modelled) {
    Observations data = modelled.likelihood().data();
    List<Drift> drifts = data.drifts().stream().map(Observations.ScaledDrift::drift).toList();
    List<SurfaceDetails.LaboratoryCheck> checks =
        new LaboratoriesLeftOut(readings, drifts, modelled.fit().model()).checks();
    for (SurfaceDetails.LaboratoryCheck check : checks) {
      if (check.rows() >= 5 && Math.abs(check.bias()) > 2.5 * check.biasError()) {
        findings.add(
            new Finding(
                Code.LABORATORY_APART,
                Place.laboratory(check.laboratory(), "", Set.of()),
                String.format(
                    Locale.ROOT,
                    "its %d readings differ from what the others predict by %.2f on the scale of"
                        + " the fit, stated error %.2f",
                    check.rows(),
                    check.bias(),
                    check.biasError()),
                "kept; check its method, unit and dilution"));
      }
    }
    return checks;
  }

  private List<SurfaceDetails.Influence> influential(FittedGroup group) {
    Tried chosen = chosen(group);
    Modelled modelled = group.modelled();
    Observations data = modelled.likelihood().data();
    SiteReadings own =
        groups.size() == 1
            ? readings
            : DriftTrial.only(readings, s -> data.indexOf(s.field()) >= 0);
    boolean judged =
        chosen.method() != SurfaceMethod.MEAN
            && chosen.method() != SurfaceMethod.IDW
            && !modelled.described().isDefault()
            && data.siteCount() <= MOST_FOR_REFITS;
    List<SurfaceDetails.Influence> hangs = new ArrayList<>();
    List<Influence.Refit> refits =
        judged
            ? Influence.of(own, data, modelled.fit(), chosen.leftOut())
            : List.<Influence.Refit>of();
    for (Influence.Refit refit : refits) {
      if (refit.hangs()) {
        hangs.add(refit.figures());
        findings.add(finding(refit.figures()));
      }
    }
    return hangs;
  }

  private static Finding finding(SurfaceDetails.Influence i) {
    return new Finding(
        Code.FIT_DEPENDS_ON_SITE,
        new Place.Site(i.siteId(), "", false),
        String.format(
            Locale.ROOT,
            "%.1f standard errors from what the others predict; without it sill %.3g instead of"
                + " %.3g, range %.0f m instead of %.0f m",
            i.standardisedError(),
            i.sillWithout(),
            i.sill(),
            i.rangeWithoutM(),
            i.rangeM()),
        "kept; check this reading, or sample the place again");
  }

  private SurfaceDetails.SiteCheck siteCheck(Observations data, LeftOut left) {
    SiteReadings.Site site = data.parts().get(left.part()).sites().get(left.site());
    boolean log = readings.scale() == Scale.LOG;
    double median = left.predicted().quantile(0.5);
    double spread = Math.sqrt(left.predicted().variance());
    return new SurfaceDetails.SiteCheck(
        site.id(),
        site.field(),
        log ? Math.exp(left.value()) : left.value(),
        log ? Math.exp(median) : median,
        spread > 0 ? left.error() / spread : 0);
  }
}
