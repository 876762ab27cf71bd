package fieldsalt.surface.fit;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Variogram;
import fieldsalt.surface.site.Drift;
import fieldsalt.surface.site.Observations;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Sites on which the fit hangs: refits, with the same drifts and without anisotropy, without each
 * one whose standardised error is above 3.
 */
public final class Influence {
  private static final double LARGE = 3;
  private static final int MOST = 5;
  private static final double CHANGED = 0.5;

  /** Of correlated variance below which a range says nothing. */
  private static final double LEAST_SHARE = 0.1;

  private Influence() {}

  /** A site that was tried, whether or not the fit hangs on it. */
  public record Refit(SurfaceDetails.Influence figures, boolean hangs) {}

  public static List<Refit> of(
      SiteReadings readings, Observations data, Reml.Fit fit, List<LeftOut> left) {
    List<LeftOut> large =
        left.stream()
            .filter(l -> l.squaredStandardised() > LARGE * LARGE)
            .sorted(Comparator.comparingDouble(l -> -l.squaredStandardised()))
            .limit(MOST)
            .toList();
    if (large.isEmpty()) {
      return List.of();
    }
    boolean stretched = fit.model().anisotropy().ratio() > 1;
    CovarianceModel with = stretched ? isotropic(data, fit.model().correlation()) : fit.model();
    List<Drift> drifts = data.drifts().stream().map(Observations.ScaledDrift::drift).toList();
    List<Refit> refits = new ArrayList<>();
    for (LeftOut l : large) {
      SiteReadings.Site site = data.parts().get(l.part()).sites().get(l.site());
      refits.add(without(readings, site, drifts, with, l));
    }
    return refits;
  }

  private static Refit without(
      SiteReadings readings,
      SiteReadings.Site site,
      List<Drift> drifts,
      CovarianceModel model,
      LeftOut left) {
    CovarianceModel other =
        isotropic(Observations.of(withoutSite(readings, site), drifts), model.correlation());
    double z = Math.signum(left.error()) * Math.sqrt(left.squaredStandardised());
    return new Refit(
        new SurfaceDetails.Influence(
            site.id(),
            z,
            other.pointVariance(),
            other.correlation().rangeM(),
            model.pointVariance(),
            model.correlation().rangeM()),
        isApart(model, other));
  }

  private static CovarianceModel isotropic(Observations data, Variogram shape) {
    return new Reml(new Likelihood(data)).fit(shape).model();
  }

  /** Ranges are compared only where both models have something that reaches that far. */
  private static boolean isApart(CovarianceModel one, CovarianceModel other) {
    double share = one.partialSill() / one.pointVariance();
    double otherShare = other.partialSill() / other.pointVariance();
    double range = other.correlation().rangeM() / one.correlation().rangeM();
    boolean bothReach = Math.min(share, otherShare) > LEAST_SHARE;
    return Math.abs(other.pointVariance() / one.pointVariance() - 1) > CHANGED
        || Math.abs(otherShare - share) > CHANGED
        || (bothReach && Math.abs(range - 1) > CHANGED);
  }

  public static SiteReadings withoutSite(SiteReadings readings, SiteReadings.Site site) {
    Set<Integer> gone = new HashSet<>();
    for (int s = 0; s < readings.sites().size(); s++) {
      if (readings.sites().get(s).equals(site)) {
        gone.add(s);
      }
    }
    return readings.withRows(
        readings.rows().stream().filter(r -> !gone.contains(r.site())).toList());
  }
}
