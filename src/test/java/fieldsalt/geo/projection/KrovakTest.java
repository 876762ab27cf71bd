package fieldsalt.geo.projection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.geo.datum.Ellipsoid;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Worked example of IOGP Publication 373-7-2 (Guidance Note 7 part 2). */
class KrovakTest {
  private static final double HALF_SECOND_DIGIT = 0.0005 / 3600;

  private static double degrees(double d, double m, double s) {
    return Math.signum(d) * (Math.abs(d) + m / 60 + s / 3600);
  }

  /** Method 9819; files have the numbers in either order and with either sign. */
  @ParameterizedTest
  @CsvSource({"1050538.631, 568990.995", "568990.995, 1050538.631", "-568990.995, -1050538.631"})
  void krovak(double x, double y) {
    Krovak krovak =
        new Krovak(
            new Ellipsoid(6377397.155, 299.15281),
            Math.toRadians(49.5),
            Math.toRadians(24 + 50 / 60.0),
            Math.toRadians(degrees(30, 17, 17.30311)),
            Math.toRadians(78.5),
            0.9999);
    double[] at = krovak.degrees(x, y);
    assertThat(at[0]).isCloseTo(degrees(16, 50, 59.179), within(HALF_SECOND_DIGIT));
    assertThat(at[1]).isCloseTo(degrees(50, 12, 32.442), within(HALF_SECOND_DIGIT));
  }
}
