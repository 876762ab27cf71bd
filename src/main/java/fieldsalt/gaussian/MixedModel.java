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
  private final Part[] parts;
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
   * A block with its own effects eliminated. {@code basis}: orthonormal rows that span what the own
   * effects are after whitening, L1⁻¹ of the whitened design. {@code rest}: the whitened shared
   * design without what the basis explains, {@code explained} what it explains (shared x own).
   */
  private static final class Part {
    private final Cholesky factor;
    private final Cholesky own;
    private final double[][] ownDesign;
    private final double[][] basis;
    private final double[][] rest;
    private final double[][] sharedDesign;
    private final double[][] explained;
    private final double[] values;
    private final double[] projected;
    private double[] residual;
    private volatile double[] alpha;

    Part(Block block) {
      factor = Cholesky.factor(block.covariance());
      ownDesign = whitened(factor, block.own());
      own = Cholesky.factor(products(ownDesign, ownDesign));
      basis = copy(ownDesign);
      own.forwardRows(basis);
      sharedDesign = whitened(factor, block.shared());
      explained = products(sharedDesign, basis);
      rest = copy(sharedDesign);
      for (int k = 0; k < rest.length; k++) {
        project(rest[k], explained[k]);
      }
      values = factor.forward(block.values());
      projected = values.clone();
      project(projected, products(new double[][] {values}, basis)[0]);
    }

    private void project(double[] row, double[] onBasis) {
      for (int o = 0; o < basis.length; o++) {
        RowKernel.subtract(row, onBasis[o], basis[o], 0, row.length);
      }
    }

    /** Residual of the whitened values; its squares are the block's part of the quadratic form. */
    double finish(double[] estimates) {
      residual = projected;
      for (int k = 0; k < rest.length; k++) {
        RowKernel.subtract(residual, estimates[k], rest[k], 0, residual.length);
      }
      return dot(residual, residual);
    }

    /** V⁻¹(y - X b), worked out when first asked for: a likelihood alone does not need it. */
    double[] alpha() {
      if (alpha == null) {
        alpha = factor.backward(residual);
      }
      return alpha;
    }

    /** Estimates of the own effects. */
    double[] ownEffects(double[] estimates) {
      double[] left = values.clone();
      for (int k = 0; k < sharedDesign.length; k++) {
        RowKernel.subtract(left, estimates[k], sharedDesign[k], 0, left.length);
      }
      return own.backward(products(new double[][] {left}, basis)[0]);
    }

    double logDeterminants() {
      return factor.logDeterminant() + own.logDeterminant();
    }
  }

  /**
   * Solves.
   *
   * @param blocks at least one, all with the same number of shared effects; their covariances are
   *     overwritten
   * @param fixed how many of the shared effects are fixed
   * @throws NotPositiveDefinite if a covariance is not positive definite, or the data do not
   *     determine all of b
   */
  public MixedModel(List<Block> blocks, int fixed) {
    this.fixed = fixed;
    this.shared = blocks.get(0).shared().length;
    dataCount = blocks.stream().mapToInt(Block::size).sum();
    parts = blocks.parallelStream().map(Part::new).toArray(Part[]::new);
    double[][] m = new double[shared][shared];
    double[] right = new double[shared];
    for (Part part : parts) {
      addTo(m, right, part);
    }
    refuseUndetermined(m);
    for (int i = fixed; i < shared; i++) {
      m[i][i] += 1;
    }
    normal = Cholesky.factor(m);
    effects = normal.solve(right);
    double sum = 0;
    for (Part part : parts) {
      sum += part.finish(effects);
    }
    for (int i = fixed; i < shared; i++) {
      sum += effects[i] * effects[i];
    }
    quadratic = sum;
  }

  /**
   * A fixed effect of which the blocks' own effects leave nothing but rounding is not determined.
   */
  private void refuseUndetermined(double[][] m) {
    for (int i = 0; i < fixed; i++) {
      double whole = 0;
      for (Part part : parts) {
        whole += dot(part.sharedDesign[i], part.sharedDesign[i]);
      }
      if (!(m[i][i] > UNDETERMINED * whole)) {
        throw new NotPositiveDefinite(i);
      }
    }
  }

  private static void addTo(double[][] m, double[] right, Part part) {
    for (int i = 0; i < right.length; i++) {
      right[i] += dot(part.rest[i], part.projected);
      for (int j = 0; j < right.length; j++) {
        m[i][j] += dot(part.rest[i], part.rest[j]);
      }
    }
  }

  private static double[][] whitened(Cholesky factor, double[][] design) {
    double[][] white = new double[design.length][];
    Arrays.setAll(white, i -> factor.forward(design[i]));
    return white;
  }

  private static double[][] copy(double[][] rows) {
    return Arrays.stream(rows).map(double[]::clone).toArray(double[][]::new);
  }

  /** One row a row of {@code a}, one column a row of {@code b}: their products. */
  private static double[][] products(double[][] a, double[][] b) {
    double[][] products = new double[a.length][b.length];
    for (int i = 0; i < a.length; i++) {
      for (int j = 0; j < b.length; j++) {
        products[i][j] = dot(a[i], b[j]);
      }
    }
    return products;
  }

  private static double dot(double[] x, double[] y) {
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
    for (Part part : parts) {
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
    for (Part part : parts) {
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
    Part part = parts[block];
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
    Part part = parts[block];
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

  /**
   * Unknowns seen from the data. The error covariance of two of them is their prior covariance
   * given the effects; if they are of one block, minus the product of their columns of {@code
   * fromData} and plus that of {@code fromOwn}; and in any case plus that of {@code fromShared}.
   *
   * @param mean one an unknown
   * @param fromData one array a datum of the block, each with one value an unknown
   * @param fromOwn one array an own effect of the block, likewise
   * @param fromShared one array a shared effect, likewise
   */
  public record Prediction(
      int block, double[] mean, double[][] fromData, double[][] fromOwn, double[][] fromShared) {
    /** Variance added to (negative: taken from) the prior variance given the effects. */
    public double[] varianceChange() {
      double[] change = new double[mean.length];
      addSquares(change, fromOwn, 1);
      addSquares(change, fromShared, 1);
      addSquares(change, fromData, -1);
      return change;
    }

    private static void addSquares(double[] sum, double[][] rows, double sign) {
      for (double[] row : rows) {
        for (int j = 0; j < sum.length; j++) {
          sum[j] += sign * row[j] * row[j];
        }
      }
    }

    /** A weighted sum of the unknowns as one unknown. */
    public Prediction sum(double[] weights) {
      return new Prediction(
          block,
          new double[] {MixedModel.dot(mean, weights)},
          sums(fromData, weights),
          sums(fromOwn, weights),
          sums(fromShared, weights));
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
      double[][] change = ownCovarianceChange(other);
      int n = other.mean.length;
      double[][] negative = negated(fromShared);
      for (int i = 0; i < mean.length; i++) {
        RowKernel.subtract(change[i], negative, i, other.fromShared, 0, negative.length, 0, n);
      }
      return change;
    }

    /** The same given the shared effects: 0 between blocks. */
    public double[][] ownCovarianceChange(Prediction other) {
      double[][] change = new double[mean.length][other.mean.length];
      int n = other.mean.length;
      double[][] negative = negated(fromOwn);
      for (int i = 0; i < mean.length && block == other.block; i++) {
        RowKernel.subtract(change[i], fromData, i, other.fromData, 0, fromData.length, 0, n);
        RowKernel.subtract(change[i], negative, i, other.fromOwn, 0, negative.length, 0, n);
      }
      return change;
    }

    private static double[][] negated(double[][] rows) {
      return Arrays.stream(rows)
          .map(row -> Arrays.stream(row).map(v -> -v).toArray())
          .toArray(double[][]::new);
    }
  }
}
