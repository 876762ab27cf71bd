package fieldsalt.surface.fit;

import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Variogram;
import java.util.ArrayList;
import java.util.List;

/**
 * With few sites the variogram is uncertain, and predictions average over it: a grid of range,
 * micro-scale share and sill, weighted by restricted likelihood (flat in the logarithms of range
 * and sill and in the share; Handcock and Stein 1993, Technometrics 35:403-410).
 */
public final class Averaging {
  private static final int RANGES = 12;
  private static final double[] SHARES = {0.02, 0.15, 0.28, 0.42, 0.55, 0.68, 0.82, 0.95};
  private static final double[] SILL_STEPS = {-2, -1, 0, 1, 2};

  /** Nodes whose weight is below this share of the heaviest are dropped. */
  private static final double NEGLIGIBLE = 0.01;

  /** No more nodes than this are kept, spread evenly over the weight. */
  private static final int MOST = 48;

  private Averaging() {}

  private record Node(CovarianceModel model, double logWeight) {}

  /** Models with weights that sum to 1, solved. */
  static List<Solved> over(Likelihood likelihood, Variogram shape, Reml reml) {
    List<Node> nodes = nodes(likelihood, shape, reml);
    double top = nodes.stream().mapToDouble(Node::logWeight).max().orElseThrow();
    List<Node> heavy =
        nodes.stream().filter(n -> n.logWeight() > top + Math.log(NEGLIGIBLE)).toList();
    double[] weights = heavy.stream().mapToDouble(n -> Math.exp(n.logWeight() - top)).toArray();
    double[] kept = thinned(weights, MOST);
    List<Solved> solved = new ArrayList<>();
    for (int i = 0; i < kept.length; i++) {
      if (kept[i] > 0) {
        solved.add(likelihood.solve(heavy.get(i).model()).withWeight(kept[i]));
      }
    }
    return solved;
  }

  private static List<Node> nodes(Likelihood likelihood, Variogram shape, Reml reml) {
    double low = Math.log(Math.max(reml.bounds().lowM(), reml.bounds().typicalSpacingM() / 3));
    double high = Math.log(reml.bounds().highM() / 2);
    List<CovarianceModel> shapes = new ArrayList<>();
    for (int i = 0; i < RANGES; i++) {
      double range = Math.exp(low + (high - low) * i / (RANGES - 1.0));
      for (double share : SHARES) {
        shapes.add(new CovarianceModel(shape.withRange(range), 1 - share, share));
      }
    }
    List<Sills> peaks = shapes.parallelStream().map(s -> Sills.of(likelihood, s, reml)).toList();
    double top = peaks.stream().mapToDouble(Sills::logWeight).max().orElseThrow();
    return peaks.parallelStream()
        .filter(s -> s.logWeight() > top + Math.log(NEGLIGIBLE))
        .flatMap(s -> s.nodes(likelihood).stream())
        .toList();
  }

  /**
   * The sills of one shape.
   *
   * @param peak the most likely sill's logarithm
   * @param step a standard error of it
   */
  private record Sills(CovarianceModel shape, Peak peak, double step) {
    private static final double CURVED_OVER = 0.2;

    static Sills of(Likelihood likelihood, CovarianceModel shape, Reml reml) {
      Peak peak = reml.bestSill(shape);
      double fall =
          2 * peak.value()
              - likelihood.of(at(shape, peak.at() + CURVED_OVER))
              - likelihood.of(at(shape, peak.at() - CURVED_OVER));
      double curvature = fall / (CURVED_OVER * CURVED_OVER);
      return new Sills(shape, peak, curvature > 1 ? 1 / Math.sqrt(curvature) : 1);
    }

    private static CovarianceModel at(CovarianceModel shape, double logSill) {
      return Likelihood.scaled(shape, Math.exp(logSill));
    }

    /** Of the heaviest of its nodes. */
    double logWeight() {
      return peak.value() + Math.log(step);
    }

    List<Node> nodes(Likelihood likelihood) {
      List<Node> nodes = new ArrayList<>();
      for (double s : SILL_STEPS) {
        CovarianceModel model = at(shape, peak.at() + s * step);
        double value = s == 0 ? peak.value() : likelihood.of(model);
        nodes.add(new Node(model, value + Math.log(step)));
      }
      return nodes;
    }
  }

  /** At most {@code most} weights above 0, summing to 1: evenly spaced picks of the running sum. */
  public static double[] thinned(double[] weights, int most) {
    double total = java.util.Arrays.stream(weights).sum();
    double[] kept = new double[weights.length];
    if (weights.length <= most) {
      java.util.Arrays.setAll(kept, i -> weights[i] / total);
      return kept;
    }
    double sum = 0;
    int picked = 0;
    for (int i = 0; i < weights.length; i++) {
      sum += weights[i] / total;
      while (picked < most && (picked + 0.5) / most < sum) {
        kept[i] += 1.0 / most;
        picked++;
      }
    }
    return kept;
  }
}
