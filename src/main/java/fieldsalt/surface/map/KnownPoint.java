package fieldsalt.surface.map;

import fieldsalt.basis.site.Scale;
import fieldsalt.surface.fit.Mixture;

/** A point's distribution from the mixture of z. */
public record KnownPoint(Mixture z, Scale scale) implements PointDistribution {
  @Override
  public double median() {
    return quantile(0.5);
  }

  @Override
  public double mean() {
    return scale == Scale.LOG ? z.meanOfExp() : z.expectation();
  }

  @Override
  public double error() {
    return Math.sqrt(z.variance());
  }

  @Override
  public double quantile(double chance) {
    double q = z.quantile(chance);
    return scale == Scale.LOG ? Math.exp(q) : q;
  }

  @Override
  public double chanceAbove(double limit) {
    return 1 - z.below(scale == Scale.LOG ? Math.log(Math.max(0, limit)) : limit);
  }
}
