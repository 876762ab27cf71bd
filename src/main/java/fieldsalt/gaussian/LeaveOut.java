package fieldsalt.gaussian;

/**
 * Data predicted from all other data, without refitting: with P of restricted likelihood, the
 * errors of a set B are e = P_BB⁻¹(Py)_B and their covariance is P_BB⁻¹ (Dubrule 1983, Mathematical
 * Geology 15:687-699, here for sets; parameters held). The covariance is that of the data
 * themselves, their own and shared errors included.
 */
public final class LeaveOut {
  private final MixedModel model;
  private final int[][] columns;
  private final double[][][] inverse;
  private final double[][][] shared;

  /** Inverts the blocks of a solved model. */
  public LeaveOut(MixedModel model, int[][] columnsOfBlocks) {
    this.model = model;
    this.columns = columnsOfBlocks;
    int count = columnsOfBlocks.length;
    inverse = new double[count][][];
    shared = new double[count][][];
    for (int b = 0; b < count; b++) {
      inverse[b] = model.factor(b).inverse();
      shared[b] = effectRows(b);
    }
  }

  /** Rows of M^(-1/2) W'D⁻¹: one array an effect, one value a datum of the block. */
  private double[][] effectRows(int b) {
    double[][] dual = model.dualDesign(b);
    int n = model.factor(b).size();
    double[][] rows = new double[model.effectsFactor().size()][n];
    for (int c = 0; c < dual.length; c++) {
      rows[columns[b][c]] = dual[c];
    }
    model.effectsFactor().forwardRows(rows);
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
        p[i][j] = element(block, members[i], block, members[j]);
      }
      if (p[i][i] <= 1e-10 * inverse[block][members[i]][members[i]]) {
        throw new NotPositiveDefinite(members[i], p[i][i]);
      }
    }
    return p;
  }

  private double element(int block, int i, int otherBlock, int j) {
    double p = block == otherBlock ? inverse[block][i][j] : 0;
    for (int k = 0; k < shared[block].length; k++) {
      p -= shared[block][k][i] * shared[otherBlock][k][j];
    }
    return p;
  }

  /**
   * The linear rule behind one error: weights on all data, one array a block, of which the error of
   * {@code members[which]} is the sum; 1 on that datum itself, 0 on the others of the set.
   */
  public double[][] rule(int block, int[] members, int which) {
    double[] unit = new double[members.length];
    unit[which] = 1;
    double[] f = Cholesky.factor(projection(block, members)).solve(unit);
    double[][] rule = new double[inverse.length][];
    for (int b = 0; b < rule.length; b++) {
      rule[b] = new double[inverse[b].length];
      for (int i = 0; i < members.length; i++) {
        for (int j = 0; j < rule[b].length; j++) {
          rule[b][j] += f[i] * element(block, members[i], b, j);
        }
      }
    }
    for (int i = 0; i < members.length; i++) {
      rule[block][members[i]] = i == which ? 1 : 0;
    }
    return rule;
  }

  /** Errors and their covariance. */
  public record Errors(double[] error, double[][] covariance) {}
}
