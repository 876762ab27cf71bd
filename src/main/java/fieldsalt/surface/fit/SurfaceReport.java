package fieldsalt.surface.fit;

import fieldsalt.finding.Finding;
import fieldsalt.surface.covariance.Variogram;
import java.util.List;

/**
 * What was fitted and how well it predicts sites it did not see.
 *
 * @param chosen how it is made; never AUTO
 * @param whyChosen one plain sentence
 * @param candidates leave-one-out figures of every method tried
 * @param variogram the fitted (or default) model
 * @param leftOut names of fields with 1 or 2 sites, which are not mapped
 * @param details for the plots and tables of validation
 */
public record SurfaceReport(
    SurfaceMethod chosen,
    String whyChosen,
    List<Candidate> candidates,
    FittedVariogram variogram,
    List<Finding> findings,
    List<String> leftOut,
    SurfaceDetails details) {
  public SurfaceReport {
    candidates = List.copyOf(candidates);
    findings = List.copyOf(findings);
    leftOut = List.copyOf(leftOut);
  }

  /** A report of a ranch all of whose sampled fields are mapped, without details. */
  public SurfaceReport(
      SurfaceMethod chosen,
      String whyChosen,
      List<Candidate> candidates,
      FittedVariogram variogram,
      List<Finding> findings) {
    this(chosen, whyChosen, candidates, variogram, findings, List.of(), SurfaceDetails.none());
  }

  /**
   * Leave-one-out by site of one method: errors on the scale of the fit (ln ECe), and CRPS.
   *
   * @param sites number of sites compared
   */
  public record Candidate(
      SurfaceMethod method,
      int sites,
      double rmse,
      double mae,
      double bias,
      double crps,
      double meanSquaredStandardised,
      double medianSquaredStandardised,
      double coverage90) {}

  /**
   * A fitted model.
   *
   * @param model by which correlation falls with distance
   * @param rangeM the model's distance parameter
   * @param microScale c_micro, the part of the nugget that is true short-range variation
   * @param logLikelihood restricted, with ½ln|X'X|
   */
  public record FittedVariogram(
      Variogram model,
      double partialSill,
      double rangeM,
      double rangeLowM,
      double rangeHighM,
      double microScale,
      double logLikelihood,
      boolean averaged,
      boolean isDefault) {}
}
