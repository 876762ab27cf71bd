package fieldsalt.basis.pair;

import fieldsalt.basis.layer.LayerReading;
import fieldsalt.basis.layer.Offsets;
import java.util.List;

/**
 * Readings of one layer weighted by their own precision: what is left of them when the layer's true
 * value is free.
 *
 * @param lnEce weighted mean of ln ECe with published factors
 * @param loadings weighted mean of their shared loadings
 * @param variance of the mean's own error
 */
record LayerMean(double lnEce, double[] loadings, double variance) {
  private static final double LEAST_VARIANCE = 1e-12;

  static double ownVariance(LayerReading reading) {
    return Math.max(LEAST_VARIANCE, reading.ownVariance());
  }

  static LayerMean of(LayerReading reading, Offsets offsets) {
    return new LayerMean(reading.lnEce(), offsets.loadings(reading.shared()), ownVariance(reading));
  }

  static LayerMean of(List<LayerReading> readings, Offsets offsets) {
    LayerMean mean = of(readings.get(0), offsets);
    for (LayerReading more : readings.subList(1, readings.size())) {
      mean = mean.with(of(more, offsets));
    }
    return mean;
  }

  LayerMean with(LayerMean other) {
    double total = 1 / variance + 1 / other.variance;
    double share = 1 / variance / total;
    double[] h = new double[loadings.length];
    for (int i = 0; i < h.length; i++) {
      h[i] = share * loadings[i] + (1 - share) * other.loadings[i];
    }
    return new LayerMean(share * lnEce + (1 - share) * other.lnEce, h, 1 / total);
  }
}
