package fieldsalt.plan.draw;

import fieldsalt.gaussian.Normal;
import java.util.SplittableRandom;
import java.util.function.DoublePredicate;
import java.util.function.DoubleUnaryOperator;

/**
 * A fixed number of equally likely futures. Every source of error takes the same stratified
 * standard normal scores in an order of its own (Latin hypercube, McKay et al. 1979): same seed,
 * same futures, on every machine.
 */
public final class Draws {
  /** Number of futures. */
  public static final int COUNT = 4000;

  private static final double[] SCORES = scores();

  private final SplittableRandom random;

  public Draws(long seed) {
    random = new SplittableRandom(seed);
  }

  private static double[] scores() {
    double[] z = new double[COUNT];
    for (int i = 0; i < COUNT; i++) {
      z[i] = Normal.quantile((i + 0.5) / COUNT);
    }
    return z;
  }

  /** Standard normal scores, independent of those handed out before. */
  public double[] standard() {
    double[] z = SCORES.clone();
    for (int i = COUNT - 1; i > 0; i--) {
      int j = random.nextInt(i + 1);
      double kept = z[i];
      z[i] = z[j];
      z[j] = kept;
    }
    return z;
  }

  /** Several independent sets of scores. */
  public double[][] standard(int sets) {
    double[][] z = new double[sets][];
    for (int k = 0; k < sets; k++) {
      z[k] = standard();
    }
    return z;
  }

  public static double mean(double[] values) {
    double sum = 0;
    for (double v : values) {
      sum += v;
    }
    return sum / values.length;
  }

  public static double sd(double[] values) {
    double mean = mean(values);
    double sum = 0;
    for (double v : values) {
      sum += (v - mean) * (v - mean);
    }
    return Math.sqrt(sum / values.length);
  }

  /** Share of the futures in which something holds. */
  public static double share(double[] values, DoublePredicate holds) {
    int n = 0;
    for (double v : values) {
      if (holds.test(v)) {
        n++;
      }
    }
    return n / (double) values.length;
  }

  public static double[] map(double[] values, DoubleUnaryOperator f) {
    double[] out = new double[values.length];
    for (int i = 0; i < out.length; i++) {
      out[i] = f.applyAsDouble(values[i]);
    }
    return out;
  }

  public static double[] constant(double value) {
    double[] out = new double[COUNT];
    java.util.Arrays.fill(out, value);
    return out;
  }

  /** Adds {@code weight * values} to {@code sum}. */
  public static void add(double[] sum, double[] values, double weight) {
    for (int i = 0; i < sum.length; i++) {
      sum[i] += weight * values[i];
    }
  }
}
