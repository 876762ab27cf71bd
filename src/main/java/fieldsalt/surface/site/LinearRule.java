package fieldsalt.surface.site;

/**
 * A predictor that is a fixed linear combination of the values, whatever the covariance model: own
 * weights on the rows of the place's field, and g on the sums {@code carriers(part)' values} of
 * every other field (what those tell of the effects that all fields share).
 */
public interface LinearRule {
  /** Weights for places of one field. */
  Weights at(Points points);

  /** What a field's rows add to the shared sums: one array of its rows a sum; none is usual. */
  double[][] carriers(int part);

  /**
   * Weights.
   *
   * @param own columns x rows of the places' field
   * @param shared g: columns x sums
   * @param column which column is the weights of each place; a rule may use one for many places
   */
  record Weights(double[][] own, double[][] shared, int[] column) {}
}
