package fieldsalt.basis.depth;

import fieldsalt.basis.layer.LayerReading;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * A weighted mean of ECe over depth, on the log scale: ln Σ w ECe, with errors by the delta method
 * (d ln mean = Σ (w ECe/Σ w ECe) d ln ECe), so that what layers share stays shared.
 *
 * @param value ln of the mean, ECe in dS/m
 * @param loadings by offset: size of each shared error
 * @param byLayer derivative of the value with respect to ln ECe of each layer; they sum to 1
 */
public record DepthMean(
    double value, double ownVariance, Map<String, Double> loadings, double[] byLayer) {

  /** What rounding leaves of a shared error that cancels. */
  private static final double NOTHING = 1e-12;

  /** The mean over these segments, each of which some layer of the row must cover. */
  static DepthMean over(SiteRow row, Segments segments, BitSet over) {
    double[] weights = weights(segments.cover(row), segments, over);
    List<LayerReading> layers = row.layers();
    double total = 0;
    double mean = 0;
    for (int k = 0; k < weights.length; k++) {
      total += weights[k];
      mean += weights[k] * layers.get(k).ece();
    }
    double[] parts = new double[weights.length];
    for (int k = 0; k < weights.length; k++) {
      parts[k] = weights[k] * layers.get(k).ece() / mean;
    }
    return combine(layers, parts, Math.log(mean / total));
  }

  private static double[] weights(List<BitSet> cover, Segments segments, BitSet over) {
    double[] weights = new double[cover.size()];
    for (int j = over.nextSetBit(0); j >= 0; j = over.nextSetBit(j + 1)) {
      int segment = j;
      long times = cover.stream().filter(layer -> layer.get(segment)).count();
      for (int k = 0; k < weights.length; k++) {
        weights[k] += cover.get(k).get(j) ? segments.weight(j) / times : 0;
      }
    }
    return weights;
  }

  /** A sum of layers' errors with these weights, at a value. */
  static DepthMean combine(List<LayerReading> layers, double[] parts, double value) {
    double own = 0;
    Map<String, Double> loadings = new TreeMap<>();
    for (int k = 0; k < parts.length; k++) {
      own += parts[k] * parts[k] * layers.get(k).ownVariance();
      for (LayerReading.Term term : layers.get(k).shared()) {
        loadings.merge(term.offset(), parts[k] * term.sd(), Double::sum);
      }
    }
    loadings.values().removeIf(size -> Math.abs(size) < NOTHING);
    return new DepthMean(value, own, loadings, parts);
  }

  /** This mean moved by another's value and errors, as if they were independent. */
  DepthMean plus(double shift, double moreOwnVariance, Map<String, Double> moreLoadings) {
    Map<String, Double> sum = new TreeMap<>(loadings);
    moreLoadings.forEach((offset, size) -> sum.merge(offset, size, Double::sum));
    sum.values().removeIf(size -> Math.abs(size) < NOTHING);
    return new DepthMean(value + shift, ownVariance + moreOwnVariance, sum, byLayer);
  }
}
