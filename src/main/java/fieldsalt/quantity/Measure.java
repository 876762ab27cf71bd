package fieldsalt.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * A number for people: a value, or a middle with the range it lies in, of one dimension; metric.
 *
 * @param low lower end; equal to {@code value} where there is no range
 * @param high upper end; equal to {@code value} where there is no range
 */
public record Measure(double value, double low, double high, Dimension dimension) {
  public Measure {
    if (!(Double.isFinite(value) && Double.isFinite(low) && Double.isFinite(high))) {
      throw new IllegalArgumentException(
          "a number for people is finite, was " + low + ", " + value + ", " + high);
    }
  }

  public static Measure of(double value, Dimension dimension) {
    return new Measure(value, value, value, dimension);
  }

  /** Middle (low-high) and unit, e.g. {@code 4.2 (2.9-6.1) t/ha}, in the system's unit. */
  public String text(UnitSystem system) {
    String middle = number(dimension.in(system, value));
    if (low < high) {
      middle +=
          " (" + number(dimension.in(system, low)) + "-" + number(dimension.in(system, high)) + ")";
    }
    String unit = dimension.unit(system);
    return unit.isEmpty() ? middle : middle + " " + unit;
  }

  private String number(double x) {
    if (x == 0) {
      return "0";
    }
    BigDecimal rounded =
        new BigDecimal(x).round(new MathContext(dimension.digits(), RoundingMode.HALF_UP));
    return tidy(rounded);
  }

  private static String tidy(BigDecimal rounded) {
    BigDecimal smallest = new BigDecimal("0.01");
    BigDecimal shown =
        rounded.abs().compareTo(smallest) < 0 ? rounded.setScale(2, RoundingMode.HALF_UP) : rounded;
    BigDecimal stripped = shown.stripTrailingZeros();
    return stripped.signum() == 0 ? "0" : stripped.toPlainString();
  }
}
