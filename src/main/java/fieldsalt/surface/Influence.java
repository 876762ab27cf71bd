package fieldsalt.surface;

import fieldsalt.basis.SiteReadings;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Sites on which the fit hangs: refits without each one whose standardised error is above 3. */
final class Influence {
  private static final double LARGE = 3;
  private static final int MOST = 5;
  private static final double CHANGED = 0.5;

  private Influence() {}

  /** A site that was tried, whether or not the fit hangs on it. */
  record Refit(SurfaceDetails.Influence figures, boolean hangs) {}

  static List<Refit> of(
      SiteReadings readings, Observations data, Reml.Fit fit, List<LeftOut> left) {
    List<LeftOut> large =
        left.stream()
            .filter(l -> l.squaredStandardised() > LARGE * LARGE)
            .sorted(Comparator.comparingDouble(l -> -l.squaredStandardised()))
            .limit(MOST)
            .toList();
    List<Refit> refits = new ArrayList<>();
    for (LeftOut l : large) {
      refits.add(without(readings, data.parts().get(l.part()).sites().get(l.site()), fit, l));
    }
    return refits;
  }

  private static Refit without(
      SiteReadings readings, SiteReadings.Site site, Reml.Fit fit, LeftOut left) {
    Observations rest = Observations.of(withoutSite(readings, site), List.of());
    CovarianceModel model = new Reml(new Likelihood(rest)).refine(isotropic(fit.model())).model();
    double sill = fit.model().pointVariance();
    double range = fit.model().correlation().rangeM();
    double otherSill = model.pointVariance();
    double otherRange = model.correlation().rangeM();
    double z = Math.signum(left.error()) * Math.sqrt(left.squaredStandardised());
    return new Refit(
        new SurfaceDetails.Influence(site.id(), z, otherSill, otherRange, sill, range),
        Math.abs(otherSill / sill - 1) > CHANGED || Math.abs(otherRange / range - 1) > CHANGED);
  }

  private static CovarianceModel isotropic(CovarianceModel model) {
    return new CovarianceModel(model.correlation(), model.partialSill(), model.microScale());
  }

  static SiteReadings withoutSite(SiteReadings readings, SiteReadings.Site site) {
    Set<Integer> gone = new HashSet<>();
    for (int s = 0; s < readings.sites().size(); s++) {
      if (readings.sites().get(s).equals(site)) {
        gone.add(s);
      }
    }
    return withRows(
        readings, readings.rows().stream().filter(r -> !gone.contains(r.site())).toList());
  }

  static SiteReadings withRows(SiteReadings readings, List<SiteReadings.Row> rows) {
    return new SiteReadings(
        readings.property(),
        readings.unit(),
        readings.scale(),
        readings.sites(),
        rows,
        readings.offsets(),
        readings.offsetCovariance(),
        readings.findings());
  }
}
