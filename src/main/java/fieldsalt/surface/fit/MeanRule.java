package fieldsalt.surface.fit;

import fieldsalt.gaussian.MixedModel;
import fieldsalt.surface.site.LinearRule;
import fieldsalt.surface.site.Observations;
import fieldsalt.surface.site.Points;

/**
 * The field's mean, by generalised least squares under a model without spatial correlation: paste
 * rows and cheap rows weigh as their errors say.
 */
public final class MeanRule implements LinearRule {
  private final double[][][] weights;

  /**
   * Weights from a solved model whose partial sill is 0.
   *
   * @param uncorrelated all variance of z in the micro-scale part
   */
  public MeanRule(Solved uncorrelated) {
    Observations data = uncorrelated.data();
    int parts = data.parts().size();
    weights = new double[parts][parts][];
    MixedModel solution = uncorrelated.solution();
    double[][] inverse = solution.effectsCovariance();
    for (int part = 0; part < parts; part++) {
      double[][] dual = solution.dualDesign(part);
      int[] columns = data.columns(part);
      for (int field = 0; field < parts; field++) {
        weights[part][field] = combined(dual, columns, inverse[field]);
      }
    }
  }

  private static double[] combined(double[][] dual, int[] columns, double[] inverse) {
    double[] sum = new double[dual[0].length];
    for (int c = 0; c < columns.length; c++) {
      for (int i = 0; i < sum.length; i++) {
        sum[i] += inverse[columns[c]] * dual[c][i];
      }
    }
    return sum;
  }

  @Override
  public Weights at(Points points) {
    double[][][] own = new double[weights.length][][];
    for (int part = 0; part < own.length; part++) {
      own[part] = new double[][] {weights[part][points.part()]};
    }
    return new Weights(own, new int[points.size()]);
  }
}
