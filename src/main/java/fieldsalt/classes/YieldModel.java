package fieldsalt.classes;

/**
 * Relative yield of one crop against the mean ECe of its root zone (saturated paste, dS/m). Yields
 * are percent of what the same crop brings on good ground.
 */
public interface YieldModel {
  /** Relative yield in percent, 0 to 100, at an ECe in dS/m of at least 0. */
  double pct(double ece);

  /** ECe in dS/m at which yield has fallen to this percent, above 0 and below 100. */
  double eceAtPct(double pct);

  /**
   * Mean relative yield in percent over ground whose ln ECe is normal.
   *
   * @param logMean mean of ln ECe
   * @param logSd standard deviation of ln ECe, at least 0
   */
  double expectedPct(double logMean, double logSd);

  /** The published relation. */
  String citation();
}
