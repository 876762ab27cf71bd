package fieldsalt.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Worked examples of IOGP Publication 373-7-2 (Guidance Note 7 part 2). */
class PublishedFormulaeTest {
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

  /** Method 9813: Tananarive 1925 / Laborde. */
  @Test
  void laborde() {
    Laborde laborde =
        new Laborde(
            new Ellipsoid(6378388, 297),
            Math.toRadians(-18.9),
            Math.toRadians(degrees(46, 26, 14.025)),
            Math.toRadians(18.9),
            0.9995,
            400000,
            800000);
    double[] at = laborde.degrees(188333.848, 1098841.091);
    assertThat(at[0]).isCloseTo(degrees(44, 27, 27.260), within(HALF_SECOND_DIGIT));
    assertThat(at[1]).isCloseTo(degrees(-16, 11, 23.280), within(HALF_SECOND_DIGIT));
  }

  /** Method 1052: MAGNA-SIRGAS / Bogota urban grid. */
  @Test
  void colombiaUrban() {
    ColombiaUrban bogota =
        new ColombiaUrban(
            new Ellipsoid(6378137, 298.257222101),
            Math.toRadians(degrees(4, 40, 49.75)),
            Math.toRadians(degrees(-74, 8, 47.73)),
            2550,
            92334.879,
            109320.965);
    double[] at = bogota.degrees(80859.033, 122543.174);
    assertThat(at[0]).isCloseTo(-74.25, within(HALF_SECOND_DIGIT));
    assertThat(at[1]).isCloseTo(4.8, within(HALF_SECOND_DIGIT));
  }
}
