package fieldsalt.gaussian;

/**
 * What is known of a vector x = m + F b + r: r is Gaussian with a covariance, b are fixed effects
 * about which nothing was known before the data (an exactly flat prior, not a large variance).
 * Immutable.
 *
 * <p>Given b, x has mean m + G b and covariance P; the data's word on b is kept as information (A,
 * a). After the data b = A⁻¹a, x has mean m + G A⁻¹a and covariance P + G A⁻¹G': generalised least
 * squares (de Jong 1991, The diffuse Kalman filter, Annals of Statistics 19:1073-1083).
 */
public final class GaussianState {
  private final double[] m;
  private final double[][] p;
  private final double[][] g;
  private final double[][] information;
  private final double[] a;

  private GaussianState(
      double[] m, double[][] p, double[][] g, double[][] information, double[] a) {
    this.m = m;
    this.p = p;
    this.g = g;
    this.information = information;
    this.a = a;
  }

  /**
   * A state without fixed effects.
   *
   * @param mean of x
   * @param covariance of x, symmetric, square
   */
  public static GaussianState of(double[] mean, double[][] covariance) {
    return of(mean, covariance, new double[mean.length][0]);
  }

  /**
   * A state with fixed effects.
   *
   * @param mean of x where all fixed effects are 0
   * @param covariance of x given the fixed effects, symmetric, square
   * @param design F: one row an element of x, one column a fixed effect
   */
  public static GaussianState of(double[] mean, double[][] covariance, double[][] design) {
    int n = mean.length;
    if (covariance.length != n || design.length != n) {
      throw new IllegalArgumentException(
          "sizes differ: mean "
              + n
              + ", covariance "
              + covariance.length
              + ", design "
              + design.length);
    }
    int fixed = n == 0 ? 0 : design[0].length;
    return new GaussianState(
        mean.clone(), copy(covariance), copy(design), new double[fixed][fixed], new double[fixed]);
  }

  private static double[][] copy(double[][] rows) {
    double[][] copy = new double[rows.length][];
    for (int i = 0; i < rows.length; i++) {
      copy[i] = rows[i].clone();
    }
    return copy;
  }

  /** Number of elements of x. */
  public int size() {
    return m.length;
  }

  /**
   * The state after {@code value} = combination'x + noise was observed, in one rank-one update.
   *
   * @param combination one weight an element of x
   * @param noiseVariance at least 0; greater than 0 where x itself has no variance in it
   */
  public GaussianState observe(double[] combination, double noiseVariance, double value) {
    double[] ph = timesTransposed(p, combination);
    double[] gh = timesTransposed(g, combination);
    double s = dot(combination, ph) + noiseVariance;
    if (!(s > 0)) {
      throw new IllegalArgumentException(
          "an observation needs variance of its own or of what it observes, had " + s);
    }
    double innovation = value - dot(combination, m);
    GaussianState next =
        new GaussianState(m.clone(), copy(p), copy(g), copy(information), a.clone());
    next.condition(ph, gh, s, innovation);
    return next;
  }

  private void condition(double[] ph, double[] gh, double s, double innovation) {
    for (int i = 0; i < m.length; i++) {
      double k = ph[i] / s;
      m[i] += k * innovation;
      RowKernel.subtract(p[i], k, ph, 0, m.length);
      RowKernel.subtract(g[i], k, gh, 0, gh.length);
    }
    for (int i = 0; i < gh.length; i++) {
      a[i] += gh[i] * innovation / s;
      RowKernel.subtract(information[i], -gh[i] / s, gh, 0, gh.length);
    }
  }

  /**
   * The state after several combinations were observed together, in one full solve.
   *
   * @param combinations one row an observation
   * @param noise covariance of their noise
   * @param values one an observation
   */
  public GaussianState observeAll(double[][] combinations, double[][] noise, double[] values) {
    int count = values.length;
    double[][] ph = new double[count][];
    double[][] gh = new double[count][];
    double[] innovation = new double[count];
    for (int i = 0; i < count; i++) {
      ph[i] = timesTransposed(p, combinations[i]);
      gh[i] = timesTransposed(g, combinations[i]);
      innovation[i] = values[i] - dot(combinations[i], m);
    }
    double[][] s = new double[count][count];
    for (int i = 0; i < count; i++) {
      for (int j = 0; j < count; j++) {
        s[i][j] = dot(combinations[i], ph[j]) + noise[i][j];
      }
    }
    Cholesky factor = Cholesky.factor(s);
    factor.forwardRows(ph);
    factor.forwardRows(gh);
    double[] white = factor.forward(innovation);
    GaussianState next =
        new GaussianState(m.clone(), copy(p), copy(g), copy(information), a.clone());
    for (int i = 0; i < count; i++) {
      next.condition(ph[i], gh[i], 1, white[i]);
    }
    return next;
  }

  /**
   * Mean of contrast'x.
   *
   * @throws IllegalStateException if it hangs on a fixed effect that the data do not determine
   */
  public double mean(double[] contrast) {
    double[] gc = timesTransposed(g, contrast);
    return dot(contrast, m) + dot(solve(gc), a);
  }

  /**
   * Joint covariance of contrasts of x.
   *
   * @param contrasts one row a contrast
   * @throws IllegalStateException if one hangs on a fixed effect that the data do not determine
   */
  public double[][] covariance(double[][] contrasts) {
    int count = contrasts.length;
    double[][] covariance = new double[count][count];
    for (int i = 0; i < count; i++) {
      double[] pc = timesTransposed(p, contrasts[i]);
      double[] ag = solve(timesTransposed(g, contrasts[i]));
      for (int j = 0; j <= i; j++) {
        covariance[i][j] = dot(pc, contrasts[j]) + dot(ag, timesTransposed(g, contrasts[j]));
        covariance[j][i] = covariance[i][j];
      }
    }
    return covariance;
  }

  /** Variance of contrast'x. */
  public double variance(double[] contrast) {
    return covariance(new double[][] {contrast})[0][0];
  }

  /** Whether the data determine contrast'x. */
  public boolean determines(double[] contrast) {
    double[] gc = timesTransposed(g, contrast);
    return new PivotedSolve(information).inRange(gc);
  }

  /**
   * How much an observation not yet made would lower the weighted sum of the contrasts' variances;
   * its value need not be known.
   *
   * @param combination what would be observed
   * @param noiseVariance of that observation
   * @param contrasts what one wants to know, one row each
   * @param weights one a contrast
   */
  public double gain(
      double[] combination, double noiseVariance, double[][] contrasts, double[] weights) {
    double[] ph = timesTransposed(p, combination);
    double[] ag = solve(timesTransposed(g, combination));
    double s = dot(combination, ph) + dot(ag, timesTransposed(g, combination)) + noiseVariance;
    double sum = 0;
    for (int i = 0; i < contrasts.length; i++) {
      double c = dot(contrasts[i], ph) + dot(ag, timesTransposed(g, contrasts[i]));
      sum += weights[i] * c * c / s;
    }
    return s > 0 ? sum : 0;
  }

  private double[] solve(double[] gc) {
    if (gc.length == 0) {
      return gc;
    }
    PivotedSolve solver = new PivotedSolve(information);
    if (!solver.inRange(gc)) {
      throw new IllegalStateException("the data do not determine this combination yet");
    }
    return solver.solve(gc);
  }

  /** Rows combined; P is symmetric, so that this is also P x, at a cost by the elements of x. */
  private static double[] timesTransposed(double[][] rows, double[] x) {
    double[] out = new double[rows.length == 0 ? 0 : rows[0].length];
    for (int i = 0; i < rows.length; i++) {
      if (x[i] != 0) {
        RowKernel.subtract(out, -x[i], rows[i], 0, out.length);
      }
    }
    return out;
  }

  private static double dot(double[] x, double[] y) {
    return RowKernel.dot(x, y, 0, x.length);
  }
}
