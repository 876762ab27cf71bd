package fieldsalt.gaussian;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Data predicted from all other data, without refitting: with P of restricted likelihood, the
 * errors of a set B are e = P_BB⁻¹(Py)_B and their covariance is P_BB⁻¹ (Dubrule 1983, Mathematical
 * Geology 15:687-699, here for sets; parameters held). The covariance is that of the data
 * themselves, their own and shared errors included.
 */
public final class LeaveOut {
  private final MixedModel model;
  private final double[][][] inverse;
  private final double[][][] effects;

  /** Inverts the blocks of a solved model of {@code blocks} blocks. */
  public LeaveOut(MixedModel model, int blocks) {
    this.model = model;
    inverse = new double[blocks][][];
    effects = new double[blocks][][];
    IntStream.range(0, blocks)
        .parallel()
        .forEach(
            b -> {
              inverse[b] = model.factor(b).inverse();
              effects[b] = effectRows(b);
            });
  }

  /** P = D⁻¹ less the products of these rows: one array an effect, one value a datum. */
  private double[][] effectRows(int b) {
    double[][] shared = model.sharedDual(b);
    model.sharedFactor().forwardRows(shared);
    double[][] own = model.ownDual(b);
    double[][] rows = Arrays.copyOf(own, own.length + shared.length);
    System.arraycopy(shared, 0, rows, own.length, shared.length);
    return rows;
  }

  /**
   * Errors of the data {@code members} (positions in the block), value minus prediction from all
   * data but these, with the covariance of the errors.
   *
   * @throws NotPositiveDefinite if the others do not determine them
   */
  public Errors errors(int block, int[] members) {
    double[][] p = projection(block, members);
    Cholesky factor = Cholesky.factor(p);
    double[] alpha = model.dual(block);
    double[] right = new double[members.length];
    for (int i = 0; i < members.length; i++) {
      right[i] = alpha[members[i]];
    }
    return new Errors(factor.solve(right), factor.inverse());
  }

  private double[][] projection(int block, int[] members) {
    int n = members.length;
    double[][] p = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        p[i][j] = element(block, members[i], members[j]);
      }
      if (p[i][i] <= 1e-10 * inverse[block][members[i]][members[i]]) {
        throw new NotPositiveDefinite(members[i], p[i][i]);
      }
    }
    return p;
  }

  private double element(int block, int i, int j) {
    double p = inverse[block][i][j];
    for (double[] effect : effects[block]) {
      p -= effect[i] * effect[j];
    }
    return p;
  }

  /**
   * The linear rule behind one error, as far as it is of the block itself: weights on the block's
   * data, of which the error of {@code members[which]} is the sum beside what {@link
   * #sharedWeights} says; 1 on that datum, 0 on the others of the set.
   */
  public double[] rule(int block, int[] members, int which) {
    double[] f = factors(block, members, which);
    double[] rule = new double[inverse[block].length];
    for (int i = 0; i < members.length; i++) {
      for (int j = 0; j < rule.length; j++) {
        rule[j] += f[i] * element(block, members[i], j);
      }
    }
    for (int i = 0; i < members.length; i++) {
      rule[members[i]] = i == which ? 1 : 0;
    }
    return rule;
  }

  private double[] factors(int block, int[] members, int which) {
    double[] unit = new double[members.length];
    unit[which] = 1;
    return Cholesky.factor(projection(block, members)).solve(unit);
  }

  /**
   * Weights g of the same rule on data of other blocks b: {@code sharedDual(b)' g}, one number a
   * shared effect.
   */
  public double[] sharedWeights(int block, int[] members, int which) {
    double[] f = factors(block, members, which);
    double[][] rows = model.sharedDual(block);
    double[] sum = new double[rows.length];
    for (int k = 0; k < rows.length; k++) {
      for (int i = 0; i < members.length; i++) {
        sum[k] -= f[i] * rows[k][members[i]];
      }
    }
    return model.sharedFactor().solve(sum);
  }

  /** Errors and their covariance. */
  public record Errors(double[] error, double[][] covariance) {}
}
