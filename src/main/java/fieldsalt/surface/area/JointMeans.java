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
  /** The same among areas of other fields that use this many shared effects before their own. */
  public JointMeans after(int effects) {
    double[][] moved = new double[shared.length][];
    for (int a = 0; a < moved.length; a++) {
      moved[a] = new double[effects + shared[a].length];
      System.arraycopy(shared[a], 0, moved[a], effects, shared[a].length);
    }
    return new JointMeans(means, covariance, moved);
  }

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
