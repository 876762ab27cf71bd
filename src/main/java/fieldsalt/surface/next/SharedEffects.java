package fieldsalt.surface.next;

import fieldsalt.gaussian.MixedModel;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.site.Observations;
import java.util.Arrays;

/**
 * Covariance of what fields share: slopes of drifts, offsets, and the offset of a new reading (the
 * last), in coordinates in which the first are independent with variance 1.
 */
final class SharedEffects {
  private final double[][] covariance;
  private final double[][] offsets;

  private SharedEffects(double[][] covariance, double[][] offsets) {
    this.covariance = covariance;
    this.offsets = offsets;
  }

  /**
   * As the present data leave them.
   *
   * @param ofNewReading variance of an offset that no present reading has; may be 0
   */
  static SharedEffects of(Solved solved, double ofNewReading) {
    Observations data = solved.data();
    int count = data.offsets();
    double[][] design = new double[data.columns(0).length][count];
    for (int k = 0; k < count; k++) {
      design[1 + data.drifts().size() + k][k] = 1;
    }
    double[][] none = new double[data.parts().get(0).rows().size()][count];
    MixedModel.Prediction seen = solved.solution().predict(0, none, design);
    int fields = data.parts().size();
    int size = data.drifts().size() + count + 1;
    double[][] offsets = new double[count][size];
    for (int k = 0; k < count; k++) {
      for (int e = 0; e < size - 1; e++) {
        offsets[k][e] = seen.fromEffects()[fields + e][k];
      }
    }
    double[][] covariance = new double[size][size];
    for (int e = 0; e < size; e++) {
      covariance[e][e] = e < size - 1 ? 1 : ofNewReading;
    }
    return new SharedEffects(covariance, offsets);
  }

  int size() {
    return covariance.length;
  }

  /** What a reading with these loadings on the offsets carries of the shared effects. */
  double[] ofOffsets(double[] loadings) {
    double[] sum = new double[size()];
    for (int k = 0; k < loadings.length; k++) {
      for (int e = 0; e < sum.length; e++) {
        sum[e] += loadings[k] * offsets[k][e];
      }
    }
    return sum;
  }

  /** Covariance times a vector. */
  double[] times(double[] b) {
    double[] product = new double[b.length];
    Arrays.setAll(product, i -> FieldBlock.dot(covariance[i], b));
    return product;
  }

  double variance(double[] b) {
    return FieldBlock.dot(b, times(b));
  }

  /**
   * After a reading.
   *
   * @param b its loadings
   * @param t its variance given the shared effects
   */
  void observe(double[] b, double t) {
    double[] c = times(b);
    double s = t + FieldBlock.dot(b, c);
    for (int i = 0; i < c.length; i++) {
      for (int j = 0; j < c.length; j++) {
        covariance[i][j] -= c[i] * c[j] / s;
      }
    }
  }
}
