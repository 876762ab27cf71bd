package fieldsalt.plan;

import fieldsalt.gaussian.Normal;
import fieldsalt.surface.Surface;
import fieldsalt.surface.area.AreaMeans;
import fieldsalt.surface.area.JointMeans;
import fieldsalt.surface.fit.SurfaceReport;
import fieldsalt.surface.map.PointDistribution;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.map.SurfaceStrips;
import fieldsalt.surface.site.Target;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleConsumer;
import java.util.function.ToDoubleBiFunction;
import java.util.function.ToDoubleFunction;

/** A lognormal surface given outright: mean and covariance of the logarithm, micro-scale apart. */
public final class FixedSurface implements Surface {
  private final ToDoubleFunction<Target> logMean;
  private final ToDoubleBiFunction<Target, Target> covariance;
  private final double micro;

  public FixedSurface(
      ToDoubleFunction<Target> logMean,
      ToDoubleBiFunction<Target, Target> covariance,
      double micro) {
    this.logMean = logMean;
    this.covariance = covariance;
    this.micro = micro;
  }

  @Override
  public SurfaceMap map(String field, double limit, DoubleConsumer progress) {
    throw new UnsupportedOperationException("no map is drawn here");
  }

  @Override
  public List<SurfaceStrips> rasters(
      List<SurfaceMap> maps, Map<String, Double> limitByField, DoubleConsumer progress) {
    throw new UnsupportedOperationException("no raster is written here");
  }

  @Override
  public double cellM() {
    throw new UnsupportedOperationException("no map is drawn here");
  }

  @Override
  public PointDistribution reading(Target target, double[] loadings, double ownVariance) {
    throw new UnsupportedOperationException("no reading is compared here");
  }

  @Override
  public List<String> mappedFields() {
    throw new UnsupportedOperationException("no field is mapped here");
  }

  @Override
  public Marginals marginals(List<Target> targets) {
    return new Marginals(
        targets.stream().mapToDouble(logMean).toArray(),
        targets.stream()
            .mapToDouble(t -> Math.sqrt(covariance.applyAsDouble(t, t) + micro))
            .toArray());
  }

  /** Lognormal moments in closed form; the micro-scale part lifts the mean and averages out. */
  @Override
  public JointMeans areaMeans(List<List<Target>> areas) {
    int n = areas.size();
    double[] mean = new double[n];
    double[][] cov = new double[n][n];
    double[] low = new double[n];
    double[] high = new double[n];
    for (int a = 0; a < n; a++) {
      for (Target t : areas.get(a)) {
        mean[a] += expected(t) / areas.get(a).size();
      }
    }
    for (int a = 0; a < n; a++) {
      for (int b = 0; b < n; b++) {
        cov[a][b] = covarianceOfMeans(areas.get(a), areas.get(b));
      }
      double v = Math.log1p(cov[a][a] / (mean[a] * mean[a]));
      low[a] = Math.exp(Math.log(mean[a]) - v / 2 + Normal.quantile(0.05) * Math.sqrt(v));
      high[a] = Math.exp(Math.log(mean[a]) - v / 2 + Normal.quantile(0.95) * Math.sqrt(v));
    }
    return new JointMeans(new AreaMeans(mean, low, high), cov, new double[n][0]);
  }

  private double expected(Target t) {
    return Math.exp(logMean.applyAsDouble(t) + (covariance.applyAsDouble(t, t) + micro) / 2);
  }

  private double covarianceOfMeans(List<Target> a, List<Target> b) {
    double sum = 0;
    for (Target s : a) {
      for (Target t : b) {
        double c = covariance.applyAsDouble(s, t) + (s.equals(t) ? micro : 0);
        sum += expected(s) * expected(t) * Math.expm1(c);
      }
    }
    return sum / a.size() / b.size();
  }

  @Override
  public PointDistribution at(Target target) {
    double m = logMean.applyAsDouble(target);
    double s = Math.sqrt(covariance.applyAsDouble(target, target) + micro);
    return new Lognormal(m, s);
  }

  private record Lognormal(double m, double s) implements PointDistribution {
    @Override
    public double median() {
      return Math.exp(m);
    }

    @Override
    public double mean() {
      return Math.exp(m + s * s / 2);
    }

    @Override
    public double error() {
      return s;
    }

    @Override
    public double quantile(double chance) {
      return Math.exp(m + s * Normal.quantile(chance));
    }

    @Override
    public double chanceAbove(double limit) {
      return Normal.above((Math.log(limit) - m) / s);
    }
  }

  @Override
  public SurfaceReport report() {
    throw new UnsupportedOperationException("nothing was fitted here");
  }
}
