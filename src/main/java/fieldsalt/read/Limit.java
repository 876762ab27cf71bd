package fieldsalt.read;

import fieldsalt.quantity.Method;
import java.util.OptionalDouble;

/**
 * What a value of a raw cell can be: outside the inner limits it is unusual and kept with a
 * finding; outside the outer ones it is left out. Common practice, no source.
 */
enum Limit {
  EC_PASTE("dS/m", 0.05, 60, Double.MIN_NORMAL, 250),
  EC_1_1("dS/m", 0, 40, Double.MIN_NORMAL, 50),
  EC_1_2("dS/m", 0, 25, Double.MIN_NORMAL, 50),
  EC_1_5("dS/m", 0, 15, Double.MIN_NORMAL, 50),
  SP("%", 18, 120, 10, 300),
  CLAY("%", 0, 80, 0, 100),
  PH("", 5, 10.5, 2, 12),
  SAR("", 0, 80, 0, 500),
  ESP("%", 0, 70, 0, 100),
  CEC("cmol/kg", 2, 60, Double.MIN_NORMAL, 200),
  CEC_SHARE("cmol/kg", 0, 60, 0, 200),
  BULK_DENSITY("Mg/m3", 0.9, 1.9, 0.2, 2.3),
  NA("meq/L", 0, 800, 0, 1e4),
  CA("meq/L", 0, 100, 0, 1e4),
  MG("meq/L", 0, 200, 0, 1e4),
  OTHER_ION("meq/L", 0, 800, 0, 1e4),
  GYPSUM("%", 0, 20, 0, 100),
  LIME("%", 0, 60, 0, 100),
  OM("%", 0, 20, 0, 100),
  BORON("mg/L", 0, 20, 0, 500),
  RESTED("h", 0, 72, 0, 1000);

  private final String unit;
  private final double low;
  private final double high;
  private final double least;
  private final double most;

  Limit(String unit, double low, double high, double least, double most) {
    this.unit = unit;
    this.low = low;
    this.high = high;
    this.least = least;
    this.most = most;
  }

  static Limit ofEc(Method method) {
    return switch (method) {
      case PASTE -> EC_PASTE;
      case ONE_TO_ONE -> EC_1_1;
      case ONE_TO_TWO, ONE_TO_TWO_AND_HALF -> EC_1_2;
      case ONE_TO_FIVE -> EC_1_5;
    };
  }

  boolean isUsual(double value) {
    return value >= low && value <= high;
  }

  boolean isPossible(double value) {
    return value >= least && value <= most;
  }

  /** The usual range in words. */
  String usual() {
    return plain(low) + " to " + plain(high) + (unit.isEmpty() ? "" : " " + unit);
  }

  /** The possible range in words. */
  String possible() {
    String from = least == Double.MIN_NORMAL ? "above 0" : plain(least);
    return from + " to " + plain(most) + (unit.isEmpty() ? "" : " " + unit);
  }

  String unit() {
    return unit;
  }

  /** The factor of ten, hundred or thousand that would make a value usual; empty if none does. */
  OptionalDouble slip(double value) {
    for (double factor : new double[] {0.001, 0.01, 0.1, 10, 100, 1000}) {
      double mended = value * factor;
      if (isUsual(mended) && mended > low * 1.01 && mended < high * 0.99) {
        return OptionalDouble.of(factor);
      }
    }
    return OptionalDouble.empty();
  }

  private static String plain(double value) {
    return value == Math.rint(value) ? String.valueOf((long) value) : String.valueOf(value);
  }
}
