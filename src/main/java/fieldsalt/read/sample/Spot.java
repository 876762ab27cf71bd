package fieldsalt.read.sample;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Where a sample was taken, as its row gives it.
 *
 * @param degrees whether a and b are longitude and latitude; else x and y in the job's system
 */
public record Spot(boolean degrees, double a, double b) {
  private static final int DEGREES_TO_A_CENTIMETRE = 7;
  private static final int METRES_TO_A_CENTIMETRE = 2;

  public static Spot lonLat(double longitude, double latitude) {
    return new Spot(true, longitude, latitude);
  }

  /** Both numbers to a centimetre: the name of a site that has none. */
  @Override
  public String toString() {
    return text(a) + " " + text(b);
  }

  private String text(double value) {
    int digits = degrees ? DEGREES_TO_A_CENTIMETRE : METRES_TO_A_CENTIMETRE;
    return new BigDecimal(value)
        .setScale(digits, RoundingMode.HALF_EVEN)
        .stripTrailingZeros()
        .toPlainString();
  }
}
