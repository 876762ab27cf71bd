package fieldsalt.surface.fit;

import fieldsalt.gaussian.NotPositiveDefinite;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.site.Observations;

/**
 * Restricted likelihood of covariance models, with the known errors in it and with ½ ln|X'X| (Lark,
 * Cullis and Welham 2006, European Journal of Soil Science 57:787-799).
 */
public final class Likelihood {
  private final Observations data;
  private final double logDesign;

  public Likelihood(Observations data) {
    this.data = data;
    this.logDesign = data.logDesign();
  }

  public Observations data() {
    return data;
  }

  /** Log-likelihood; minus infinity where the model contradicts the data. */
  public double of(CovarianceModel model) {
    try {
      return solve(model).logLikelihood(logDesign);
    } catch (NotPositiveDefinite e) {
      return Double.NEGATIVE_INFINITY;
    }
  }

  public Solved solve(CovarianceModel model) {
    return Solved.of(data, model);
  }

  /**
   * The sill at which the residuals are as large as expected, in one step: exact for one row a site
   * without known errors, else a start. It stays where it is if a row is split in two.
   */
  double matchedSill(CovarianceModel model, double low, double high) {
    try {
      Solved solved = solve(model);
      double freedom = Math.max(1, data.siteCount() - data.fixed());
      double sill = model.pointVariance() * solved.solution().quadratic() / freedom;
      return Math.min(high, Math.max(low, sill));
    } catch (NotPositiveDefinite e) {
      return model.pointVariance();
    }
  }

  /** Whether the data would be likelier (by 2) with half the stated variances of own errors. */
  boolean wantsSmallerErrors(CovarianceModel model) {
    return new Likelihood(data.withOwnErrors(0.5)).of(model) > of(model) + 2;
  }

  static CovarianceModel scaled(CovarianceModel shape, double sill) {
    return new CovarianceModel(
        shape.correlation(),
        shape.anisotropy(),
        sill * shape.partialSill(),
        sill * shape.microScale());
  }
}
