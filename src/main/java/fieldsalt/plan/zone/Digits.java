package fieldsalt.plan.zone;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.OptionalDouble;

/** Numbers of files, rounded to the decimals they deserve. */
public final class Digits {
  private Digits() {}

  public static double of(double value, int decimals) {
    return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP).doubleValue();
  }

  public static Double orNull(OptionalDouble value, int decimals) {
    return value.isPresent() ? Double.valueOf(of(value.getAsDouble(), decimals)) : null;
  }
}
