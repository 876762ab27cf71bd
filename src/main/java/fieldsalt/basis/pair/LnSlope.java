package fieldsalt.basis.pair;

import fieldsalt.basis.layer.LayerReading;
import fieldsalt.quantity.TextureGroup;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Slope of ln ECe on ln EC through the pairs of one laboratory and method, each texture group about
 * its own mean, both readings with error: the structural line with known ratio of error variances
 * (Fuller 1987, Measurement Error Models, section 1.3), which does not bend to 0 as least squares
 * does.
 *
 * @param slope 1 where a multiplier fits at every salinity
 * @param low lower end of its 90 % interval
 * @param high upper end of its 90 % interval
 */
public record LnSlope(
    String laboratory, String method, int pairs, double slope, double low, double high) {
  static final int LEAST_PAIRS = 12;

  /** Whether the interval excludes 1: a multiplier is then wrong at one end. */
  public boolean isCurved() {
    return low > 1 || high < 1;
  }

  /** Gathers the pairs of one laboratory and method. */
  static final class Sums {
    private final Map<TextureGroup, List<double[]>> groups = new EnumMap<>(TextureGroup.class);
    private int pairs;
    private double varianceX;
    private double varianceY;

    void add(TextureGroup group, LayerReading cheap, LayerReading paste) {
      groups
          .computeIfAbsent(group, g -> new ArrayList<>())
          .add(new double[] {cheap.lnEce(), paste.lnEce()});
      pairs++;
      varianceX += LayerMean.ownVariance(cheap);
      varianceY += LayerMean.ownVariance(paste);
    }

    /** Sum of products of two coordinates about the means of the groups. */
    private double products(int a, int b) {
      double sum = 0;
      for (List<double[]> points : groups.values()) {
        double ma = points.stream().mapToDouble(p -> p[a]).average().orElseThrow();
        double mb = points.stream().mapToDouble(p -> p[b]).average().orElseThrow();
        sum += points.stream().mapToDouble(p -> (p[a] - ma) * (p[b] - mb)).sum();
      }
      return sum;
    }

    /** The line; empty where the pairs are all of one salinity. */
    Optional<LnSlope> fit(String laboratory, String method) {
      int free = pairs - groups.size();
      double sxx = products(0, 0) / free;
      double syy = products(1, 1) / free;
      double sxy = products(0, 1) / free;
      if (!(sxy > 0)) {
        return Optional.empty();
      }
      double delta = varianceY / varianceX;
      double spread = syy - delta * sxx;
      double slope = (spread + Math.sqrt(spread * spread + 4 * delta * sxy * sxy)) / (2 * sxy);
      double half = halfWidth(slope, delta, sxx, syy, sxy, free);
      return Optional.of(new LnSlope(laboratory, method, pairs, slope, slope - half, slope + half));
    }

    private static double halfWidth(
        double slope, double delta, double sxx, double syy, double sxy, int free) {
      double residual =
          Math.max(0, syy - 2 * slope * sxy + slope * slope * sxx) * free / (free - 1);
      double errorX = residual / (delta + slope * slope);
      double trueX = Math.max(1e-9, sxy / slope);
      double variance =
          (trueX * residual + errorX * residual - slope * slope * errorX * errorX)
              / (free * trueX * trueX);
      return StudentT.quantile95(free - 1) * Math.sqrt(Math.max(0, variance));
    }
  }
}
