package fieldsalt.quantity;

/**
 * The units in which people are told things. Everything inside fieldsalt is metric; US customary
 * units (international foot, short ton of 2,000 lb) are for the page and the command line.
 */
public enum UnitSystem {
  METRIC,
  US;

  /** Which amount a number is. */
  public enum Amount {
    /** Inside: ha. */
    AREA("ha", "acres", 1 / 0.40468564224),
    /** Inside: mm of water. */
    WATER_DEPTH("mm", "in", 1 / 25.4),
    /** Inside: m³. */
    WATER_VOLUME("m³", "acre-feet", 1 / 1233.48183754752),
    /** Inside: cm of soil. */
    SOIL_DEPTH("cm", "in", 1 / 2.54),
    /** Inside: m. */
    LENGTH("m", "ft", 1 / 0.3048),
    /** Inside: Mg (t). */
    MASS("t", "tons", 1 / 0.90718474),
    /** Inside: Mg/ha (t/ha). */
    RATE("t/ha", "tons/acre", 0.40468564224 / 0.90718474);

    private final String metric;
    private final String us;
    private final double toUs;

    Amount(String metric, String us, double toUs) {
      this.metric = metric;
      this.us = us;
      this.toUs = toUs;
    }
  }

  /** A number of the inside unit in this system's unit. */
  public double of(double inside, Amount amount) {
    return this == METRIC ? inside : inside * amount.toUs;
  }

  /** This system's unit for an amount. */
  public String unit(Amount amount) {
    return this == METRIC ? amount.metric : amount.us;
  }
}
