package fieldsalt.surface.fit;

import fieldsalt.surface.site.Points;
import fieldsalt.surface.site.Scratch;
import java.util.Arrays;

/** Predicts the error-free z at places, under one covariance model. */
public interface Predictor {
  /** The model whose errors are stated. */
  Solved solved();

  /** Predictions at places of one field. */
  default Predicted predict(Points points) {
    return readings(points, new double[solved().data().offsets()]);
  }

  /**
   * As {@link #predict}, where the covariances between places are not wanted; the result is good
   * until the scratch is used again.
   */
  default Predicted predict(Points points, Scratch scratch) {
    return predict(points);
  }

  /**
   * The same of z + l'v: what readings that carry these shared errors would see, their own error
   * not yet in it.
   *
   * @param loadings l on the unit-variance shared errors v, one an offset; zeros for none
   */
  Predicted readings(Points points, double[] loadings);

  /** Predictions at places, with the covariance of their errors. */
  interface Predicted {
    double[] mean();

    /** Variance of z at each place, micro-scale included. */
    double[] variance();

    /** Covariance with other predictions by the same predictor; micro-scale is not in it. */
    double[][] covariance(Predicted other);

    /**
     * What the errors have in common with those of other fields: one array an effect that fields
     * share, with one loading a place. Two places of different fields have the product of theirs as
     * covariance.
     */
    double[][] shared();

    /** Covariance with predictions in another field. */
    default double[][] sharedCovariance(Predicted other) {
      double[][] here = shared();
      double[][] there = other.shared();
      double[][] covariance = new double[mean().length][other.mean().length];
      for (int k = 0; k < here.length; k++) {
        for (int i = 0; i < covariance.length; i++) {
          for (int j = 0; j < covariance[i].length; j++) {
            covariance[i][j] += here[k][i] * there[k][j];
          }
        }
      }
      return covariance;
    }

    /** Covariance of each with a weighted sum of the others, micro-scale not in it. */
    default double[] covarianceWithSum(Predicted other, double[] weights) {
      double[][] covariance = covariance(other);
      double[] sum = new double[covariance.length];
      Arrays.setAll(sum, i -> Linear.dot(covariance[i], weights));
      return sum;
    }
  }
}
