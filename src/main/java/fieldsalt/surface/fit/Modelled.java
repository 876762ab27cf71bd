package fieldsalt.surface.fit;

import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.covariance.Variogram;
import fieldsalt.surface.site.Observations;
import java.util.ArrayList;
import java.util.List;

/**
 * The covariance models that a surface rests on.
 *
 * @param nodes solved, weights sum to 1: one, or those averaged over
 * @param fit the one most likely, or the default
 * @param described for the report
 * @param uncorrelated the model without spatial correlation
 */
public record Modelled(
    Likelihood likelihood,
    List<Solved> nodes,
    Reml.Fit fit,
    SurfaceReport.FittedVariogram described,
    Solved uncorrelated,
    List<Finding> findings) {
  private static final int SITES_FOR_A_FIT = 10;
  private static final int MOST_FOR_LIKELIHOOD = 500;
  private static final int SITES_WITHOUT_AVERAGING = 100;
  private static final double DEFAULT_RANGE_M = 200;
  private static final double DEFAULT_SHARE = 0.3;
  private static final double LEAST_SILL = 0.1;
  private static final double ALL_MICRO_SCALE = 0.95;

  /**
   * Fits by restricted likelihood, by weighted moments where a field has more than 500 sites, or
   * takes the default below 10 sites.
   *
   * @param data what is solved: at most 1,000 sites a field
   */
  public static Modelled of(Observations data) {
    Likelihood likelihood = new Likelihood(data);
    Reml reml = new Reml(likelihood);
    if (data.largestField() > MOST_FOR_LIKELIHOOD) {
      return byMoments(likelihood, reml);
    }
    return data.siteCount() < SITES_FOR_A_FIT
        ? byDefault(likelihood, reml)
        : fitted(likelihood, reml, new VariogramChoice(likelihood, reml).best());
  }

  /**
   * The models of data in which some sites are in doubt.
   *
   * @param likelihood with the doubtful sites' own error
   * @param model fitted to it
   */
  static Modelled doubting(
      Modelled plain, Likelihood likelihood, CovarianceModel model, List<Solved> nodes) {
    Reml reml = new Reml(likelihood);
    Reml.Fit fit = new Reml.Fit(model, likelihood.of(model));
    double[] interval = new RangeProfile(reml, fit).interval();
    return new Modelled(
        plain.likelihood,
        nodes,
        fit,
        describe(fit, interval, plain.described.averaged(), false),
        uncorrelated(likelihood, reml),
        plain.findings);
  }

  private static Modelled byMoments(Likelihood likelihood, Reml reml) {
    Observations all = likelihood.data();
    MomentsFit moments = new MomentsFit(SampleVariogram.of(all));
    MomentsFit.Fit best = null;
    for (Variogram shape : VariogramChoice.SHAPES) {
      MomentsFit.Fit fit = moments.fit(shape, reml.bounds());
      best = best == null || fit.squares() < best.squares() ? fit : best;
    }
    CovarianceModel model = usable(best.model(), all);
    Reml.Fit fit = new Reml.Fit(model, likelihood.of(model));
    double range = model.correlation().rangeM();
    return new Modelled(
        likelihood,
        List.of(likelihood.solve(model)),
        fit,
        describe(fit, new double[] {range, range}, false, false),
        uncorrelated(likelihood, reml),
        findings(likelihood, reml, fit, false));
  }

  /** Some variance at every distance, or equal places would contradict one another. */
  private static CovarianceModel usable(CovarianceModel model, Observations all) {
    double least = Math.max(1e-4 * all.pooledVariance(), 1e-10);
    return new CovarianceModel(
        model.correlation(),
        Math.max(model.partialSill(), least),
        Math.max(model.microScale(), least));
  }

  private static Modelled fitted(Likelihood likelihood, Reml reml, Reml.Fit fit) {
    boolean averaged = likelihood.data().siteCount() < SITES_WITHOUT_AVERAGING;
    List<Solved> nodes =
        averaged
            ? Averaging.over(likelihood, fit.model().correlation(), reml)
            : List.of(likelihood.solve(fit.model()));
    double[] interval = new RangeProfile(reml, fit).interval();
    return new Modelled(
        likelihood,
        nodes,
        fit,
        describe(fit, interval, averaged, false),
        uncorrelated(likelihood, reml),
        findings(likelihood, reml, fit, averaged));
  }

  private static Modelled byDefault(Likelihood likelihood, Reml reml) {
    double sill = Math.max(likelihood.data().pooledVariance(), LEAST_SILL);
    CovarianceModel model =
        new CovarianceModel(
            new Exponential(DEFAULT_RANGE_M), sill * (1 - DEFAULT_SHARE), sill * DEFAULT_SHARE);
    Finding loud =
        new Finding(
            Code.DEFAULT_VARIOGRAM,
            new Place.Ranch(),
            likelihood.data().siteCount()
                + " sites; fewer than "
                + SITES_FOR_A_FIT
                + " cannot show how the property varies from place to place",
            "an assumed variogram is used (exponential, 200 m): treat this map as a guess and"
                + " sample more places before money is spent");
    Reml.Fit fit = new Reml.Fit(model, likelihood.of(model));
    double[] interval = {DEFAULT_RANGE_M, DEFAULT_RANGE_M};
    return new Modelled(
        likelihood,
        List.of(likelihood.solve(model)),
        fit,
        describe(fit, interval, false, true),
        uncorrelated(likelihood, reml),
        List.of(loud));
  }

  private static SurfaceReport.FittedVariogram describe(
      Reml.Fit fit, double[] interval, boolean averaged, boolean isDefault) {
    return new SurfaceReport.FittedVariogram(
        fit.model().correlation(),
        fit.model().partialSill(),
        fit.model().correlation().rangeM(),
        interval[0],
        interval[1],
        fit.model().microScale(),
        fit.logLikelihood(),
        averaged,
        isDefault);
  }

  /** All variance of z at its most likely value, none of it correlated. */
  private static Solved uncorrelated(Likelihood likelihood, Reml reml) {
    CovarianceModel shape = new CovarianceModel(new Exponential(1), 0, 1);
    return likelihood.solve(Likelihood.scaled(shape, Math.exp(reml.bestSill(shape).at())));
  }

  private static List<Finding> findings(
      Likelihood likelihood, Reml reml, Reml.Fit fit, boolean averaged) {
    List<Finding> findings = new ArrayList<>();
    CovarianceModel model = fit.model();
    double range = model.correlation().rangeM();
    if (model.microScale() >= ALL_MICRO_SCALE * model.pointVariance()
        || range < reml.bounds().typicalSpacingM() / 4) {
      findings.add(pureNugget(averaged));
    } else if (range >= reml.bounds().highM() * (1 - 1e-9)) {
      findings.add(
          new Finding(
              Code.RANGE_AT_BOUND,
              new Place.Ranch(),
              "the likeliest range is longer than twice the longest field's sampled extent",
              "held at that bound: readings with a trend across the field look like this, and so do"
                  + " readings that hardly differ"));
    }
    if (model.microScale() == 0 && likelihood.wantsSmallerErrors(model)) {
      findings.add(
          new Finding(
              Code.STATED_ERRORS_LARGE,
              new Place.Ranch(),
              "neighbouring sites agree better than the stated laboratory and conversion errors"
                  + " allow",
              "the stated errors are kept; intervals are rather too wide than too narrow"));
    }
    return findings;
  }

  private static Finding pureNugget(boolean averaged) {
    return new Finding(
        Code.NO_SPATIAL_PATTERN,
        new Place.Ranch(),
        "sites close together are no more alike than sites far apart",
        averaged
            ? "so few sites cannot rule a pattern out: the map averages over all variograms that"
                + " they allow"
            : "the map shows little more than each field's mean");
  }
}
