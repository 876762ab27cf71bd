package fieldsalt.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.finding.InputProblem;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;

/** Expected coordinates: PROJ 9.1.1, {@code cs2cs -f %.6f EPSG:4326 EPSG:n}, and GDAL 3.6.2. */
class ProjectionsTest {
  @ParameterizedTest
  @CsvSource({
    "-111.0, 33.0, 32612, 500000.000000, 3651286.943960",
    "-111.2, 32.9, 32612, 481295.769957, 3640218.755302",
    "-108.01, 33.3, 32612, 778414.818419, 3688536.389991",
    "144.3456789, -36.123456, 32755, 261119.491893, 5999094.963195",
    "3.9999, 52.5, 32631, 567875.392321, 5817121.902961",
    "-71.5, -33.2, 32719, 266958.907831, 6323755.706621",
    "179.5, -17.8, 32760, 765022.142003, 8030173.158115"
  })
  void utmAgreesWithProj(double lon, double lat, int epsg, double east, double north) {
    RanchProjection utm = Projections.utmFor(lon, lat);
    assertThat(utm.epsg()).hasValue(epsg);
    PlaceM place = utm.toMetres(lon, lat);
    assertThat(place.xM()).isCloseTo(east, within(5e-4));
    assertThat(place.yM()).isCloseTo(north, within(5e-4));
    double[] back = utm.toLonLat(place.xM(), place.yM());
    assertThat(back[0]).isCloseTo(lon, within(1e-10));
    assertThat(back[1]).isCloseTo(lat, within(1e-10));
  }

  /** A field on the edge of a zone is mapped in its neighbour's zone if its centroid lies there. */
  @Test
  void utmHoldsBeyondTheEdgeOfItsZone() {
    PlaceM place = Projections.utmFor(-111, 32.7).toMetres(-114.5, 32.7);
    assertThat(place.xM()).isCloseTo(171856.998510, within(1e-3));
    assertThat(place.yM()).isCloseTo(3623448.416128, within(1e-3));
  }

  @ParameterizedTest
  @CsvSource({
    "28355, 144.3456789, -36.123456, 261119.491892, 5999094.963302",
    "3857, -111.2, 32.9, -12378727.376212, 3882038.145720",
    "5070, -111.2, 32.9, -1407375.866652, 1204925.924889",
    "25831, 3.9999, 52.5, 567875.392322, 5817121.902837"
  })
  void otherSystemsAgreeWithGdal(String code, double lon, double lat, double x, double y) {
    double[] place = Projections.source(code).ofLonLat(lon, lat);
    assertThat(place[0]).isCloseTo(x, within(5e-4));
    assertThat(place[1]).isCloseTo(y, within(5e-4));
  }

  @ParameterizedTest
  @ValueSource(strings = {"EPSG:32612", "32612", "urn:ogc:def:crs:EPSG::32612", "epsg:32612"})
  void aCodeIsUnderstoodInEverySpelling(String code) {
    double[] lonLat = Projections.source(code).toLonLat(481295.769957, 3640218.755302);
    assertThat(lonLat[0]).isCloseTo(-111.2, within(1e-9));
    assertThat(lonLat[1]).isCloseTo(32.9, within(1e-9));
  }

  @Test
  void latitudeFirstSystemsAreReadLongitudeFirst() {
    assertThat(Projections.source("EPSG:4326").toLonLat(-111.2, 32.9))
        .containsExactly(-111.2, 32.9);
    assertThat(Projections.source("EPSG:4283").toLonLat(144, -36)[0]).isCloseTo(144, within(1e-4));
    String northFirst =
        "GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\",SPHEROID[\"WGS 84\",6378137,298.257223563]],"
            + "PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433],"
            + "AXIS[\"Latitude\",NORTH],AXIS[\"Longitude\",EAST],AUTHORITY[\"EPSG\",\"4326\"]]";
    assertThat(Projections.source(northFirst).toLonLat(-111.2, 32.9)).containsExactly(-111.2, 32.9);
  }

  @Test
  void feetAreUnderstood() {
    // NAD83 / California zone 6 (ftUS): cs2cs -f %.4f +proj=longlat +datum=NAD83 EPSG:2230
    double[] lonLat = Projections.source("EPSG:2230").toLonLat(6485105.09700544, 1980103.67228551);
    assertThat(lonLat[0]).isCloseTo(-116.5, within(2e-5));
    assertThat(lonLat[1]).isCloseTo(33.1, within(2e-5));
  }

  /** The spelling of a .prj file, which gives no shift: NAD83 is taken as WGS 84, and says so. */
  @Test
  void aPrjFileOfANearDatumIsTakenWithoutShift() {
    String prj =
        "PROJCS[\"NAD_1983_UTM_Zone_12N\",GEOGCS[\"GCS_North_American_1983\","
            + "DATUM[\"D_North_American_1983\",SPHEROID[\"GRS_1980\",6378137.0,298.257222101]],"
            + "PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]],"
            + "PROJECTION[\"Transverse_Mercator\"],PARAMETER[\"False_Easting\",500000.0],"
            + "PARAMETER[\"False_Northing\",0.0],PARAMETER[\"Central_Meridian\",-111.0],"
            + "PARAMETER[\"Scale_Factor\",0.9996],PARAMETER[\"Latitude_Of_Origin\",0.0],"
            + "UNIT[\"Meter\",1.0]]";
    SourceSystem system = Projections.source(prj);
    double[] lonLat = system.toLonLat(481295.769957, 3640218.755302);
    assertThat(lonLat[0]).isCloseTo(-111.2, within(3e-5));
    assertThat(lonLat[1]).isCloseTo(32.9, within(3e-5));
    assertThat(Projections.source(Projections.utmFor(-111, 33).esriWkt()).toLonLat(500000, 0)[0])
        .isCloseTo(-111, within(1e-9));
  }

  @Test
  void aFarDatumWithoutShiftIsRefused() {
    String prj =
        "GEOGCS[\"GCS_Tokyo_Local\",DATUM[\"D_Somewhere_1918\",SPHEROID[\"Bessel_1841\","
            + "6377397.155,299.1528128]],PRIMEM[\"Greenwich\",0.0],"
            + "UNIT[\"Degree\",0.0174532925199433]]";
    assertThatThrownBy(() -> Projections.source(prj))
        .isInstanceOf(InputProblem.class)
        .hasMessageContaining("D_Somewhere_1918")
        .hasMessageContaining("EPSG:4326");
  }

  /** GDAL 3.6.2, gdaltransform from WGS 84; systems whose datum is old. */
  @ParameterizedTest
  @CsvSource({
    "27700, -1.5, 52.5, 434039.457286, 289239.281093",
    "31370, 4.5, 50.5, 159311.753913, 132142.330927"
  })
  void oldDatumsAgreeWithGdalWhereTheirShiftHolds(
      String code, double lon, double lat, double x, double y) {
    double[] lonLat = Projections.source(code).toLonLat(x, y);
    assertThat(lonLat[0]).isCloseTo(lon, within(1e-7));
    assertThat(lonLat[1]).isCloseTo(lat, within(1e-7));
  }

  /**
   * NAD27 has some eighty shifts, one a region; expected places by PROJ 9.1.1 without grids
   * (projinfo: NAD27 to WGS 84 (6) west of the Mississippi, 7 m; (13) in the box of the Northwest
   * Territories and Saskatchewan, 8 m).
   */
  @ParameterizedTest
  @CsvSource({
    "-111.2, 32.9, 481360.2744, 3640018.6647, NAD27 to WGS 84 (6), 7",
    "-111.2, 53.2, 486693.3100, 5894316.5412, NAD27 to WGS 84 (13), 8"
  })
  void theShiftIsThatOfThePlace(
      double lon, double lat, double x, double y, String shift, double accuracyM) {
    SourceSystem nad27 = Projections.source("EPSG:26712");
    double[] lonLat = nad27.toLonLat(x, y);
    assertThat(lonLat[0]).isCloseTo(lon, within(1e-7));
    assertThat(lonLat[1]).isCloseTo(lat, within(1e-7));
    SourceSystem.Tie tie = nad27.tieAt(lon, lat);
    assertThat(tie.name()).isEqualTo(shift);
    assertThat(tie.accuracyM()).hasValue(accuracyM);
    assertThat(tie.isCoarse()).isTrue();
  }

  /** No shift of ED50 was published for North America. */
  @Test
  void aPlaceWithoutAShiftIsRefused() {
    SourceSystem ed50 = Projections.source("EPSG:4230");
    assertThatThrownBy(() -> ed50.toLonLat(-111, 33))
        .isInstanceOf(InputProblem.class)
        .hasMessageContaining("ED50")
        .hasMessageContaining("longitude -111.000, latitude 33.000")
        .hasMessageContaining("EPSG:4326");
  }

  @Test
  void aPlaneTiedToNoPlaceIsRefused() {
    String prj = Projections.local().esriWkt();
    assertThatThrownBy(() -> Projections.source(prj)).isInstanceOf(InputProblem.class);
  }

  @Test
  void geometryMovesVertexByVertexAndBack() throws ParseException {
    Geometry field =
        new WKTReader()
            .read(
                "POLYGON((-111 33, -110.99 33, -110.99 33.01, -111 33),(-110.995 33.001,"
                    + " -110.992 33.001, -110.992 33.003, -110.995 33.001))");
    RanchProjection utm = Projections.utmFor(-111, 33);
    Geometry metres = utm.toMetres(field);
    assertThat(metres.getNumPoints()).isEqualTo(field.getNumPoints());
    assertThat(metres.getCoordinates()[0].x).isCloseTo(500000, within(1e-6));
    assertThat(utm.toLonLat(metres).equalsExact(field, 1e-10)).isTrue();
    assertThat(field.getCoordinates()[0].x).isEqualTo(-111);
    assertThat(Projections.toLonLat(metres, "EPSG:32612").equalsExact(field, 1e-10)).isTrue();
  }

  @Test
  void beyond84DegreesIsRefused() {
    assertThatThrownBy(() -> Projections.utmFor(33, -111))
        .isInstanceOf(InputProblem.class)
        .hasMessageContaining("EPSG:n");
    assertThatThrownBy(() -> Projections.utmFor(33, 84.5))
        .isInstanceOf(InputProblem.class)
        .hasMessageContaining("longitude comes first");
    assertThat(Projections.utmFor(180, 10).epsg()).hasValue(32660);
  }

  @Test
  void aRanchAcrossThe180thMeridianIsRefused() {
    assertThatThrownBy(() -> Projections.utmFor(new Envelope(-179.99, 179.99, -17, -16.9)))
        .isInstanceOf(InputProblem.class)
        .hasMessageContaining("180th meridian");
    assertThatThrownBy(() -> Projections.utmFor(new Envelope(-111, 111, 33, 33.1)))
        .isInstanceOf(InputProblem.class);
    assertThat(Projections.utmFor(new Envelope(-111.01, -111, 33, 33.1)).epsg()).hasValue(32612);
  }

  @Test
  void anUnknownCodeNamesTheRemedy() {
    assertThatThrownBy(() -> Projections.source("EPSG:999999"))
        .isInstanceOf(InputProblem.class)
        .hasMessageContaining("EPSG:999999");
    assertThatThrownBy(() -> Projections.source("UTM zone twelve"))
        .isInstanceOf(InputProblem.class)
        .hasMessageContaining("UTM zone twelve");
  }

  /** Its longitude and latitude come back, however far from the zone. */
  @Test
  void aPlaceFarFromTheZoneComesBack() {
    RanchProjection utm = Projections.utmFor(-111, -33);
    for (double lon = -179; lon < 180; lon += 3.5) {
      for (double lat = -89.5; lat <= 89.5; lat += 0.5) {
        PlaceM there = utm.toMetres(lon, lat);
        double[] back = utm.toLonLat(there.xM(), there.yM());
        boolean near = Math.abs(lon + 111) <= 15 && Math.abs(lat) <= 84;
        assertThat(back[0]).as(lon + " " + lat).isCloseTo(lon, within(near ? 1e-12 : 0.5));
        assertThat(back[1]).as(lon + " " + lat).isCloseTo(lat, within(near ? 1e-12 : 0.5));
      }
    }
  }

  /** A sample whose sign of longitude is wrong must come out far away, not end the run. */
  @Test
  void aPlaceFarFromTheZoneIsFarAway() {
    RanchProjection utm = Projections.utmFor(-111, 33);
    PlaceM here = utm.toMetres(-111, 33);
    for (double lon = -180; lon <= 180; lon += 1) {
      for (double lat = -90; lat <= 90; lat += 5) {
        PlaceM there = utm.toMetres(lon, lat);
        assertThat(there.xM()).isFinite();
        assertThat(there.yM()).isFinite();
        if (Math.abs(lon + 111) > 5 && Math.abs(lat) < 80) {
          assertThat(there.distanceM(here)).as(lon + " " + lat).isGreaterThan(50_000);
        }
      }
    }
  }

  @Test
  void aLocalPlaneHandsEverythingThrough() {
    RanchProjection local = Projections.local();
    assertThat(local.isLocal()).isTrue();
    assertThat(local.epsg()).isEmpty();
    assertThat(local.toMetres(12.5, 900)).isEqualTo(new PlaceM(12.5, 900));
    assertThat(local.toLonLat(12.5, 900)).containsExactly(12.5, 900);
  }

  /**
   * The text of a .prj file leads to the same place as GDAL, within a metre: feet, two standard
   * parallels, oblique, double stereographic and south-orientated systems, and old datums whose
   * shift the text does not give.
   */
  @Test
  void aPrjFileLeadsToThePlaceThatGdalHas() throws IOException {
    int checked = 0;
    for (String line : lines("prj.txt")) {
      String[] words = line.split(";", 6);
      double[] lonLat =
          Projections.source(words[5])
              .toLonLat(Double.parseDouble(words[3]), Double.parseDouble(words[4]));
      double north = 111_200 * (lonLat[1] - Double.parseDouble(words[2]));
      double east =
          111_200
              * Math.cos(Math.toRadians(lonLat[1]))
              * (lonLat[0] - Double.parseDouble(words[1]));
      assertThat(Math.hypot(east, north)).as("EPSG:" + words[0]).isLessThan(1);
      checked++;
    }
    assertThat(checked).isGreaterThan(12);
  }

  private static List<String> lines(String resource) throws IOException {
    try (InputStream in = ProjectionsTest.class.getResourceAsStream(resource)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#"))
          .toList();
    }
  }
}
