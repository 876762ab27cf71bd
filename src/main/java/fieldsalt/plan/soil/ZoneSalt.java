package fieldsalt.plan.soil;

import fieldsalt.classes.YieldModel;
import fieldsalt.plan.draw.Draws;
import fieldsalt.plan.draw.JointLognormal;
import fieldsalt.surface.Surface;
import fieldsalt.surface.area.JointMeans;
import fieldsalt.surface.site.Target;
import java.util.List;

/**
 * Salt in one zone over one depth: the zone mean with its error, and how the points of the zone
 * spread about it.
 *
 * @param meanEce dS/m
 * @param low 5 % quantile of the zone mean
 * @param high 95 % quantile of the zone mean
 * @param draws futures of the zone mean, dS/m
 * @param pointLogMean mean of ln ECe at each point
 * @param pointLogSd its standard deviation, micro-scale included
 */
public record ZoneSalt(
    double meanEce,
    double low,
    double high,
    double[] draws,
    double[] pointLogMean,
    double[] pointLogSd) {

  /**
   * The salt of one field's zones, moving together and with that of other fields.
   *
   * @param means of the zones, which are of one field
   * @param draws of that field
   * @param scores of what fields share
   */
  public static List<ZoneSalt> of(
      List<ZoneGround> zones, Surface ece, JointMeans means, Draws draws, double[][] scores) {
    double[][] drawn =
        new JointLognormal(means.mean(), means.covariance(), means.shared()).draw(draws, scores);
    ZoneSalt[] salts = new ZoneSalt[zones.size()];
    for (int z = 0; z < salts.length; z++) {
      Surface.Marginals points = ece.marginals(zones.get(z).points());
      salts[z] =
          new ZoneSalt(
              means.mean()[z],
              means.low()[z],
              means.high()[z],
              drawn[z],
              points.mean(),
              points.sd());
    }
    return List.of(salts);
  }

  /** Relative yield in percent, expected over the points of the zone: closed form at each. */
  public double expectedYield(YieldModel model) {
    double sum = 0;
    for (int i = 0; i < pointLogMean.length; i++) {
      sum += model.expectedPct(pointLogMean[i], pointLogSd[i]);
    }
    return sum / pointLogMean.length;
  }

  /**
   * Mean relative yield of the zone in each future: the points spread about the drawn zone mean as
   * they do about the expected one.
   *
   * @param scale factor of ECe in each future, e.g. what leaching leaves; at most 1
   */
  public double[] yieldDraws(YieldModel model, double[] scale) {
    double within = withinLogSd();
    double[] out = new double[draws.length];
    for (int d = 0; d < out.length; d++) {
      double logMean = Math.log(draws[d] * scale[d]) - within * within / 2;
      out[d] = model.expectedPct(logMean, within);
    }
    return out;
  }

  /** Standard deviation of ln ECe between the points, once the zone mean is known. */
  public double withinLogSd() {
    double total = Draws.mean(square(pointLogSd)) + variance(pointLogMean);
    double ofMean = Math.log1p(Math.pow(Draws.sd(draws) / meanEce, 2));
    return Math.sqrt(Math.max(0, total - ofMean));
  }

  private static double[] square(double[] x) {
    return Draws.map(x, v -> v * v);
  }

  private static double variance(double[] x) {
    double sd = Draws.sd(x);
    return sd * sd;
  }

  /** Chance that the zone mean is above a limit. */
  public double chanceMeanAbove(double limit) {
    return Draws.share(draws, x -> x > limit);
  }

  /** Mean over the points of the chance to be above a limit: the share of the area above it. */
  public static double shareAbove(Surface ece, List<Target> points, double limit) {
    double sum = 0;
    for (Target point : points) {
      sum += ece.at(point).chanceAbove(limit);
    }
    return sum / points.size();
  }
}
