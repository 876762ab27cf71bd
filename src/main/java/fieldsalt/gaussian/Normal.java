package fieldsalt.gaussian;

/** The standard normal distribution: density, both tails, quantile, and the unit normal loss. */
public final class Normal {
  private static final double LOG_SQRT_TWO_PI = 0.5 * Math.log(2 * Math.PI);

  /** Beyond this the tail is taken from its continued fraction. */
  private static final double FAR = 3;

  private Normal() {}

  /** Density at x. */
  public static double density(double x) {
    return Math.exp(-0.5 * x * x - LOG_SQRT_TWO_PI);
  }

  /** Chance to be below x, right to 2e-16; beyond 3 on either side the tail to 1e-13 of itself. */
  public static double below(double x) {
    if (Double.isNaN(x)) {
      return Double.NaN;
    }
    if (x < -FAR) {
      return farTail(-x);
    }
    return x > FAR ? 1 - farTail(x) : 0.5 + density(x) * series(x);
  }

  /** Chance to be above x. */
  public static double above(double x) {
    return below(-x);
  }

  /** Sum x + x³/3 + x⁵/15 + ... (Marsaglia 2004, J. Stat. Softw. 11(4)). */
  private static double series(double x) {
    double term = x;
    double sum = x;
    for (int k = 3; Math.abs(term) > 1e-17 * Math.abs(sum); k += 2) {
      term *= x * x / k;
      sum += term;
    }
    return sum;
  }

  /** Continued fraction of the upper tail (Abramowitz &amp; Stegun 1964, 26.2.14). */
  private static double farTail(double x) {
    if (x > 40) {
      return 0;
    }
    double fraction = x;
    for (int k = 120; k >= 1; k--) {
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
