package fieldsalt.surface.map;

/** The distribution of the property at one point, in its own unit. */
public interface PointDistribution {
  double median();

  double mean();

  /** Standard error on the scale of the fit (ln ECe). */
  double error();

  /** The value below which it lies with this chance, 0 to 1. */
  double quantile(double chance);

  /** Chance to be above a limit given in the property's own unit. */
  double chanceAbove(double limit);
}
