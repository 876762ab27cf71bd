package fieldsalt.plan.draw;

import fieldsalt.quantity.Dimension;
import fieldsalt.quantity.Measure;
import java.util.Arrays;

/**
 * An uncertain amount: the values below which it lies with chance 0.1, 0.5 and 0.9, and its mean.
 * The unit is that of the component that holds it.
 */
public record Odds(double p10, double p50, double p90, double mean) {

  /** No amount, surely. */
  public static Odds none() {
    return new Odds(0, 0, 0, 0);
  }

  /** From draws, left as they are. */
  public static Odds of(double[] draws) {
    double[] sorted = draws.clone();
    Arrays.sort(sorted);
    return new Odds(
        quantile(sorted, 0.1), quantile(sorted, 0.5), quantile(sorted, 0.9), Draws.mean(draws));
  }

  private static double quantile(double[] sorted, double chance) {
    double at = chance * sorted.length - 0.5;
    int k = (int) Math.max(0, Math.min(sorted.length - 2, Math.floor(at)));
    double part = Math.max(0, Math.min(1, at - k));
    return sorted[k] + part * (sorted[k + 1] - sorted[k]);
  }

  /** Middle and 10-90 % range for people. */
  public Measure measure(Dimension dimension) {
    return new Measure(p50, p10, p90, dimension);
  }

  /** The same amount in another unit. */
  public Odds times(double factor) {
    return new Odds(p10 * factor, p50 * factor, p90 * factor, mean * factor);
  }
}
