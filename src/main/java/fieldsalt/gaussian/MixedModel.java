package fieldsalt.gaussian;

import java.util.Arrays;
import java.util.List;

/**
 * One full solve of y = X b + G v + e: b are fixed effects with a flat prior, v are independent
 * standard normal effects shared between blocks, e has a covariance D that is block diagonal.
 *
 * <p>With W = [X G] and M = W'D⁻¹W + diag(0, I) everything follows from the blocks' own factors
 * (Henderson 1975, Biometrics 31:423-447): the estimates M⁻¹W'D⁻¹y, and P = D⁻¹ - D⁻¹W M⁻¹W'D⁻¹,
 * the projection of restricted likelihood with the covariance V = G G' + D. A block costs its own
 * size cubed, never the size of the whole.
 */
public final class MixedModel {
  private final List<Block> blocks;
  private final int fixed;
  private final int size;
  private final Cholesky[] factors;
  private final double[][][] whitened;
  private final Cholesky normal;
  private final double[] effects;
  private final double[][] alpha;
  private double quadratic;

  /**
   * Data that share a covariance.
   *
   * @param covariance D of this block, n x n; its upper triangle is read and overwritten
   * @param columns which effects occur here: 0 to fixed - 1 are b, then come those of v
   * @param design one array of n values for each of {@code columns}
   * @param values y, n of them
   */
  public record Block(double[][] covariance, int[] columns, double[][] design, double[] values) {
    /** Number of data. */
    public int size() {
      return values.length;
    }
  }

  /**
   * Solves.
   *
   * @param blocks at least one; their covariances are overwritten
   * @param fixed number of fixed effects b
   * @param random number of shared effects v
   * @throws NotPositiveDefinite if a covariance is not positive definite, or the data do not
   *     determine all of b
   */
  public MixedModel(List<Block> blocks, int fixed, int random) {
    this.blocks = List.copyOf(blocks);
    this.fixed = fixed;
    this.size = fixed + random;
    int count = blocks.size();
    factors = new Cholesky[count];
    whitened = new double[count][][];
    double[][] m = new double[size][size];
    double[] right = new double[size];
    double[][] whiteValues = new double[count][];
    for (int b = 0; b < count; b++) {
      whiteValues[b] = whiten(b);
      addTo(m, right, b, whiteValues[b]);
    }
    for (int i = fixed; i < size; i++) {
      m[i][i] += 1;
    }
    normal = Cholesky.factor(m);
    effects = normal.solve(right);
    alpha = new double[count][];
    for (int b = 0; b < count; b++) {
      finish(b, whiteValues[b]);
    }
    for (int i = fixed; i < size; i++) {
      quadratic += effects[i] * effects[i];
    }
  }

  private double[] whiten(int b) {
    Block block = blocks.get(b);
    factors[b] = Cholesky.factor(block.covariance());
    whitened[b] = new double[block.columns().length][];
    for (int c = 0; c < whitened[b].length; c++) {
      whitened[b][c] = factors[b].forward(block.design()[c]);
    }
    return factors[b].forward(block.values());
  }

  private void addTo(double[][] m, double[] right, int b, double[] values) {
    int[] columns = blocks.get(b).columns();
    double[][] w = whitened[b];
    for (int i = 0; i < columns.length; i++) {
      right[columns[i]] += dot(w[i], values);
      for (int j = 0; j < columns.length; j++) {
        m[columns[i]][columns[j]] += dot(w[i], w[j]);
      }
    }
  }

  private void finish(int b, double[] residual) {
    int[] columns = blocks.get(b).columns();
    for (int c = 0; c < columns.length; c++) {
      RowKernel.subtract(residual, effects[columns[c]], whitened[b][c], 0, residual.length);
    }
    quadratic += dot(residual, residual);
    alpha[b] = factors[b].backward(residual);
  }

  private static double dot(double[] x, double[] y) {
    return RowKernel.dot(x, y, 0, x.length);
  }

  /** Estimates of b, then of v. */
  public double[] effects() {
    return effects.clone();
  }

  /** Joint covariance of the errors of {@link #effects}. */
  public double[][] effectsCovariance() {
    return normal.inverse();
  }

  /** Residual quadratic form r'V⁻¹r. */
  public double quadratic() {
    return quadratic;
  }

  /** ln |V| + ln |X'V⁻¹X|. */
  public double logDeterminants() {
    double sum = normal.logDeterminant();
    for (Cholesky factor : factors) {
      sum += factor.logDeterminant();
    }
    return sum;
  }

  /** Number of data. */
  public int dataCount() {
    int n = 0;
    for (Block block : blocks) {
      n += block.size();
    }
    return n;
  }

  /**
   * Restricted log-likelihood without the term ½ ln|X'X|: -½ ((n - p) ln 2π + ln|V| + ln|X'V⁻¹X| +
   * r'V⁻¹r).
   */
  public double restrictedLogLikelihood() {
    double freedom = dataCount() - (double) fixed;
    return -0.5 * (freedom * Math.log(2 * Math.PI) + logDeterminants() + quadratic);
  }

  /** V⁻¹(y - X b) of one block, which is also P y. */
  public double[] dual(int block) {
    return alpha[block].clone();
  }

  /** The factor of one block's D. */
  public Cholesky factor(int block) {
    return factors[block];
  }

  /** The factor of M = W'D⁻¹W + diag(0, I). */
  public Cholesky effectsFactor() {
    return normal;
  }

  /**
   * D⁻¹W of one block: one array of the block's size for each of its columns.
   *
   * @param block its position
   */
  public double[][] dualDesign(int block) {
    double[][] out = new double[whitened[block].length][];
    for (int c = 0; c < out.length; c++) {
      out[c] = factors[block].backward(whitened[block][c]);
    }
    return out;
  }

  /**
   * Prepares the prediction of unknowns that are correlated with one block only.
   *
   * @param block its position
   * @param covariances covariance of each unknown with each datum of the block, one array a datum;
   *     overwritten
   * @param design value of each effect in each unknown, one array for each of the block's columns;
   *     overwritten
   */
  public Prediction predict(int block, double[][] covariances, double[][] design) {
    int count = design.length == 0 ? covariances[0].length : design[0].length;
    int[] columns = blocks.get(block).columns();
    double[] mean = new double[count];
    for (int c = 0; c < columns.length; c++) {
      RowKernel.subtract(mean, -effects[columns[c]], design[c], 0, count);
    }
    for (int i = 0; i < covariances.length; i++) {
      RowKernel.subtract(mean, -alpha[block][i], covariances[i], 0, count);
    }
    factors[block].forwardRows(covariances);
    double[][] q = new double[size][count];
    double[][] byRow = transposed(whitened[block], covariances.length);
    for (int c = 0; c < columns.length; c++) {
      q[columns[c]] = design[c];
      RowKernel.subtract(q[columns[c]], byRow, c, covariances, 0, covariances.length, 0, count);
    }
    normal.forwardRows(q);
    return new Prediction(block, mean, covariances, q);
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

  /**
   * Unknowns seen from the data. The error covariance of two of them is their prior covariance
   * given the effects, minus the product of their columns of {@code fromData} (if of one block),
   * plus the product of their columns of {@code fromEffects}.
   *
   * @param mean one an unknown
   * @param fromData one array a datum of the block, each with one value an unknown
   * @param fromEffects one array an effect, each with one value an unknown
   */
  public record Prediction(int block, double[] mean, double[][] fromData, double[][] fromEffects) {
    /** Variance added to (negative: taken from) the prior variance given the effects. */
    public double[] varianceChange() {
      double[] change = new double[mean.length];
      for (double[] row : fromEffects) {
        addSquares(change, row, 1);
      }
      for (double[] row : fromData) {
        addSquares(change, row, -1);
      }
      return change;
    }

    private static void addSquares(double[] sum, double[] row, double sign) {
      for (int j = 0; j < sum.length; j++) {
        sum[j] += sign * row[j] * row[j];
      }
    }

    /** A weighted sum of the unknowns as one unknown. */
    public Prediction sum(double[] weights) {
      return new Prediction(
          block,
          new double[] {MixedModel.dot(mean, weights)},
          sums(fromData, weights),
          sums(fromEffects, weights));
    }

    private static double[][] sums(double[][] rows, double[] weights) {
      double[][] sums = new double[rows.length][];
      Arrays.setAll(sums, i -> new double[] {MixedModel.dot(rows[i], weights)});
      return sums;
    }

    /**
     * The same between every unknown here and every unknown of another prediction: one row an
     * unknown of this, one column an unknown of the other.
     */
    public double[][] covarianceChange(Prediction other) {
      double[][] change = new double[mean.length][other.mean.length];
      int n = other.mean.length;
      for (int i = 0; i < mean.length; i++) {
        int effects = fromEffects.length;
        RowKernel.subtract(change[i], fromEffects, i, other.fromEffects, 0, effects, 0, n);
        for (int j = 0; j < n; j++) {
          change[i][j] = -change[i][j];
        }
        if (block == other.block) {
          RowKernel.subtract(change[i], fromData, i, other.fromData, 0, fromData.length, 0, n);
        }
      }
      return change;
    }
  }
}
