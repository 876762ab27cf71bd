package fieldsalt.surface;

/**
 * Any linear predictor l'y with the error variance it has under a model, C00 - 2 l'c0 + l'Vl: a
 * mean or an inverse-distance map then has errors as honest as kriging's.
 */
record Linear(Solved solved, LinearRule rule) implements Predictor {

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

  static double dot(double[] a, double[] b) {
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
        variance[i] = point - 2 * weightTimesCross(i, weights, weights.column()[i]);
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

    /** l'c of place i here, l a column of weights that may be another's. */
    private double weightTimesCross(int i, LinearRule.Weights of, int column) {
      double[] w = of.byPart()[points.part()][column];
      double sum = 0;
      for (int r = 0; r < w.length; r++) {
        sum += w[r] * cross[r][i];
      }
      return sum;
    }

    @Override
    public double[][] covariance(Predicted other) {
      Applied that = (Applied) other;
      boolean same = points.part() == that.points.part();
      double[][] covariance =
          same
              ? points.covariancesWith(that.points, solved.model())
              : new double[points.size()][that.points.size()];
      for (int i = 0; i < covariance.length; i++) {
        for (int j = 0; j < covariance[i].length; j++) {
          int ci = weights.column()[i];
          int cj = that.weights.column()[j];
          covariance[i][j] +=
              dot(whitened[ci], that.whitened[cj])
                  - weightTimesCross(i, that.weights, cj)
                  - that.weightTimesCross(j, weights, ci)
                  + dot(loadings, that.loadings)
                  - shared(loadings, that.whitened[cj])
                  - shared(that.loadings, whitened[ci]);
        }
      }
      return covariance;
    }
  }
}
