package fieldsalt.surface.fit;

import fieldsalt.finding.Finding;
import fieldsalt.surface.covariance.Variogram;
import java.util.List;
import java.util.Optional;

/**
 * What was fitted and how well it predicts sites it did not see.
 *
 * @param chosen how it is made; never AUTO
 * @param whyChosen one plain sentence
 * @param candidates leave-one-out figures of every method tried
 * @param variogram the fitted (or default) model
 * @param leftOut names of fields with 1 or 2 sites, which are not mapped
 * @param details for the plots and tables of validation
 * @param accuracy at sites left out in turn; empty where none could be
 * @param accuracyWithoutDoubtful the same without the sites in doubt; empty where there are none
 * @param steering the fields that a survey or raster steers; all where {@code chosen} is DRIFT
 */
public record SurfaceReport(
    SurfaceMethod chosen,
    String whyChosen,
    List<Candidate> candidates,
    FittedVariogram variogram,
    List<Finding> findings,
    List<String> leftOut,
    SurfaceDetails details,
    Optional<Accuracy> accuracy,
    Optional<Accuracy> accuracyWithoutDoubtful,
    Optional<Steering> steering) {
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
    this(
        chosen,
        whyChosen,
        candidates,
        variogram,
        findings,
        List.of(),
        SurfaceDetails.none(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /** The method that a field is mapped by. */
  public SurfaceMethod methodOf(String field) {
    return steering
        .filter(s -> s.fields().contains(field))
        .map(s -> SurfaceMethod.DRIFT)
        .orElse(chosen);
  }

  /** Whether no field's map says where, only how much. */
  public boolean isFlat() {
    return chosen == SurfaceMethod.MEAN && steering.isEmpty();
  }

  /**
   * Fields that a survey or raster steers, with covariance parameters of their own.
   *
   * @param drifts names of what steers them
   * @param explained share of the variance at their unseen sites that their map explains
   * @param explainedWithout the same by kriging without the drift
   */
  public record Steering(
      List<String> fields,
      List<String> drifts,
      String why,
      List<Candidate> candidates,
      FittedVariogram variogram,
      double explained,
      double explainedWithout) {
    public Steering {
      fields = List.copyOf(fields);
      drifts = List.copyOf(drifts);
      candidates = List.copyOf(candidates);
    }
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
