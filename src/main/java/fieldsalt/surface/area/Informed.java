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
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * A predictor that knows readings of composites too: z is conditioned on them, given all rows at
 * sites, which is what solving them together gives.
 *
 * <p>A mixture is the arithmetic mean Y over the field. On the log scale ln Y is taken as normal
 * around the base's prediction: with E_i = exp(m_i + v_i/2) at N places, Y is expected to be the
 * mean of E_i, and d ln Y = sum of w_i dz_i, w_i = E_i / sum of E (the delta method; lognormal
 * moments as in {@link AreaMoments}). Its m cores miss the variance of values within the field over
 * m, which the readings of one mixture share.
 *
 * <p>Fields are independent given the effects s that they share (unit variance, loadings B of the
 * composites). With A the covariance of a field's composites given s, s has after them the
 * information I + sum of B'A⁻¹B; a place whose covariance with them given s is r keeps the loadings
 * a - B'A⁻¹r. A composite costs its own field only.
 */
public final class Informed implements Predictor {
  private final Predictor base;
  private final Solved solved;
  private final List<Seen> seen;
  private final Map<Integer, InField> fields;
  private final Cholesky information;
  private final double[] sharedMean;
  private final double logDensity;

  /** A composite as the base expects it: its value less the expected, and what stands in it. */
  private record Seen(
      AreaReading area,
      Predicted places,
      double[] weights,
      double[] loadings,
      double innovation,
      double sampling) {
    int part() {
      return area.places().part();
    }
  }

  /** The composites of one field; {@code factor} of A, {@code loadings} one row an effect. */
  private record InField(
      List<Seen> seen, Cholesky factor, double[][] loadings, double[] innovation) {
    static InField of(List<Seen> seen) {
      int n = seen.size();
      double[][] a = new double[n][n];
      for (int i = 0; i < n; i++) {
        Seen one = seen.get(i);
        for (int j = 0; j < n; j++) {
          Seen other = seen.get(j);
          double[] cross = one.places.covarianceWithSum(other.places, other.weights);
          double whole = Linear.dot(one.weights, cross);
          double own = i == j ? one.area.reading().ownVariance() : 0;
          a[i][j] = whole - Linear.dot(one.loadings, other.loadings) + missed(one, other) + own;
        }
      }
      double[][] loadings = new double[seen.get(0).loadings.length][n];
      for (int k = 0; k < loadings.length; k++) {
        for (int i = 0; i < n; i++) {
          loadings[k][i] = seen.get(i).loadings[k];
        }
      }
      double[] innovation = seen.stream().mapToDouble(Seen::innovation).toArray();
      return new InField(seen, Cholesky.factor(a), loadings, innovation);
    }

    /** Adds B'A⁻¹B and B'A⁻¹ times the innovations. */
    void addTo(double[][] information, double[] right) {
      double[] white = factor.forward(innovation);
      for (int k = 0; k < right.length; k++) {
        double[] here = factor.forward(loadings[k]);
        right[k] += Linear.dot(here, white);
        for (int l = 0; l < right.length; l++) {
          information[k][l] += Linear.dot(here, factor.forward(loadings[l]));
        }
      }
    }

    double quadratic() {
      double[] white = factor.forward(innovation);
      return Linear.dot(white, white);
    }

    /** A⁻¹ of what the shared effects do not explain. */
    double[] pull(double[] shared) {
      double[] left = innovation.clone();
      for (int k = 0; k < shared.length; k++) {
        for (int i = 0; i < left.length; i++) {
          left[i] -= loadings[k][i] * shared[k];
        }
      }
      return factor.solve(left);
    }
  }

  /**
   * @param readings at least one
   */
  Informed(Predictor base, List<AreaReading> readings, Scale scale) {
    this.base = base;
    this.solved = base.solved();
    this.seen = readings.stream().map(r -> seen(base, r, scale)).toList();
    fields =
        seen.stream()
            .collect(
                Collectors.groupingBy(
                    Seen::part,
                    TreeMap::new,
                    Collectors.collectingAndThen(Collectors.toList(), InField::of)));
    int shared = seen.get(0).loadings.length;
    double[][] precision = new double[shared][shared];
    double[] right = new double[shared];
    for (int k = 0; k < shared; k++) {
      precision[k][k] = 1;
    }
    fields.values().forEach(f -> f.addTo(precision, right));
    information = Cholesky.factor(precision);
    sharedMean = information.solve(right);
    double density = Linear.dot(right, sharedMean) - information.logDeterminant();
    for (InField f : fields.values()) {
      density -= f.factor.logDeterminant() + f.quadratic();
    }
    logDensity = 0.5 * density;
  }

  private Informed(Informed other, double weight) {
    base = other.base;
    solved = other.solved.withWeight(weight);
    seen = other.seen;
    fields = other.fields;
    information = other.information;
    sharedMean = other.sharedMean;
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
    double[] loadings =
        Arrays.stream(places.shared()).mapToDouble(row -> Linear.dot(row, weights)).toArray();
    return new Seen(
        area,
        places,
        weights,
        loadings,
        area.reading().value() - expected - shared,
        Math.max(0, within) / area.reading().cores());
  }

  private static boolean isOneMixture(Seen a, Seen b) {
    return a.area.reading().sample().equals(b.area.reading().sample())
        && a.area.reading().field().equals(b.area.reading().field());
  }

  /** How far a lone reading is from what the sites say, in standard errors. */
  double sigmas() {
    InField only = fields.values().iterator().next();
    double[] shared = only.seen.get(0).loadings;
    double root = only.factor.times(new double[] {1})[0];
    return only.innovation[0] / Math.sqrt(root * root + Linear.dot(shared, shared));
  }

  /** What the base was given, one a composite. */
  public List<Given> given() {
    return seen.stream()
        .map(s -> new Given(s.area.places(), s.weights, s.area.loadings()))
        .toList();
  }

  /** A weighted mean of z at places plus shared errors. */
  public record Given(Points places, double[] weights, double[] loadings) {}

  /** Covariance of what else stands in two readings: own errors, and what the cores missed. */
  public double noise(int one, int other) {
    double own = one == other ? seen.get(one).area.reading().ownVariance() : 0;
    return missed(seen.get(one), seen.get(other)) + own;
  }

  private static double missed(Seen a, Seen b) {
    return isOneMixture(a, b) ? Math.sqrt(a.sampling * b.sampling) : 0;
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
    return new After(points.part(), base.readings(points, loadings));
  }

  private final class After implements Predicted {
    private final int part;
    private final Predicted before;

    /** L⁻¹r, with A = LL': composites of the field x places. */
    private final double[][] cross;

    private final double[] mean;
    private final double[][] shared;

    After(int part, Predicted before) {
      this.part = part;
      this.before = before;
      mean = before.mean();
      double[][] loadings = before.shared();
      for (int k = 0; k < loadings.length; k++) {
        addTo(mean, sharedMean[k], loadings[k]);
      }
      shared = Arrays.stream(loadings).map(double[]::clone).toArray(double[][]::new);
      InField field = fields.get(part);
      cross = field == null ? new double[0][] : crossOf(field, loadings);
      if (field != null) {
        double[] pull = field.pull(sharedMean);
        for (int c = 0; c < cross.length; c++) {
          addTo(mean, pull[c], cross[c]);
        }
        field.factor.forwardRows(cross);
        for (int k = 0; k < shared.length; k++) {
          double[] white = field.factor.forward(field.loadings[k]);
          for (int c = 0; c < cross.length; c++) {
            addTo(shared[k], -white[c], cross[c]);
          }
        }
      }
      information.forwardRows(shared);
    }

    /** Covariance of each place with each composite given the shared effects. */
    private double[][] crossOf(InField field, double[][] loadings) {
      double[][] r = new double[field.seen.size()][];
      for (int c = 0; c < r.length; c++) {
        Seen composite = field.seen.get(c);
        r[c] = before.covarianceWithSum(composite.places, composite.weights);
        for (int k = 0; k < loadings.length; k++) {
          addTo(r[c], -composite.loadings[k], loadings[k]);
        }
      }
      return r;
    }

    private static void addTo(double[] sum, double by, double[] row) {
      for (int i = 0; i < sum.length; i++) {
        sum[i] += by * row[i];
      }
    }

    @Override
    public double[] mean() {
      return mean.clone();
    }

    @Override
    public double[] variance() {
      double[] variance = before.variance();
      double[][] loadings = before.shared();
      for (int i = 0; i < variance.length; i++) {
        double change = change(this, loadings, loadings, i, i);
        variance[i] = Math.max(solved.model().microScale(), variance[i] + change);
      }
      return variance;
    }

    /** What the composites change in the covariance of place i here and j there, in one field. */
    private double change(After that, double[][] here, double[][] there, int i, int j) {
      double sum = 0;
      for (int c = 0; c < cross.length; c++) {
        sum -= cross[c][i] * that.cross[c][j];
      }
      for (int k = 0; k < shared.length; k++) {
        sum += shared[k][i] * that.shared[k][j] - here[k][i] * there[k][j];
      }
      return sum;
    }

    @Override
    public double[][] shared() {
      return shared;
    }

    @Override
    public double[][] covariance(Predicted other) {
      After that = (After) other;
      if (part != that.part) {
        return sharedCovariance(that);
      }
      double[][] covariance = before.covariance(that.before);
      double[][] here = before.shared();
      double[][] there = that.before.shared();
      for (int i = 0; i < covariance.length; i++) {
        for (int j = 0; j < covariance[i].length; j++) {
          covariance[i][j] += change(that, here, there, i, j);
        }
      }
      return covariance;
    }
  }
}
