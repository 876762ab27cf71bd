package fieldsalt.surface.area;

/**
 * Means over areas, as a rule of one field, with their joint error (lognormal moments in closed
 * form on the log scale).
 *
 * @param means one an area
 * @param covariance of the means between these areas
 * @param shared what areas of different fields have in common, because laboratories' errors are
 *     shared: one row an area, loadings on independent unit-variance effects of the whole ranch;
 *     the covariance of two areas of different fields is the product of their rows times both means
 */
public record JointMeans(AreaMeans means, double[][] covariance, double[][] shared) {
  public double[] mean() {
    return means.mean();
  }

  public double[] low() {
    return means.low();
  }

  public double[] high() {
    return means.high();
  }
}
