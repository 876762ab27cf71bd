package fieldsalt.gaussian;

/** The standard normal distribution: density, both tails, quantile, and the unit normal loss. */
public final class Normal {
  private static final double LOG_SQRT_TWO_PI = 0.5 * Math.log(2 * Math.PI);

  /** Beyond this the tail is taken from its continued fraction. */
  private static final double FAR = 7;

  private static final double[] ABOVE_LINE = {
    220.206867912376,
    221.213596169931,
    112.079291497871,
    33.912866078383,
    6.37396220353165,
    0.700383064443688,
    3.52624965998911e-02
  };
  private static final double[] BELOW_LINE = {
    440.413735824752,
    793.826512519948,
    637.333633378831,
    296.564248779674,
    86.7807322029461,
    16.064177579207,
    1.75566716318264,
    8.83883476483184e-02
  };

  private Normal() {}

  /** Density at x. */
  public static double density(double x) {
    return Math.exp(-0.5 * x * x - LOG_SQRT_TWO_PI);
  }

  /**
   * Chance to be below x, right to 5e-16: a ratio of polynomials (Hart 1968, Computer
   * Approximations, function 5666), and the continued fraction beyond 7 on either side.
   */
  public static double below(double x) {
    if (Double.isNaN(x)) {
      return Double.NaN;
    }
    double size = Math.abs(x);
    double tail = size > FAR ? farTail(size) : nearTail(size);
    return x > 0 ? 1 - tail : tail;
  }

  /** Chance to be above x. */
  public static double above(double x) {
    return below(-x);
  }

  private static double nearTail(double x) {
    return Math.exp(-0.5 * x * x) * polynomial(ABOVE_LINE, x) / polynomial(BELOW_LINE, x);
  }

  private static double polynomial(double[] c, double x) {
    double sum = 0;
    for (int i = c.length - 1; i >= 0; i--) {
      sum = sum * x + c[i];
    }
    return sum;
  }

  /** Continued fraction of the upper tail (Abramowitz &amp; Stegun 1964, 26.2.14). */
  private static double farTail(double x) {
    if (x > 40) {
      return 0;
    }
    double fraction = x;
    for (int k = 40; k >= 1; k--) {
      fraction = x + k / fraction;
    }
    return density(x) / fraction;
  }

  /**
   * The value below which a standard normal lies with this chance: Abramowitz &amp; Stegun 1964,
   * 26.2.23, then Halley steps on {@link #below}.
   *
   * @param chance 0 to 1; 0 and 1 give the infinities
   */
  public static double quantile(double chance) {
    if (!(chance >= 0 && chance <= 1)) {
      throw new IllegalArgumentException("a chance lies between 0 and 1, was " + chance);
    }
    if (chance == 0 || chance == 1) {
      return chance == 0 ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
    }
    if (chance > 0.5) {
      return -quantile(1 - chance);
    }
    double x = -firstGuess(chance);
    for (int step = 0; step < 4; step++) {
      double newton = (below(x) - chance) / density(x);
      x -= newton / (1 + 0.5 * x * newton);
    }
    return x;
  }

  private static double firstGuess(double tail) {
    double t = Math.sqrt(-2 * Math.log(tail));
    double top = 2.515517 + t * (0.802853 + t * 0.010328);
    double bottom = 1 + t * (1.432788 + t * (0.189269 + t * 0.001308));
    return t - top / bottom;
  }

  /**
   * Unit normal loss: mean of what a standard normal exceeds u by (Raiffa &amp; Schlaifer 1961).
   */
  public static double loss(double u) {
    return density(u) - u * above(u);
  }
}
