package fieldsalt.surface.next;

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
    double[][] seen = new double[data.shared()][count];
    for (int k = 0; k < count; k++) {
      seen[data.drifts().size() + k][k] = 1;
    }
    solved.solution().sharedFactor().forwardRows(seen);
    int size = data.shared() + 1;
    double[][] offsets = new double[count][size];
    for (int k = 0; k < count; k++) {
      for (int e = 0; e < size - 1; e++) {
        offsets[k][e] = seen[e][k];
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

  static double[] sum(double[] a, double[] b) {
    double[] sum = a.clone();
    for (int i = 0; i < b.length; i++) {
      sum[i] += b[i];
    }
    return sum;
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
