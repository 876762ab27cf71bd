package fieldsalt.surface.fit;

/**
 * How well the map predicts a site that it has not seen: each site left out in turn, by the method
 * that its field is mapped by. The one place in which these figures are defined.
 *
 * @param sites that were left out
 * @param rmse root mean squared error on the scale of the fit; of ln, e to the power of it is the
 *     typical factor
 * @param explained share of the variance at unseen sites that the map explains: 1 less the mean
 *     squared error over that of the field's mean; 0 is no better than that mean
 * @param coverage90 share of the sites inside their 90 % interval
 */
public record Accuracy(int sites, double rmse, double explained, double coverage90) {
  /** By which a prediction is typically off, where ln is mapped. */
  public double typicalFactor() {
    return Math.exp(rmse);
  }
}
