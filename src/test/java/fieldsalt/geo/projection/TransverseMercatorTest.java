package fieldsalt.geo.projection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.geo.datum.Ellipsoid;
import fieldsalt.handover.Gdal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.referencing.wkt.Parser;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** UTM by Krueger's series against other computations of it, and against itself. */
class TransverseMercatorTest {
  @TempDir Path dir;

  /** Places all over the zone and some degrees beyond its edges, as wide ranches have them. */
  private static List<double[]> places(Utm utm, double widthDegrees) {
    List<double[]> places = new ArrayList<>();
    for (double east = -widthDegrees; east <= widthDegrees; east += 0.25) {
      for (double latitude = -84; latitude <= 84; latitude += 0.75) {
        double longitude = utm.zone() * 6 - 183 + east;
        places.add(new double[] {Math.IEEEremainder(longitude, 360), latitude});
      }
    }
    return places;
  }

  private static double apartM(double[] a, double[] b) {
    return Math.hypot(a[0] - b[0], a[1] - b[1]);
  }

  /**
   * Ordnance Survey, A guide to coordinate systems in Great Britain, annexe C: 52 39 27.2531 N, 1
   * 43 4.5177 E on Airy's ellipsoid is 651409.903 E, 313177.270 N (quoted from memory; PROJ 9.1.1
   * has the same).
   */
  @Test
  void aPublishedExample() {
    TransverseMercator british =
        new TransverseMercator(new Ellipsoid(6377563.396, 299.3249646), 0.9996012717);
    double latitude = 52 + 39 / 60.0 + 27.2531 / 3600;
    double longitude = 1 + 43 / 60.0 + 4.5177 / 3600;
    double originM = british.metres(0, 49)[1];
    double[] at = british.metres(longitude + 2, latitude);
    assertThat(at[0] + 400_000).isCloseTo(651409.903, within(0.001));
    assertThat(at[1] - originM - 100_000).isCloseTo(313177.270, within(0.001));
  }

  /** The coordinate library's series is shorter: it is 1.6e-5 m off at the edge of a zone. */
  @Test
  void everyZoneAgreesWithTheCoordinateLibrary() throws Exception {
    double worstM = 0;
    for (int i = 0; i < 120; i++) {
      Utm utm = new Utm(i % 60 + 1, i >= 60);
      ProjectedCRS crs = (ProjectedCRS) new Parser().parseObject(utm.wkt());
      MathTransform library = crs.getConversionFromBase().getMathTransform();
      for (double[] place : places(utm, 3)) {
        double[] expected = new double[2];
        library.transform(place, 0, expected, 0, 1);
        worstM = Math.max(worstM, apartM(utm.metres(place[0], place[1]), expected));
      }
    }
    assertThat(worstM).isLessThan(2e-5);
  }

  @Test
  void thereAndBack() {
    double worstM = 0;
    for (int zone : new int[] {1, 12, 30, 31, 55, 60}) {
      for (boolean south : new boolean[] {false, true}) {
        Utm utm = new Utm(zone, south);
        for (double[] place : places(utm, 15)) {
          double[] metres = utm.metres(place[0], place[1]);
          double[] back = utm.degrees(metres[0], metres[1]);
          double[] again = utm.metres(back[0], back[1]);
          worstM = Math.max(worstM, apartM(metres, again));
          assertThat(back[0]).isCloseTo(place[0], within(1e-12));
          assertThat(back[1]).isCloseTo(place[1], within(1e-12));
        }
      }
    }
    assertThat(worstM).isLessThan(1e-8);
  }

  /** gdaltransform prints 15 digits: 1e-8 m of a northing. */
  @Test
  void gdalPutsEveryPlaceThere() throws Exception {
    Gdal.require("gdaltransform");
    for (int epsg : new int[] {32601, 32612, 32631, 32660, 32701, 32719, 32755}) {
      Utm utm = Utm.ofCode(epsg);
      List<double[]> places = places(utm, 15);
      List<String> lines = new ArrayList<>();
      places.forEach(p -> lines.add(String.format(Locale.ROOT, "%.17g %.17g", p[0], p[1])));
      Files.write(dir.resolve("places.txt"), lines);
      String said =
          Gdal.run(
              dir,
              "sh",
              "-c",
              "gdaltransform -s_srs EPSG:4326 -t_srs EPSG:" + epsg + " -output_xy < places.txt");
      List<String> theirs = said.lines().toList();
      assertThat(theirs).hasSameSizeAs(places);
      for (int i = 0; i < places.size(); i++) {
        String[] words = theirs.get(i).split(" ");
        double[] expected = {Double.parseDouble(words[0]), Double.parseDouble(words[1])};
        double[] place = places.get(i);
        assertThat(apartM(utm.metres(place[0], place[1]), expected))
            .as(epsg + ": " + place[0] + " " + place[1])
            .isLessThan(1e-7);
      }
    }
  }

  @Test
  void whatIsTooFarIsRefused() {
    Utm utm = Utm.ofCode(32612);
    assertThatThrownBy(() -> utm.metres(-60, 0)).isInstanceOf(OutOfReach.class);
    assertThatThrownBy(() -> utm.metres(69, 33)).isInstanceOf(OutOfReach.class);
    assertThatThrownBy(() -> utm.degrees(5_000_000, 0)).isInstanceOf(OutOfReach.class);
    assertThatThrownBy(() -> utm.degrees(500_000, 12_000_000)).isInstanceOf(OutOfReach.class);
    assertThatThrownBy(() -> utm.degrees(Double.NaN, 0)).isInstanceOf(OutOfReach.class);
    assertThat(utm.degrees(500_000, 9_000_000)[1]).isCloseTo(81, within(0.1));
  }
}
