package fieldsalt.surface.fit;

import fieldsalt.surface.site.LinearRule;
import fieldsalt.surface.site.Observations;
import fieldsalt.surface.site.Points;

/**
 * Any linear predictor l'y with the error variance it has under a model, C00 - 2 l'c0 + l'Vl: a
 * mean or an inverse-distance map then has errors as honest as kriging's.
 */
public record Linear(Solved solved, LinearRule rule) implements Predictor {

  /** The map knows nothing of the shared errors; its own values carry them all the same. */
  @Override
  public Predicted readings(Points points, double[] loadings) {
    LinearRule.Weights weights = rule.at(points);
    double[][] cross =
        points.covariancesWith(solved.data().parts().get(points.part()), solved.model());
    return new Applied(solved, points, weights, cross, whitened(weights), loadings);
  }

  /** U W by part, then G'W: the product of two of them is W'VW. One array a column of weights. */
  private double[][] whitened(LinearRule.Weights weights) {
    Observations data = solved.data();
    int columns = weights.byPart()[0].length;
    double[][] white = new double[columns][data.rowCount() + data.offsets()];
    for (int c = 0; c < columns; c++) {
      int at = 0;
      for (int part = 0; part < data.parts().size(); part++) {
        double[] w = weights.byPart()[part][c];
        double[] uw = solved.solution().factor(part).times(w);
        System.arraycopy(uw, 0, white[c], at, uw.length);
        at += uw.length;
        addShared(white[c], data.rowCount(), data.parts().get(part).loadings(), w);
      }
    }
    return white;
  }

  private static void addShared(double[] white, int from, double[][] loadings, double[] w) {
    for (int k = 0; k < loadings.length; k++) {
      white[from + k] += dot(loadings[k], w);
    }
  }

  public static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  private record Applied(
      Solved solved,
      Points points,
      LinearRule.Weights weights,
      double[][] cross,
      double[][] whitened,
      double[] loadings)
      implements Predicted {

    @Override
    public double[] mean() {
      double[] byColumn = new double[whitened.length];
      for (int part = 0; part < weights.byPart().length; part++) {
        double[] values = solved.data().parts().get(part).values();
        for (int c = 0; c < byColumn.length; c++) {
          byColumn[c] += dot(weights.byPart()[part][c], values);
        }
      }
      double[] mean = new double[points.size()];
      java.util.Arrays.setAll(mean, i -> byColumn[weights.column()[i]]);
      return mean;
    }

    @Override
    public double[] variance() {
      double[] variance = new double[points.size()];
      double point = solved.model().pointVariance();
      for (int i = 0; i < variance.length; i++) {
        double[] white = whitened[weights.column()[i]];
        variance[i] = point - 2 * weightTimesCross(i);
        variance[i] = Math.max(solved.model().microScale(), variance[i] + dot(white, white));
        variance[i] += dot(loadings, loadings) - 2 * shared(loadings, white);
      }
      return variance;
    }

    /** l'G'w. */
    private double shared(double[] l, double[] white) {
      int rows = solved.data().rowCount();
      double sum = 0;
      for (int k = 0; k < l.length; k++) {
        sum += l[k] * white[rows + k];
      }
      return sum;
    }

    /** l'c of place i. */
    private double weightTimesCross(int i) {
      double[] w = weights.byPart()[points.part()][weights.column()[i]];
      double sum = 0;
      for (int r = 0; r < w.length; r++) {
        sum += w[r] * cross[r][i];
      }
      return sum;
    }

    /** W'C: columns of weights, which may be another's, by places here. */
    private double[][] weightsTimesCross(LinearRule.Weights of) {
      double[][] columns = of.byPart()[points.part()];
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
      boolean same = points.part() == that.points.part();
      double[][] covariance =
          same
              ? points.covariancesWith(that.points, solved.model())
              : new double[points.size()][that.points.size()];
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

    /** W'VW between columns of weights, with what the loadings add. */
    private double[][] gram(Applied that) {
      double[][] gram = new double[whitened.length][that.whitened.length];
      for (int c = 0; c < gram.length; c++) {
        for (int d = 0; d < gram[c].length; d++) {
          gram[c][d] =
              dot(whitened[c], that.whitened[d])
                  + dot(loadings, that.loadings)
                  - shared(loadings, that.whitened[d])
                  - shared(that.loadings, whitened[c]);
        }
      }
      return gram;
    }
  }
}
