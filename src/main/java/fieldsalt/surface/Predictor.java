package fieldsalt.surface;

/** Predicts the error-free z at places, under one covariance model. */
interface Predictor {
  /** The model whose errors are stated. */
  Solved solved();

  /** Predictions at places of one field. */
  Predicted predict(Points points);

  /** Predictions at places, with the covariance of their errors. */
  interface Predicted {
    double[] mean();

    /** Variance of z at each place, micro-scale included. */
    double[] variance();

    /** Covariance with other predictions by the same predictor; micro-scale is not in it. */
    double[][] covariance(Predicted other);
  }
}
