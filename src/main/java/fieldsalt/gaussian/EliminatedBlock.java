package fieldsalt.gaussian;

import java.util.Arrays;

/**
 * A block with its own effects eliminated. {@code basis}: orthonormal rows that span what the own
 * effects are after whitening, L1⁻¹ of the whitened design. {@code rest}: the whitened shared
 * design without what the basis explains, {@code explained} what it explains (shared x own).
 */
final class EliminatedBlock {
  final Cholesky factor;
  final Cholesky own;
  final double[][] ownDesign;
  final double[][] basis;
  final double[][] rest;
  final double[][] sharedDesign;
  final double[][] explained;
  final double[] values;
  final double[] projected;
  private double[] residual;
  private volatile double[] alpha;

  EliminatedBlock(MixedModel.Block block) {
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
    return MixedModel.dot(residual, residual);
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
        products[i][j] = MixedModel.dot(a[i], b[j]);
      }
    }
    return products;
  }
}
