package fieldsalt.surface.fit;

import fieldsalt.surface.site.LinearRule;
import fieldsalt.surface.site.Points;
import java.util.Arrays;

/**
 * Any linear predictor l'y with the error variance it has under a model, C00 - 2 l'c0 + l'Vl: a
 * mean or an inverse-distance map then has errors as honest as kriging's.
 */
public final class Linear implements Predictor {
  private final Solved solved;
  private final LinearRule rule;
  private final LinearErrors errors;

  public Linear(Solved solved, LinearRule rule) {
    this.solved = solved;
    this.rule = rule;
    this.errors = new LinearErrors(solved, rule::carriers);
  }

  @Override
  public Solved solved() {
    return solved;
  }

  /** The map knows nothing of the shared errors; its own values carry them all the same. */
  @Override
  public Predicted readings(Points points, double[] loadings) {
    return new Applied(points, rule.at(points), loadings);
  }

  public static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  private final class Applied implements Predicted {
    private final Points points;
    private final LinearRule.Weights weights;
    private final double[][] cross;

    /** By column of weights. */
    private final double[] value;

    private final double[][] white;

    /** Shared errors of prediction less truth: on the offsets, then on what fields carry. */
    private final double[][] shared;

    Applied(Points points, LinearRule.Weights weights, double[] loadings) {
      this.points = points;
      this.weights = weights;
      int part = points.part();
      cross = points.covariancesWith(solved.data().parts().get(part), solved.model());
      int columns = weights.own().length;
      value = new double[columns];
      white = new double[columns][];
      shared = new double[columns][];
      for (int c = 0; c < columns; c++) {
        double[] l = weights.own()[c];
        double[] g = weights.shared()[c];
        value[c] = errors.value(part, l, g);
        white[c] = errors.white(part, l);
        shared[c] = errors.offsets(part, l, g);
        for (int k = 0; k < loadings.length; k++) {
          shared[c][k] -= loadings[k];
        }
      }
    }

    @Override
    public double[] mean() {
      double[] mean = new double[points.size()];
      Arrays.setAll(mean, i -> value[weights.column()[i]]);
      return mean;
    }

    @Override
    public double[] variance() {
      double[] variance = new double[points.size()];
      double point = solved.model().pointVariance();
      for (int i = 0; i < variance.length; i++) {
        int c = weights.column()[i];
        double own = point - 2 * weightTimesCross(i) + gram(this, c, c);
        variance[i] = Math.max(solved.model().microScale(), own);
      }
      return variance;
    }

    /** l'c of place i. */
    private double weightTimesCross(int i) {
      double[] w = weights.own()[weights.column()[i]];
      double sum = 0;
      for (int r = 0; r < w.length; r++) {
        sum += w[r] * cross[r][i];
      }
      return sum;
    }

    /** W'C: columns of weights, which may be another's, by places here. */
    private double[][] weightsTimesCross(LinearRule.Weights of) {
      double[][] columns = of.own();
      double[][] products = new double[columns.length][points.size()];
      for (int c = 0; c < columns.length; c++) {
        for (int r = 0; r < cross.length; r++) {
          addMultiple(products[c], columns[c][r], cross[r]);
        }
      }
      return products;
    }

    private static void addMultiple(double[] sum, double by, double[] row) {
      for (int i = 0; i < sum.length; i++) {
        sum[i] += by * row[i];
      }
    }

    @Override
    public double[][] covariance(Predicted other) {
      Applied that = (Applied) other;
      if (points.part() != that.points.part()) {
        return sharedCovariance(that);
      }
      double[][] covariance = points.covariancesWith(that.points, solved.model());
      double[][] gram = gram(that);
      double[][] here = weightsTimesCross(that.weights);
      double[][] there = that.weightsTimesCross(weights);
      for (int i = 0; i < covariance.length; i++) {
        int ci = weights.column()[i];
        for (int j = 0; j < covariance[i].length; j++) {
          int cj = that.weights.column()[j];
          covariance[i][j] += gram[ci][cj] - here[cj][i] - there[ci][j];
        }
      }
      return covariance;
    }

    /** W'VW between columns of weights of one field, with what the loadings add. */
    private double[][] gram(Applied that) {
      double[][] gram = new double[white.length][that.white.length];
      for (int c = 0; c < gram.length; c++) {
        for (int d = 0; d < gram[c].length; d++) {
          gram[c][d] = gram(that, c, d);
        }
      }
      return gram;
    }

    private double gram(Applied that, int c, int d) {
      return dot(white[c], that.white[d])
          + errors.ofOthers(points.part(), weights.shared()[c], that.weights.shared()[d])
          + dot(shared[c], that.shared[d]);
    }

    @Override
    public double[][] shared() {
      double[][] byColumn = new double[white.length][];
      for (int c = 0; c < byColumn.length; c++) {
        double[] carried = errors.carried(weights.shared()[c]);
        byColumn[c] = Arrays.copyOf(shared[c], shared[c].length + carried.length);
        System.arraycopy(carried, 0, byColumn[c], shared[c].length, carried.length);
      }
      double[][] loadings = new double[byColumn[0].length][points.size()];
      for (int k = 0; k < loadings.length; k++) {
        for (int i = 0; i < loadings[k].length; i++) {
          loadings[k][i] = byColumn[weights.column()[i]][k];
        }
      }
      return loadings;
    }
  }
}
