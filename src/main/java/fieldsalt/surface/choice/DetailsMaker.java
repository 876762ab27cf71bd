package fieldsalt.surface.choice;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.surface.fit.Doubts;
import fieldsalt.surface.fit.Influence;
import fieldsalt.surface.fit.LeftOut;
import fieldsalt.surface.fit.Modelled;
import fieldsalt.surface.fit.SampleVariogram;
import fieldsalt.surface.fit.SurfaceDetails;
import fieldsalt.surface.fit.SurfaceMethod;
import fieldsalt.surface.site.Drift;
import fieldsalt.surface.site.Observations;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** Gathers plots, validation and warnings of a chosen method. */
public final class DetailsMaker {
  private static final int MOST_FOR_REFITS = 500;
  private final SiteReadings readings;
  private final Modelled modelled;
  private final List<Finding> findings;

  public DetailsMaker(SiteReadings readings, Modelled modelled, List<Finding> findings) {
    this.readings = readings;
    this.modelled = modelled;
    this.findings = findings;
  }

  public Modelled modelled() {
    return modelled;
  }

  /**
   * Everything that is asked for.
   *
   * @param doubts sites in doubt
   */
  public SurfaceDetails of(
      Tried chosen,
      Tried mean,
      Optional<SurfaceDetails.DriftCheck> drift,
      List<Doubts.Site> doubts) {
    Observations data = modelled.likelihood().data();
    return new SurfaceDetails(
        SampleVariogram.of(data),
        modelled.fit().model().anisotropy(),
        influential(data, chosen),
        List.of(
            Judge.onFitScale(
                chosen.leftOut(),
                mean.leftOut(),
                readings.scale() == Scale.LOG ? "ln" : readings.unit()),
            Judge.inUnit(chosen.leftOut(), mean.leftOut(), readings.scale(), readings.unit())),
        chosen.leftOut().stream().map(l -> siteCheck(data, l)).toList(),
        laboratories(data),
        drift,
        doubts.stream().map(d -> DoubtfulSites.of(readings, data, d)).toList());
  }

  private List<SurfaceDetails.LaboratoryCheck> laboratories(Observations data) {
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

  private List<SurfaceDetails.Influence> influential(Observations data, Tried chosen) {
    boolean judged =
        chosen.method() != SurfaceMethod.MEAN
            && chosen.method() != SurfaceMethod.IDW
            && !modelled.described().isDefault()
            && data.siteCount() <= MOST_FOR_REFITS;
    List<SurfaceDetails.Influence> hangs = new ArrayList<>();
    List<Influence.Refit> refits =
        judged
            ? Influence.of(readings, data, modelled.fit(), chosen.leftOut())
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
