package fieldsalt.surface.site;

/** A predictor that is a fixed linear combination of the values, whatever the covariance model. */
public interface LinearRule {
  /** Weights for places of one field. */
  Weights at(Points points);

  /**
   * Weights on every row.
   *
   * @param byPart one matrix a part: columns x rows of that part
   * @param column which column is the weights of each place; a rule may use one for many places
   */
  record Weights(double[][][] byPart, int[] column) {}
}
