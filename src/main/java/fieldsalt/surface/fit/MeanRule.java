package fieldsalt.surface.fit;

import fieldsalt.gaussian.MixedModel;
import fieldsalt.surface.site.LinearRule;
import fieldsalt.surface.site.Observations;
import fieldsalt.surface.site.Points;

/**
 * The field's mean, by generalised least squares under a model without spatial correlation: paste
 * rows and cheap rows weigh as their errors say. Other fields count by what they tell of the shared
 * errors.
 */
public final class MeanRule implements LinearRule {
  private final double[][] own;
  private final double[][] shared;
  private final double[][][] carriers;

  /**
   * Weights from a solved model whose partial sill is 0.
   *
   * @param uncorrelated all variance of z in the micro-scale part
   */
  public MeanRule(Solved uncorrelated) {
    Observations data = uncorrelated.data();
    int parts = data.parts().size();
    MixedModel solution = uncorrelated.solution();
    own = new double[parts][];
    shared = new double[parts][];
    carriers = new double[parts][][];
    for (int part = 0; part < parts; part++) {
      double[][] design = data.sharedDesign(part);
      carriers[part] = solution.sharedDual(part);
      own[part] = solution.ownRule(part)[0];
      double[] g = new double[design.length];
      for (int k = 0; k < g.length; k++) {
        g[k] = -Linear.dot(design[k], own[part]);
      }
      shared[part] = solution.sharedFactor().solve(g);
      for (int k = 0; k < g.length; k++) {
        for (int i = 0; i < own[part].length; i++) {
          own[part][i] += shared[part][k] * carriers[part][k][i];
        }
      }
    }
  }

  @Override
  public Weights at(Points points) {
    int part = points.part();
    return new Weights(
        new double[][] {own[part]}, new double[][] {shared[part]}, new int[points.size()]);
  }

  @Override
  public double[][] carriers(int part) {
    return carriers[part];
  }
}
