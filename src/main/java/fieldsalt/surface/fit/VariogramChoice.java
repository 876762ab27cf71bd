package fieldsalt.surface.fit;

import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.covariance.Matern32;
import fieldsalt.surface.covariance.Spherical;
import fieldsalt.surface.covariance.Variogram;
import java.util.ArrayList;
import java.util.List;

/**
 * Which covariance model the ranch gets: each shape is fitted by restricted likelihood; exponential
 * stays unless another is more likely by over 2; among those within 5 of the best the lowest
 * leave-one-out CRPS wins. With 100 sites or more anisotropy is tried for each shape first, and
 * kept where it gains over 3 with a ratio over 1.5.
 */
final class VariogramChoice {
  private static final double OVER_EXPONENTIAL = 2;
  private static final double COMPARABLE = 5;
  private static final int SITES_FOR_ANISOTROPY = 100;
  private static final double GAIN_OF_ANISOTROPY = 3;
  private static final double LEAST_RATIO = 1.5;
  static final List<Variogram> SHAPES =
      List.of(new Exponential(1), new Spherical(1), new Matern32(1));

  private final Likelihood likelihood;
  private final Reml reml;

  VariogramChoice(Likelihood likelihood, Reml reml) {
    this.likelihood = likelihood;
    this.reml = reml;
  }

  Reml.Fit best() {
    List<Reml.Fit> fits = SHAPES.parallelStream().map(this::fit).toList();
    Reml.Fit exponential = fits.get(0);
    List<Reml.Fit> eligible = new ArrayList<>(List.of(exponential));
    for (Reml.Fit fit : fits.subList(1, fits.size())) {
      if (fit.logLikelihood() - exponential.logLikelihood() > OVER_EXPONENTIAL) {
        eligible.add(fit);
      }
    }
    double top = eligible.stream().mapToDouble(Reml.Fit::logLikelihood).max().orElseThrow();
    eligible.removeIf(f -> f.logLikelihood() < top - COMPARABLE);
    return eligible.size() == 1 ? eligible.get(0) : lowestCrps(eligible);
  }

  /** With geometric anisotropy where that is worth it. */
  private Reml.Fit fit(Variogram shape) {
    Reml.Fit isotropic = reml.fit(shape);
    if (likelihood.data().siteCount() < SITES_FOR_ANISOTROPY) {
      return isotropic;
    }
    Reml.Fit other = reml.fitAnisotropic(shape, isotropic);
    boolean kept =
        other.logLikelihood() - isotropic.logLikelihood() > GAIN_OF_ANISOTROPY
            && other.model().anisotropy().ratio() > LEAST_RATIO;
    return kept ? other : isotropic;
  }

  private Reml.Fit lowestCrps(List<Reml.Fit> fits) {
    Reml.Fit best = fits.get(0);
    double least = Double.POSITIVE_INFINITY;
    for (Reml.Fit fit : fits) {
      LeaveOneOut leave =
          new LeaveOneOut(likelihood.data(), List.of(likelihood.solve(fit.model())));
      double crps = leave.kriging().stream().mapToDouble(LeftOut::crps).average().orElse(0);
      if (crps < least) {
        least = crps;
        best = fit;
      }
    }
    return best;
  }
}
