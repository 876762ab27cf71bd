package fieldsalt.surface;

/** Predicts the error-free z at places, under one covariance model. */
interface Predictor {
  /** The model whose errors are stated. */
  Solved solved();

  /** Predictions at places of one field. */
  Predicted predict(Points points);

  /**
   * Mean and variance of z + l'v at places: what readings that carry these shared errors would see,
   * their own error not yet in it.
   *
   * @param loadings l on the unit-variance shared errors v, one an offset; zeros for none
   */
  default Readings readings(Points points, double[] loadings) {
    Predicted predicted = predict(points);
    double[] variance = predicted.variance();
    for (int i = 0; i < variance.length; i++) {
      variance[i] += Linear.dot(loadings, loadings);
    }
    return new Readings(predicted.mean(), variance);
  }

  /** Mean and variance of readings, one a place. */
  record Readings(double[] mean, double[] variance) {}

  /** Predictions at places, with the covariance of their errors. */
  interface Predicted {
    double[] mean();

    /** Variance of z at each place, micro-scale included. */
    double[] variance();

    /** Covariance with other predictions by the same predictor; micro-scale is not in it. */
    double[][] covariance(Predicted other);
  }
}
