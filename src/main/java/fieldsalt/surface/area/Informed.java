package fieldsalt.surface.area;

import fieldsalt.basis.site.Scale;
import fieldsalt.gaussian.Cholesky;
import fieldsalt.surface.fit.Linear;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.site.Points;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A predictor that knows readings of composites too: z is conditioned on them, given all rows at
 * sites, which is what solving them together gives.
 *
 * <p>A mixture is the arithmetic mean Y over the field. On the log scale ln Y is taken as normal
 * around the base's prediction: with E_i = exp(m_i + v_i/2) at N places, Y is expected to be the
 * mean of E_i, and d ln Y = sum of w_i dz_i, w_i = E_i / sum of E (the delta method; lognormal
 * moments as in {@link AreaMoments}). Its m cores miss the variance of values within the field over
 * m, which the readings of one mixture share.
 */
public final class Informed implements Predictor {
  private final Predictor base;
  private final Solved solved;
  private final List<Seen> seen;
  private final double[] innovation;
  private final double[][] covariance;
  private final double[][] inverse;
  private final double[] pull;
  private final double logDensity;

  /** A composite as the base expects it: its value less the expected, and what stands in it. */
  private record Seen(
      AreaReading area, Predicted places, double[] weights, double innovation, double sampling) {}

  /**
   * @param readings at least one
   */
  Informed(Predictor base, List<AreaReading> readings, Scale scale) {
    this.base = base;
    this.solved = base.solved();
    this.seen = readings.stream().map(r -> seen(base, r, scale)).toList();
    innovation = seen.stream().mapToDouble(Seen::innovation).toArray();
    covariance = covariance(seen);
    Cholesky factor = Cholesky.factor(copy(covariance));
    inverse = factor.inverse();
    pull = factor.solve(innovation);
    logDensity = -0.5 * (factor.logDeterminant() + Linear.dot(innovation, pull));
  }

  private Informed(Informed other, double weight) {
    base = other.base;
    solved = other.solved.withWeight(weight);
    seen = other.seen;
    innovation = other.innovation;
    covariance = other.covariance;
    inverse = other.inverse;
    pull = other.pull;
    logDensity = other.logDensity;
  }

  private static Seen seen(Predictor base, AreaReading area, Scale scale) {
    Predicted places = base.readings(area.places(), area.loadings());
    Predicted without = base.predict(area.places());
    double[] z = without.mean();
    double[] v = without.variance();
    int n = z.length;
    double[] weights = new double[n];
    double mean = 0;
    double square = 0;
    for (int i = 0; i < n; i++) {
      double e = scale == Scale.LOG ? Math.exp(z[i] + v[i] / 2) : z[i];
      weights[i] = scale == Scale.LOG ? e : 1;
      mean += e / n;
      square += (scale == Scale.LOG ? Math.exp(2 * z[i] + 2 * v[i]) : z[i] * z[i] + v[i]) / n;
    }
    double total = Arrays.stream(weights).sum();
    Arrays.setAll(weights, i -> weights[i] / total);
    double ofMean = Linear.dot(weights, without.covarianceWithSum(without, weights));
    double within =
        scale == Scale.LOG
            ? square / (mean * mean) - Math.exp(ofMean)
            : square - mean * mean - ofMean;
    double shared = Linear.dot(weights, places.mean()) - Linear.dot(weights, z);
    double expected = scale == Scale.LOG ? Math.log(mean) - ofMean / 2 : mean;
    return new Seen(
        area,
        places,
        weights,
        area.reading().value() - expected - shared,
        Math.max(0, within) / area.reading().cores());
  }

  private static double[][] covariance(List<Seen> seen) {
    double[][] s = noise(seen);
    for (int i = 0; i < s.length; i++) {
      Seen a = seen.get(i);
      for (int j = 0; j < s.length; j++) {
        Seen b = seen.get(j);
        s[i][j] += Linear.dot(a.weights, a.places.covarianceWithSum(b.places, b.weights));
      }
    }
    return s;
  }

  private static boolean isOneMixture(Seen a, Seen b) {
    return a.area.reading().sample().equals(b.area.reading().sample())
        && a.area.reading().field().equals(b.area.reading().field());
  }

  private static double[][] copy(double[][] a) {
    return Arrays.stream(a).map(double[]::clone).toArray(double[][]::new);
  }

  /** How far each reading is from what the sites say, in standard errors. */
  double[] sigmas() {
    double[] sigmas = new double[innovation.length];
    Arrays.setAll(sigmas, i -> innovation[i] / Math.sqrt(covariance[i][i]));
    return sigmas;
  }

  /** What the base was told, one a composite. */
  public List<Told> told() {
    return seen.stream().map(s -> new Told(s.area.places(), s.weights, s.area.loadings())).toList();
  }

  /** A weighted mean of z at places plus shared errors. */
  public record Told(Points places, double[] weights, double[] loadings) {}

  /** Covariance of what else stands in the readings: own errors, and what the cores missed. */
  public double[][] noise() {
    return noise(seen);
  }

  private static double[][] noise(List<Seen> seen) {
    int n = seen.size();
    double[][] noise = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        Seen a = seen.get(i);
        Seen b = seen.get(j);
        noise[i][j] = isOneMixture(a, b) ? Math.sqrt(a.sampling * b.sampling) : 0;
      }
      noise[i][i] += seen.get(i).area.reading().ownVariance();
    }
    return noise;
  }

  /** Models under which the readings are likelier weigh more. */
  static List<Predictor> reweighted(List<Informed> informed) {
    double top = informed.stream().mapToDouble(i -> i.logDensity).max().orElseThrow();
    double[] weight = new double[informed.size()];
    Arrays.setAll(
        weight, k -> informed.get(k).solved.weight() * Math.exp(informed.get(k).logDensity - top));
    double sum = Arrays.stream(weight).sum();
    List<Predictor> out = new ArrayList<>();
    for (int k = 0; k < weight.length; k++) {
      out.add(new Informed(informed.get(k), weight[k] / sum));
    }
    return out;
  }

  @Override
  public Solved solved() {
    return solved;
  }

  @Override
  public Predicted readings(Points points, double[] loadings) {
    return new After(base.readings(points, loadings));
  }

  private final class After implements Predicted {
    private final Predicted before;

    /** Covariance of each place with each composite: composites x places. */
    private final double[][] cross;

    After(Predicted before) {
      this.before = before;
      cross = new double[seen.size()][];
      Arrays.setAll(cross, c -> before.covarianceWithSum(seen.get(c).places, seen.get(c).weights));
    }

    @Override
    public double[] mean() {
      double[] mean = before.mean();
      for (int c = 0; c < cross.length; c++) {
        for (int i = 0; i < mean.length; i++) {
          mean[i] += cross[c][i] * pull[c];
        }
      }
      return mean;
    }

    @Override
    public double[] variance() {
      double[] variance = before.variance();
      for (int i = 0; i < variance.length; i++) {
        variance[i] = Math.max(solved.model().microScale(), variance[i] - known(this, i, i));
      }
      return variance;
    }

    /** What the composites tell of the covariance of place i here and j there. */
    private double known(After that, int i, int j) {
      double sum = 0;
      for (int c = 0; c < cross.length; c++) {
        for (int d = 0; d < cross.length; d++) {
          sum += cross[c][i] * inverse[c][d] * that.cross[d][j];
        }
      }
      return sum;
    }

    @Override
    public double[][] covariance(Predicted other) {
      After that = (After) other;
      double[][] covariance = before.covariance(that.before);
      for (int i = 0; i < covariance.length; i++) {
        for (int j = 0; j < covariance[i].length; j++) {
          covariance[i][j] -= known(that, i, j);
        }
      }
      return covariance;
    }
  }
}
