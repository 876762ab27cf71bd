package fieldsalt.gaussian;

import java.util.Arrays;
import java.util.List;

/**
 * One full solve of y = X b + G v + e: b are fixed effects with a flat prior, v are independent
 * standard normal effects, e has a covariance D that is block diagonal. A fixed effect is either
 * one block's own (a field's constant) or shared by all (the slope of a drift), as all of v are.
 *
 * <p>With W = [X G] and M = W'D⁻¹W + diag(0, I) everything follows from the blocks (Henderson 1975,
 * Biometrics 31:423-447): the estimates M⁻¹W'D⁻¹y, and P = D⁻¹ - D⁻¹W M⁻¹W'D⁻¹, the projection of
 * restricted likelihood with the covariance V = G G' + D. M is an arrow: a block's own effects meet
 * only one another and the shared ones. They are eliminated inside their block, so that a system of
 * the size of the shared effects is left. A block costs its own size cubed, never the size of the
 * whole.
 */
public final class MixedModel {
  private static final double UNDETERMINED = 1e-14;

  private final int fixed;
  private final int shared;
  private final int dataCount;
  private final EliminatedBlock[] parts;
  private final Cholesky normal;
  private final double[] effects;
  private final double quadratic;

  /**
   * Data that share a covariance.
   *
   * @param covariance D of this block, n x n; its upper triangle is read and overwritten
   * @param own one array of n values for each fixed effect that only this block has
   * @param shared one array of n values for each shared effect: the fixed ones, then those of v
   * @param values y, n of them
   */
  public record Block(double[][] covariance, double[][] own, double[][] shared, double[] values) {
    /** Number of data. */
    public int size() {
      return values.length;
    }
  }

  /**
   * What is known of v before the data.
   *
   * @param mean one number an effect
   * @param precision the inverse of its covariance
   */
  public record Prior(double[] mean, double[][] precision) {
    /** Independent standard normal effects. */
    public static Prior standard(int effects) {
      double[][] unit = new double[effects][effects];
      for (int i = 0; i < effects; i++) {
        unit[i][i] = 1;
      }
      return new Prior(new double[effects], unit);
    }

    private void addTo(double[][] m, double[] right, int fixed) {
      for (int i = 0; i < mean.length; i++) {
        for (int j = 0; j < mean.length; j++) {
          m[fixed + i][fixed + j] += precision[i][j];
          right[fixed + i] += precision[i][j] * mean[j];
        }
      }
    }

    private double quadratic(double[] effects, int fixed) {
      double sum = 0;
      for (int i = 0; i < mean.length; i++) {
        for (int j = 0; j < mean.length; j++) {
          double here = effects[fixed + i] - mean[i];
          sum += here * precision[i][j] * (effects[fixed + j] - mean[j]);
        }
      }
      return sum;
    }
  }

  /** Solves with independent standard normal effects v. */
  public MixedModel(List<Block> blocks, int fixed) {
    this(blocks, fixed, Prior.standard(blocks.get(0).shared().length - fixed));
  }

  /**
   * Solves.
   *
   * @param blocks at least one, all with the same number of shared effects; their covariances are
   *     overwritten
   * @param fixed how many of the shared effects are fixed
   * @param prior of v; the determinant of its covariance is left out of {@link #logDeterminants}
   * @throws NotPositiveDefinite if a covariance is not positive definite, or the data do not
   *     determine all of b
   */
  public MixedModel(List<Block> blocks, int fixed, Prior prior) {
    this.fixed = fixed;
    this.shared = blocks.get(0).shared().length;
    dataCount = blocks.stream().mapToInt(Block::size).sum();
    parts = blocks.parallelStream().map(EliminatedBlock::new).toArray(EliminatedBlock[]::new);
    double[][] m = new double[shared][shared];
    double[] right = new double[shared];
    for (EliminatedBlock part : parts) {
      addTo(m, right, part);
    }
    refuseUndetermined(m);
    prior.addTo(m, right, fixed);
    normal = Cholesky.factor(m);
    effects = normal.solve(right);
    double sum = prior.quadratic(effects, fixed);
    for (EliminatedBlock part : parts) {
      sum += part.finish(effects);
    }
    quadratic = sum;
  }

  /**
   * A fixed effect of which the blocks' own effects leave nothing but rounding is not determined.
   */
  private void refuseUndetermined(double[][] m) {
    for (int i = 0; i < fixed; i++) {
      double whole = 0;
      for (EliminatedBlock part : parts) {
        whole += dot(part.sharedDesign[i], part.sharedDesign[i]);
      }
      if (!(m[i][i] > UNDETERMINED * whole)) {
        throw new NotPositiveDefinite(i);
      }
    }
  }

  private static void addTo(double[][] m, double[] right, EliminatedBlock part) {
    for (int i = 0; i < right.length; i++) {
      right[i] += dot(part.rest[i], part.projected);
      for (int j = 0; j < right.length; j++) {
        m[i][j] += dot(part.rest[i], part.rest[j]);
      }
    }
  }

  static double dot(double[] x, double[] y) {
    return RowKernel.dot(x, y, 0, x.length);
  }

  /** Estimates of the shared effects: the fixed ones, then v. */
  public double[] sharedEffects() {
    return effects.clone();
  }

  /** Joint covariance of the errors of {@link #sharedEffects}. */
  public double[][] sharedCovariance() {
    return normal.inverse();
  }

  /** Estimates of one block's own effects. */
  public double[] ownEffects(int block) {
    return parts[block].ownEffects(effects);
  }

  /** Residual quadratic form r'V⁻¹r. */
  public double quadratic() {
    return quadratic;
  }

  /** ln |V| + ln |X'V⁻¹X|. */
  public double logDeterminants() {
    double sum = normal.logDeterminant();
    for (EliminatedBlock part : parts) {
      sum += part.logDeterminants();
    }
    return sum;
  }

  /** Number of data. */
  public int dataCount() {
    return dataCount;
  }

  /**
   * Restricted log-likelihood without the term ½ ln|X'X|: -½ ((n - p) ln 2π + ln|V| + ln|X'V⁻¹X| +
   * r'V⁻¹r).
   */
  public double restrictedLogLikelihood() {
    double freedom = dataCount - (double) fixed;
    for (EliminatedBlock part : parts) {
      freedom -= part.basis.length;
    }
    return -0.5 * (freedom * Math.log(2 * Math.PI) + logDeterminants() + quadratic);
  }

  /** V⁻¹(y - X b) of one block, which is also P y. */
  public double[] dual(int block) {
    return parts[block].alpha().clone();
  }

  /** The factor of one block's D. */
  public Cholesky factor(int block) {
    return parts[block].factor;
  }

  /** D⁻¹ times the orthonormal basis of one block's own effects: one array of n an own effect. */
  public double[][] ownDual(int block) {
    return unwhitened(parts[block].factor, parts[block].basis);
  }

  /** D⁻¹ times one block's shared design given its own effects: one array of n a shared effect. */
  public double[][] sharedDual(int block) {
    return unwhitened(parts[block].factor, parts[block].rest);
  }

  /**
   * The rule behind one block's own effects given the shared ones, a D⁻¹ (y - S s): one array of n
   * an own effect.
   */
  public double[][] ownRule(int block) {
    EliminatedBlock part = parts[block];
    double[][] rule = new double[part.basis.length][];
    for (int o = 0; o < rule.length; o++) {
      double[] unit = new double[rule.length];
      unit[o] = 1;
      double[] onBasis = part.own.forward(unit);
      double[] row = new double[part.values.length];
      for (int i = 0; i < onBasis.length; i++) {
        RowKernel.subtract(row, -onBasis[i], part.basis[i], 0, row.length);
      }
      rule[o] = part.factor.backward(row);
    }
    return rule;
  }

  private static double[][] unwhitened(Cholesky factor, double[][] rows) {
    double[][] out = new double[rows.length][];
    Arrays.setAll(out, i -> factor.backward(rows[i]));
    return out;
  }

  /** The factor of the shared effects' precision, own effects eliminated. */
  public Cholesky sharedFactor() {
    return normal;
  }

  /**
   * Prepares the prediction of unknowns that are correlated with one block only.
   *
   * @param block its position
   * @param covariances covariance of each unknown with each datum of the block, one array a datum;
   *     overwritten
   * @param own value of each of the block's own effects in each unknown; overwritten
   * @param inShared value of each shared effect in each unknown; overwritten
   */
  public Prediction predict(
      int block, double[][] covariances, double[][] own, double[][] inShared) {
    EliminatedBlock part = parts[block];
    int count = own[0].length;
    int data = covariances.length;
    double[] mean = new double[count];
    add(mean, part.ownEffects(effects), own);
    add(mean, effects, inShared);
    add(mean, part.alpha(), covariances);
    part.factor.forwardRows(covariances);
    remove(own, part.ownDesign, covariances, data);
    part.own.forwardRows(own);
    remove(inShared, part.sharedDesign, covariances, data);
    remove(inShared, part.explained, own, own.length);
    normal.forwardRows(inShared);
    return new Prediction(block, mean, covariances, own, inShared);
  }

  private static void add(double[] mean, double[] effects, double[][] design) {
    for (int i = 0; i < design.length; i++) {
      RowKernel.subtract(mean, -effects[i], design[i], 0, mean.length);
    }
  }

  /** {@code from[i] -= sum over r of weights[i][r] rows[r]}. */
  private static void remove(double[][] from, double[][] weights, double[][] rows, int data) {
    double[][] byRow = transposed(weights, data);
    for (int i = 0; i < from.length; i++) {
      RowKernel.subtract(from[i], byRow, i, rows, 0, data, 0, from[i].length);
    }
  }

  private static double[][] transposed(double[][] columns, int rows) {
    double[][] out = new double[rows][columns.length];
    for (int i = 0; i < rows; i++) {
      for (int c = 0; c < columns.length; c++) {
        out[i][c] = columns[c][i];
      }
    }
    return out;
  }
}
