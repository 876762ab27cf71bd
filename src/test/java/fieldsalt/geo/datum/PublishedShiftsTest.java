package fieldsalt.geo.datum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Worked examples of IOGP Publication 373-7-2 (Guidance Note 7 part 2). */
class PublishedShiftsTest {
  private static final double HALF_SECOND_DIGIT = 0.0005 / 3600;

  private static double degrees(double d, double m, double s) {
    return Math.signum(d) * (Math.abs(d) + m / 60 + s / 3600);
  }

  /** Methods 9606 and 9607: WGS 72 to WGS 84; what goes in and out is printed to 0.01 m. */
  @ParameterizedTest
  @CsvSource({"position vector, 0.554", "coordinate frame, -0.554"})
  void aSimilarityTurnsTheWayItsMethodSays(String method, double rotation) {
    DatumShift shift =
        DatumShift.of(
            ("4322;4326;0;;" + method + ";;0 0 4.5 0 0 " + rotation + " 0.219;-180 -90 180 90;")
                .split(";", -1));
    double[] moved = shift.helmert().move(new double[] {3657660.66, 255768.55, 5201382.11});
    assertThat(moved[0]).isCloseTo(3657660.78, within(0.01));
    assertThat(moved[1]).isCloseTo(255778.43, within(0.01));
    assertThat(moved[2]).isCloseTo(5201387.75, within(0.01));
  }

  /** Section on geographic and geocentric coordinates: WGS 84, height left out there and back. */
  @Test
  void metresFromTheCentreAndBack() {
    double[] back = Ellipsoid.WGS84.degrees(new double[] {3771793.968, 140253.342, 5124304.349});
    assertThat(back[0]).isCloseTo(degrees(2, 7, 46.380), within(HALF_SECOND_DIGIT));
    assertThat(back[1]).isCloseTo(degrees(53, 48, 33.820), within(HALF_SECOND_DIGIT));
    double[] on = Ellipsoid.WGS84.degrees(Ellipsoid.WGS84.fromCentre(back[0], back[1]));
    assertThat(on[0]).isCloseTo(back[0], within(1e-12));
    assertThat(on[1]).isCloseTo(back[1], within(1e-12));
  }
}
