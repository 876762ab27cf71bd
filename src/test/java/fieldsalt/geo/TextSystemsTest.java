package fieldsalt.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.finding.InputProblem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What programs write as well-known text. Expected places: gdaltransform, GDAL 3.6.2. */
class TextSystemsTest {
  private static final String WGS84 =
      "GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\",SPHEROID[\"WGS 84\",6378137,298.257223563]],"
          + "PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]]";

  private static void leadsTo(String text, double x, double y, double lon, double lat) {
    double[] lonLat = Projections.source(text).toLonLat(x, y);
    assertThat(lonLat[0]).isCloseTo(lon, within(1e-7));
    assertThat(lonLat[1]).isCloseTo(lat, within(1e-7));
  }

  /** What GDAL writes of EPSG:3857 in version 1: Mercator, and an extension that corrects it. */
  @Test
  void webMercatorIsOnTheSphere() {
    String text =
        "PROJCS[\"WGS 84 / Pseudo-Mercator\","
            + WGS84
            + ",PROJECTION[\"Mercator_1SP\"],PARAMETER[\"central_meridian\",0],"
            + "PARAMETER[\"scale_factor\",1],PARAMETER[\"false_easting\",0],"
            + "PARAMETER[\"false_northing\",0],UNIT[\"metre\",1],AXIS[\"X\",EAST],"
            + "AXIS[\"Y\",NORTH],EXTENSION[\"PROJ4\",\"+proj=merc +a=6378137 +b=6378137"
            + " +lat_ts=0 +lon_0=0 +x_0=0 +y_0=0 +k=1 +units=m +nadgrids=@null +no_defs\"]]";
    leadsTo(text, -12378727.376212, 3882038.145720, -111.2, 32.9);
    assertThatThrownBy(() -> Projections.source(text.replace("+proj=merc", "+proj=ob_tran")))
        .isInstanceOf(InputProblem.class);
  }

  /** EPSG:3031 in version 1: the latitude of origin is the parallel of true scale. */
  @Test
  void aPolarGridIsTrueOnItsParallel() {
    leadsTo(
        "PROJCS[\"WGS 84 / Antarctic Polar Stereographic\","
            + WGS84
            + ",PROJECTION[\"Polar_Stereographic\"],PARAMETER[\"latitude_of_origin\",-71],"
            + "PARAMETER[\"central_meridian\",0],PARAMETER[\"false_easting\",0],"
            + "PARAMETER[\"false_northing\",0],UNIT[\"metre\",1],"
            + "AXIS[\"Easting\",NORTH],AXIS[\"Northing\",NORTH]]",
        549166.701622,
        1508823.112224,
        20,
        -75.3);
  }

  /** The meridian of Paris, in degrees beside a unit of grads or in grads. */
  @ParameterizedTest
  @CsvSource({"2.33722917", "2.5969213"})
  void parisInDegreesOrGrads(String paris) {
    leadsTo(
        "PROJCS[\"NTF_Paris_Lambert_Zone_II\",GEOGCS[\"GCS_NTF_Paris\",DATUM[\"D_NTF\","
            + "SPHEROID[\"Clarke_1880_IGN\",6378249.2,293.466021293627]],PRIMEM[\"Paris\","
            + paris
            + "],UNIT[\"Grad\",0.0157079632679489]],PROJECTION[\"Lambert_Conformal_Conic\"],"
            + "PARAMETER[\"False_Easting\",600000.0],PARAMETER[\"False_Northing\",2200000.0],"
            + "PARAMETER[\"Central_Meridian\",0.0],PARAMETER[\"Standard_Parallel_1\",52.0],"
            + "PARAMETER[\"Scale_Factor\",0.99987742],PARAMETER[\"Latitude_Of_Origin\",52.0],"
            + "UNIT[\"Meter\",1.0]]",
        612546.519424,
        2166673.135196,
        2.5,
        46.5);
  }

  /** Version 2 with feet and without a code, heights beside the map, an ensemble of datums. */
  @Test
  void version2IsUnderstood() {
    leadsTo(
        "COMPOUNDCRS[\"with heights\",PROJCRS[\"own\",BASEGEOGCRS[\"WGS 84\",ENSEMBLE["
            + "\"World Geodetic System 1984 ensemble\",MEMBER[\"World Geodetic System 1984"
            + " (G730)\"],ELLIPSOID[\"WGS 84\",6378137,298.257223563,LENGTHUNIT[\"metre\",1]],"
            + "ENSEMBLEACCURACY[2.0]],PRIMEM[\"Greenwich\",0,ANGLEUNIT[\"degree\","
            + "0.0174532925199433]]],CONVERSION[\"own\",METHOD[\"Transverse Mercator\"],"
            + "PARAMETER[\"Latitude of natural origin\",0,ANGLEUNIT[\"degree\","
            + "0.0174532925199433]],PARAMETER[\"Longitude of natural origin\",-111,"
            + "ANGLEUNIT[\"degree\",0.0174532925199433]],PARAMETER[\"Scale factor at natural"
            + " origin\",0.9996,SCALEUNIT[\"unity\",1]],PARAMETER[\"False easting\",500000,"
            + "LENGTHUNIT[\"metre\",1]],PARAMETER[\"False northing\",0,LENGTHUNIT[\"metre\",1]]],"
            + "CS[Cartesian,2],AXIS[\"(N)\",north,ORDER[1],LENGTHUNIT[\"foot\",0.3048]],"
            + "AXIS[\"(E)\",east,ORDER[2],LENGTHUNIT[\"foot\",0.3048]]],VERTCRS[\"h\","
            + "VDATUM[\"h\"],CS[vertical,1],AXIS[\"h\",up,LENGTHUNIT[\"metre\",1]]]]",
        481295.769957 / 0.3048,
        3640218.755302 / 0.3048,
        -111.2,
        32.9);
  }

  /** Heights beside the map, in a text and by a code (its map is EPSG:5845's, north first). */
  @Test
  void heightsAreLeftOut() {
    String utm = Projections.utmFor(-111, 33).esriWkt();
    leadsTo(
        utm + ",VERTCS[\"h\",DATUM[\"h\",SPHEROID[\"s\",6378137,298.25]],UNIT[\"Meter\",1.0]]",
        481295.769957,
        3640218.755302,
        -111.2,
        32.9);
    leadsTo("EPSG:5845", 500000, 6651411.190240, 15, 60);
  }

  /**
   * Seven numbers in the text are believed, but nobody states how good they are: those here are
   * EPSG:1314, OSGB36 to WGS 84 (6).
   */
  @Test
  void aShiftInTheTextIsUsed() {
    SourceSystem system =
        Projections.source(
            "GEOGCS[\"old\",DATUM[\"Somewhere\",SPHEROID[\"Airy 1830\",6377563.396,299.3249646],"
                + "TOWGS84[446.448,-125.157,542.06,0.15,0.247,0.842,-20.489]],"
                + "PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]]");
    double[] lonLat = system.toLonLat(-1.5, 52.5);
    double[] expected = Projections.source("EPSG:4277").toLonLat(-1.5, 52.5);
    assertThat(lonLat[0]).isCloseTo(expected[0], within(1e-9));
    assertThat(lonLat[1]).isCloseTo(expected[1], within(1e-9));
    assertThat(system.tieAt(-1.5, 52.5).isCoarse()).isTrue();
    assertThat(system.tieAt(-1.5, 52.5).accuracyM()).isEmpty();
  }

  /** A realization that no table has is taken as WGS 84 by how its name begins, and says so. */
  @Test
  void aNewRealizationIsNearWgs84() {
    String text =
        "GEOGCS[\"x\",DATUM[\"D_ITRF_2095\",SPHEROID[\"GRS_1980\",6378137.0,298.257222101]],"
            + "PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]]";
    SourceSystem system = Projections.source(text);
    assertThat(system.toLonLat(-111.2, 32.9)).containsExactly(-111.2, 32.9);
    SourceSystem.Tie tie = system.tieAt(-111.2, 32.9);
    assertThat(tie.name()).isEqualTo("taken as WGS 84");
    assertThat(tie.accuracyM()).hasValue(2);
    String other = text.replace("GRS_1980\",6378137.0,298.257222101", "Airy\",6377563.4,299.325");
    assertThatThrownBy(() -> Projections.source(other)).hasMessageContaining("ITRF_2095");
  }

  /** A name alone is not believed: the ellipsoid must be the datum's. */
  @Test
  void aDatumOnAnotherEllipsoidIsRefused() {
    assertThatThrownBy(
            () ->
                Projections.source(
                    "GEOGCS[\"x\",DATUM[\"D_North_American_1927\",SPHEROID[\"Bessel_1841\","
                        + "6377397.155,299.1528128]],PRIMEM[\"Greenwich\",0.0],"
                        + "UNIT[\"Degree\",0.0174532925199433]]"))
        .isInstanceOf(InputProblem.class)
        .hasMessageContaining("North_American_1927");
  }

  /**
   * Bahrain lies in the box of Saudi Arabia: two shifts of Ain el Abd, both for the place by their
   * boxes, lie further apart than they state, and that is said.
   */
  @Test
  void rivalsInOneBoxMakeTheTieCoarse() {
    SourceSystem.Tie tie = Projections.source("EPSG:20499").tieAt(50.53, 25.82);
    assertThat(tie.accuracyM().orElseThrow()).isGreaterThan(18);
    SourceSystem.Tie alone = Projections.source("EPSG:27700").tieAt(-1.5, 52.5);
    assertThat(alone.accuracyM()).hasValue(2);
    assertThat(alone.isCoarse()).isFalse();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"PROJCS[\"x\"", "PROJCS[]", "GEOGCS[\"x\"]", "PROJCRS[\"x\"]", "A[B[", "[", "\"["})
  void brokenTextIsRefused(String text) {
    assertThatThrownBy(() -> Projections.source(text)).isInstanceOf(InputProblem.class);
  }

  /**
   * Projections of maps of the world that the library computes otherwise than PROJ 9.1.1, off by 8
   * m (Robinson) to 1,769 km (Cassini), or that no boundary of a field stands in.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "World_Cassini;Cassini;PARAMETER[\"Scale_Factor\",1.0],PARAMETER[\"Latitude_Of_Origin\",0.0],"
            + "PARAMETER[\"Central_Meridian\",0.0]",
        "World_Van_der_Grinten_I;Van_der_Grinten_I;PARAMETER[\"Central_Meridian\",0.0]",
        "North_Pole_Gnomonic;Gnomonic;PARAMETER[\"Longitude_Of_Center\",0.0],"
            + "PARAMETER[\"Latitude_Of_Center\",90.0]",
        "World_Robinson;Robinson;PARAMETER[\"Central_Meridian\",0.0]",
        "World_Equal_Earth;Equal_Earth;PARAMETER[\"Central_Meridian\",0.0]",
        "World_Behrmann;Behrmann;PARAMETER[\"Central_Meridian\",0.0],"
            + "PARAMETER[\"Standard_Parallel_1\",30.0]",
        "World_Cylindrical;Cylindrical_Equal_Area;PARAMETER[\"Central_Meridian\",0.0],"
            + "PARAMETER[\"Standard_Parallel_1\",0.0]",
        "MAGNA_Bogota_DC_2005;IGAC_Plano_Cartesiano;PARAMETER[\"Longitude_Of_Center\",-74.1],"
            + "PARAMETER[\"Latitude_Of_Center\",4.6],PARAMETER[\"Height\",2550.0]",
        "Laborde_Grid;Laborde_Oblique_Mercator;PARAMETER[\"Longitude_Of_Center\",46.4],"
            + "PARAMETER[\"Latitude_Of_Center\",-18.9],PARAMETER[\"Azimuth\",18.9],"
            + "PARAMETER[\"Scale_Factor\",0.9995]"
      })
  void mapsOfTheWorldThatWouldBeMisplacedAreRefused(String system) {
    String[] parts = system.split(";", -1);
    String text =
        ("PROJCS[\"%s\",GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\",SPHEROID[\"WGS_1984\",6378137.0,"
                + "298.257223563]],PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]],"
                + "PROJECTION[\"%s\"],PARAMETER[\"False_Easting\",0.0],PARAMETER[\"False_Northing\",0.0],"
                + "%s,UNIT[\"Meter\",1.0]]")
            .formatted(parts[0], parts[1], parts[2]);
    assertThatThrownBy(() -> Projections.source(text))
        .isInstanceOf(InputProblem.class)
        .hasMessageContaining("coordinate system " + parts[0])
        .hasMessageContaining("found the projection ")
        .hasMessageContaining("EPSG:4326");
  }
}
