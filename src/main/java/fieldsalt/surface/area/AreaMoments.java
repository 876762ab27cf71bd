package fieldsalt.surface.area;

import fieldsalt.basis.site.Scale;
import fieldsalt.surface.fit.Mixture;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.site.Observations;
import fieldsalt.surface.site.Target;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Means of the property over areas, with their joint error, from the joint moments of z at points
 * of each area. On the log scale: E_i = exp(m_i + P_ii/2 + c_micro/2), mean = average of E_i,
 * covariance = average of E_i E_j (exp(P_ij) - 1), micro-scale only where i and j are one point
 * (lognormal moments; Cressie 2006, Mathematical Geology 38:413-443).
 *
 * <p>Areas of different fields are tied by shared effects only, through loadings a_i of their
 * points: the covariance of their logarithms is taken as the product of the loadings averaged over
 * each area with the weights E_i (first order in how the loadings vary within an area).
 */
public final class AreaMoments {
  private final Scale scale;

  public AreaMoments(Scale scale) {
    this.scale = scale;
  }

  /**
   * Means and covariance under one predictor.
   *
   * @param shared one row an area: what its mean (of the logarithm, on the log scale) has of each
   *     shared effect
   */
  public record Moments(double[] mean, double[][] covariance, double[][] shared) {}

  public Moments under(Predictor predictor, Observations data, List<List<Target>> areas) {
    double micro = predictor.solved().model().microScale();
    int n = areas.size();
    double[] mean = new double[n];
    double[][] covariance = new double[n][n];
    double[][] shared = new double[n][];
    List<Known> known = new ArrayList<>();
    for (int a = 0; a < n; a++) {
      TargetGroups.Joined all = TargetGroups.of(data, areas.get(a)).predict(predictor);
      double[][] p = all.covariance(all);
      double[] e = expectations(all.mean(), p, micro);
      mean[a] = average(e);
      covariance[a][a] = withItself(e, p, micro);
      shared[a] = shared(all, e);
      known.add(new Known(all, e));
      for (int b = 0; b < a; b++) {
        covariance[a][b] = between(known.get(a), known.get(b));
        covariance[b][a] = covariance[a][b];
      }
    }
    return new Moments(mean, covariance, shared);
  }

  /** An area's points and what is expected at each. */
  private record Known(TargetGroups.Joined joined, double[] e) {}

  private double[] shared(TargetGroups.Joined all, double[] e) {
    double[][] loadings = all.shared();
    double sum = scale == Scale.LOG ? Arrays.stream(e).sum() : e.length;
    double[] mean = new double[loadings.length];
    for (int k = 0; k < mean.length; k++) {
      for (int i = 0; i < e.length; i++) {
        mean[k] += loadings[k][i] * (scale == Scale.LOG ? e[i] : 1) / sum;
      }
    }
    return mean;
  }

  private double[] expectations(double[] z, double[][] p, double micro) {
    double[] e = new double[z.length];
    for (int i = 0; i < e.length; i++) {
      e[i] = scale == Scale.LOG ? Math.exp(z[i] + (p[i][i] + micro) / 2) : z[i];
    }
    return e;
  }

  private static double average(double[] e) {
    return Arrays.stream(e).average().orElseThrow();
  }

  private double withItself(double[] e, double[][] p, double micro) {
    double sum = 0;
    for (int i = 0; i < e.length; i++) {
      sum += term(e[i], e[i], p[i][i] + micro);
      for (int j = 0; j < i; j++) {
        sum += 2 * term(e[i], e[j], p[i][j]);
      }
    }
    return Math.max(0, sum / e.length / e.length);
  }

  private double between(Known one, Known other) {
    double[][] p = one.joined.covariance(other.joined);
    double sum = 0;
    for (int i = 0; i < p.length; i++) {
      for (int j = 0; j < p[i].length; j++) {
        sum += term(one.e[i], other.e[j], p[i][j]);
      }
    }
    return sum / p.length / p[0].length;
  }

  private double term(double ei, double ej, double pij) {
    return scale == Scale.LOG ? ei * ej * (Math.exp(pij) - 1) : pij;
  }

  /** Moments and 5 and 95 % quantiles over all models, each matched by a (log)normal. */
  public JointMeans together(List<Moments> models, double[] weights) {
    int n = models.get(0).mean().length;
    double[] mean = new double[n];
    double[] low = new double[n];
    double[] high = new double[n];
    for (int a = 0; a < n; a++) {
      Mixture known = matched(models, weights, a);
      low[a] = back(known.quantile(0.05));
      high[a] = back(known.quantile(0.95));
      for (int k = 0; k < weights.length; k++) {
        mean[a] += weights[k] * models.get(k).mean()[a];
      }
    }
    return new JointMeans(
        new AreaMeans(mean, low, high),
        covariance(models, weights, mean),
        shared(models, weights, mean));
  }

  /** Relative to the means; a model that expects more everywhere is an effect that all share. */
  private double[][] shared(List<Moments> models, double[] weights, double[] mean) {
    int each = models.get(0).shared().length == 0 ? 0 : models.get(0).shared()[0].length;
    double[][] shared = new double[mean.length][weights.length * (each + 1)];
    for (int k = 0; k < weights.length; k++) {
      double root = Math.sqrt(weights[k]);
      for (int a = 0; a < mean.length; a++) {
        Moments m = models.get(k);
        double unit = scale == Scale.LOG ? m.mean()[a] / mean[a] : 1 / mean[a];
        for (int e = 0; e < each; e++) {
          shared[a][k * (each + 1) + e] = root * unit * m.shared()[a][e];
        }
        shared[a][k * (each + 1) + each] = root * (m.mean()[a] - mean[a]) / mean[a];
      }
    }
    return shared;
  }

  private double back(double z) {
    return scale == Scale.LOG ? Math.exp(z) : z;
  }

  private Mixture matched(List<Moments> models, double[] weights, int a) {
    double[] m = new double[weights.length];
    double[] s = new double[weights.length];
    for (int k = 0; k < weights.length; k++) {
      double mean = models.get(k).mean()[a];
      double variance = models.get(k).covariance()[a][a];
      double ofLog = Math.log1p(variance / (mean * mean));
      m[k] = scale == Scale.LOG ? Math.log(mean) - ofLog / 2 : mean;
      s[k] = Math.sqrt(scale == Scale.LOG ? ofLog : variance);
    }
    return new Mixture(weights, m, s);
  }

  private static double[][] covariance(List<Moments> models, double[] weights, double[] mean) {
    double[][] sum = new double[mean.length][mean.length];
    for (int k = 0; k < weights.length; k++) {
      Moments m = models.get(k);
      for (int a = 0; a < mean.length; a++) {
        for (int b = 0; b < mean.length; b++) {
          double product = (m.mean()[a] - mean[a]) * (m.mean()[b] - mean[b]);
          sum[a][b] += weights[k] * (m.covariance()[a][b] + product);
        }
      }
    }
    return sum;
  }
}
