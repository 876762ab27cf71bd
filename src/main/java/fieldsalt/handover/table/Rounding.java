package fieldsalt.handover.table;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as files carry them. */
public final class Rounding {
  private Rounding() {}

  /** The nearest number with so many decimals; what is not finite passes unchanged. */
  public static double decimals(double value, int decimals) {
    return Double.isFinite(value)
        ? BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN).doubleValue()
        : value;
  }

  /** Four significant digits; null for what is not finite. */
  public static Double fourDigits(double value) {
    return Double.isFinite(value)
        ? Double.valueOf(new BigDecimal(value).round(new MathContext(4)).doubleValue())
        : null;
  }

  /** Plain digits with at most so many decimals, no exponent, no trailing zeros, never "-0". */
  public static String plain(double value, int decimals) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
