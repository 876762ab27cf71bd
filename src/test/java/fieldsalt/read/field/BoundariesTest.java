package fieldsalt.read.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import fieldsalt.finding.InputProblem;
import fieldsalt.read.file.InputFile;
import fieldsalt.read.file.Notes;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

public class BoundariesTest {
  private static final String SQUARE =
      "[[-153.01,30.0],[-153.0,30.0],[-153.0,30.005],[-153.01,30.005],[-153.01,30.0]]";

  @TempDir Path folder;

  public static Path resource(String name) {
    try {
      return Path.of(BoundariesTest.class.getResource("/fieldsalt/read/" + name).toURI());
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  private static List<FieldBoundary> read(Path path, Notes notes) {
    InputFile file = InputFile.read(path);
    List<FieldBoundary> fields =
        FieldsReader.read(BoundaryFile.read(file, f -> {}, notes), false, notes);
    notes.stopIfProblems();
    return fields;
  }

  private Path json(String features) throws IOException {
    return Files.writeString(
        folder.resolve("f.geojson"),
        "{\"type\":\"FeatureCollection\",\"features\":[" + features + "]}");
  }

  private static String feature(String name, String geometry) {
    return "{\"type\":\"Feature\",\"properties\":{\"field\":\""
        + name
        + "\"},\"geometry\":"
        + geometry
        + "}";
  }

  private static String polygon(String... rings) {
    return "{\"type\":\"Polygon\",\"coordinates\":[" + String.join(",", rings) + "]}";
  }

  private InputProblem refused(String features) {
    return catchThrowableOfType(InputProblem.class, () -> read(json(features), new Notes()));
  }

  /** The files were made from fields.geojson by ogr2ogr (GDAL 3.6) in the systems named. */
  @ParameterizedTest
  @ValueSource(
      strings = {"utm.gpkg", "web.shp", "nad.zip", "old.geojson", "two-layers.gpkg", "feet-z.zip"})
  void anyFileKindInAnySystemGivesTheSameFields(String name) {
    List<FieldBoundary> expected = read(resource("boundaries/fields.geojson"), new Notes());
    List<FieldBoundary> fields = read(resource("boundaries/" + name), new Notes());
    assertThat(fields).extracting(FieldBoundary::name).containsExactly("Ñandú 2", "two parts");
    assertThat(fields.get(0).crop()).contains("alfalfa");
    assertThat(fields.get(0).clayPct()).hasValue(31.5);
    assertThat(fields.get(1).clayPct()).isEmpty();
    for (int i = 0; i < 2; i++) {
      var shape = fields.get(i).shapeM();
      var other = expected.get(i).shapeM();
      assertThat(shape.getNumPoints()).isEqualTo(other.getNumPoints());
      // 1e-7 degrees is a centimetre
      assertThat(
              org.locationtech.jts.algorithm.distance.DiscreteHausdorffDistance.distance(
                  shape, other))
          .isLessThan(1.5e-7);
      assertThat(shape.getArea() / other.getArea()).isCloseTo(1, Assertions.offset(1e-6));
    }
  }

  /**
   * One square in Arizona by ogr2ogr (GDAL 3.6.2, without grids): in an old datum by the text of a
   * Shapefile and by the code of a GeoPackage, which has to say how good its shift is; and in a
   * system that has neither code nor a text of version 1.
   */
  @ParameterizedTest
  @CsvSource({"nad27.zip, 7", "nad27.gpkg, 7", "own.gpkg, "})
  void anOldDatumAndASystemWithoutACodeLeadToTheirPlace(String name, String goodToM) {
    Notes notes = new Notes();
    var box = read(resource("boundaries/" + name), notes).get(0).shapeM().getEnvelopeInternal();
    assertThat(box.getMinX()).isCloseTo(-111.2, Assertions.offset(1e-7));
    assertThat(box.getMaxX()).isCloseTo(-111.19, Assertions.offset(1e-7));
    assertThat(box.getMinY()).isCloseTo(32.9, Assertions.offset(1e-7));
    assertThat(box.getMaxY()).isCloseTo(32.905, Assertions.offset(1e-7));
    if (goodToM == null) {
      assertThat(notes.findings()).isEmpty();
    } else {
      assertThat(notes.findings())
          .singleElement()
          .satisfies(
              finding -> {
                assertThat(finding.code().id()).isEqualTo("datum-shift");
                assertThat(finding.found()).contains("UTM").contains("12N");
                assertThat(finding.done())
                    .contains("NAD27 to WGS 84 (6)")
                    .contains("accurate to " + goodToM + " m");
              });
    }
  }

  /** Refusals of a system name the file and a way out. */
  @ParameterizedTest
  @CsvSource({
    "2343, Xian 1980, no shift to WGS 84 is published",
    "3993, EPSG:3993, whose projection this program has",
    "4230, ED50, a place near longitude -153"
  })
  void aSystemThatLeadsNowhereIsRefused(String code, String system, String why) throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("f.geojson"),
            "{\"type\":\"FeatureCollection\",\"crs\":{\"type\":\"name\",\"properties\":"
                + "{\"name\":\"urn:ogc:def:crs:EPSG::"
                + code
                + "\"}},\"features\":["
                + feature("a", polygon(SQUARE))
                + "]}");
    assertThat(catchThrowableOfType(InputProblem.class, () -> read(file, new Notes())))
        .hasMessageContaining("f.geojson")
        .hasMessageContaining(system)
        .hasMessageContaining(why)
        .hasMessageContaining("EPSG:4326");
  }

  @Test
  void aWrongRingOrderAThirdCoordinateAndAnOpenRingAreAccepted() throws IOException {
    List<FieldBoundary> fields =
        read(
            json(
                feature(
                    "clockwise",
                    polygon("[[-153.01,30,5],[-153.01,30.005,5],[-153,30.005,5],[-153,30,5]]"))),
            new Notes());
    assertThat(fields.get(0).shapeM().getArea()).isCloseTo(5e-5, Assertions.offset(1e-9));
  }

  @Test
  void aSelfCrossingBoundaryIsRefusedNamingThePlace() {
    InputProblem problem =
        refused(
            feature(
                "bow",
                polygon("[[-153.01,30],[-153,30.005],[-153,30],[-153.01,30.005],[-153.01,30]]")));
    assertThat(problem)
        .hasMessageContaining("feature 1 (bow)")
        .hasMessageContaining("-153.005, 30.0025");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "[[30,-153.01],[30,-153],[30.005,-153],[30,-153.01]] | swapped",
        "[[499000,3319000],[499100,3319000],[499100,3319100],[499000,3319000]] | metres",
        "[[-193,30],[-192.99,30],[-192.99,30.01],[-193,30]] | Correct the longitude",
        "[[179.99,30],[-179.99,30],[-179.99,30.01],[179.99,30.01],[179.99,30]] | 180th meridian",
        "[[-153,30],[-153,30],[-153,30],[-153,30]] | three different corners",
        "[[-153,30],[-152.9,30],[-152.8,30],[-153,30]] | not valid",
        "[[-153,30],[-152.9,\"x\"],[-152.8,30],[-153,30]] | GeoJSON",
        "[[-153,30],[1e999,30],[-152.8,30],[-153,30]] | the coordinate",
        "[] | of 0 points"
      })
  void whatIsNoBoundaryIsRefusedWithTheReason(String ring, String said) {
    assertThat(refused(feature("a", polygon(ring)))).hasMessageContaining(said);
  }

  /** A hole drawn as part of the outer ring, which it touches at one corner; two parts likewise. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "0 0,8 0,8 8,4 8,6 4,2 4,4 8,0 8,0 0;56;1;1",
        "0 0,4 0,4 4,8 4,8 8,4 8,4 4,0 4,0 0;32;2;0",
      })
  void aRingThatTouchesItselfEnclosesItsGround(String corners, double area, int parts, int holes)
      throws IOException {
    String ring =
        Arrays.stream(corners.split(","))
            .map(c -> c.split(" "))
            .map(c -> "[-153.0" + c[0] + ",30.0" + c[1] + "]")
            .collect(Collectors.joining(",", "[", "]"));
    Geometry shape = read(json(feature("a", polygon(ring))), new Notes()).get(0).shapeM();
    assertThat(shape.isValid()).isTrue();
    assertThat(shape.getArea()).isCloseTo(area * 1e-4, Assertions.offset(1e-12));
    assertThat(shape.getNumGeometries()).isEqualTo(parts);
    assertThat(((Polygon) shape.getGeometryN(0)).getNumInteriorRing()).isEqualTo(holes);
  }

  /** The same eight with a crossing at its corner is a mistake. */
  @Test
  void anEightIsRefusedEvenWithACornerAtItsCrossing() {
    assertThat(
            refused(
                feature(
                    "a",
                    polygon(
                        "[[-153.00,30],[-153.04,30.04],[-153.08,30.08],[-153.08,30],"
                            + "[-153.04,30.04],[-153.00,30.08],[-153.00,30]]"))))
        .hasMessageContaining("crosses or touches itself");
  }

  @Test
  void degreesAreNoLocalMetres() throws IOException {
    InputFile file =
        InputFile.read(
            json(
                feature(
                    "a",
                    polygon("[[-153.01,30],[-153,30],[-153,30.01],[-153.01,30],[-153.01,30]]"))));
    Notes notes = new Notes();
    FieldsReader.read(BoundaryFile.read(file, f -> {}, notes), true, notes);
    assertThat(catchThrowableOfType(InputProblem.class, notes::stopIfProblems))
        .hasMessageContaining("0.01 by 0.01 m")
        .hasMessageContaining("take crs: local out");
  }

  @Test
  void everyBadFeatureIsToldAtOnce() {
    InputProblem problem =
        refused(
            feature("a", polygon("[[-153.01,30],[-153,30.005],[-153,30],[-153.01,30.005]]"))
                + ","
                + feature("b", polygon("[[-193,30],[-192.99,30],[-192.99,30.01],[-193,30]]")));
    assertThat(problem.problems()).hasSize(2);
  }

  @Test
  void whatIsNoFieldIsLeftOutWithAFindingAndNamesAreMadeUnique() throws IOException {
    Notes notes = new Notes();
    List<FieldBoundary> fields =
        read(
            json(
                feature("a", polygon(SQUARE))
                    + ","
                    + feature("A", polygon(SQUARE.replace("-153.0", "-153.1")))
                    + ","
                    + feature("", polygon(SQUARE.replace("-153.0", "-153.2")))
                    + ","
                    + feature("gate", "{\"type\":\"Point\",\"coordinates\":[-153,30]}")
                    + ","
                    + feature("nothing", "null")),
            notes);
    assertThat(fields).extracting(FieldBoundary::name).containsExactly("a", "A (2)", "field 3");
    assertThat(notes.findings())
        .extracting(f -> f.code().id())
        .containsExactlyInAnyOrder(
            "field-name-twice", "field-unnamed", "no-boundary", "no-boundary");
  }

  @Test
  void fieldsOnTheSameGroundAreAFinding() throws IOException {
    Notes notes = new Notes();
    List<FieldBoundary> fields =
        read(json(feature("a", polygon(SQUARE)) + "," + feature("b", polygon(SQUARE))), notes);
    List<FieldBoundary> inMetres = new ArrayList<>();
    var utm = fieldsalt.geo.Projections.utmFor(-153, 30);
    for (FieldBoundary f : fields) {
      inMetres.add(
          new FieldBoundary(
              f.name(), utm.toMetres(f.shapeM()), f.crop(), f.texture(), f.clayPct()));
    }
    Overlaps.noteIn(notes, inMetres);
    assertThat(notes.findings())
        .singleElement()
        .satisfies(f -> assertThat(f.code().id()).isEqualTo("fields-overlap"))
        .satisfies(f -> assertThat(f.found()).contains("53."));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "../../x",
        "CON",
        "a/b",
        "\uD83C\uDF3E\uD83D\uDCA7",
        "\u05E9\u05D3\u05D4 \u05D0'",
        "Ñandú 2",
        "<script>alert(1)</script>"
      })
  void namesComeThroughAsTheyAre(String name) throws IOException {
    assertThat(read(json(feature(name, polygon(SQUARE))), new Notes()).get(0).name())
        .isEqualTo(name);
  }

  @Test
  void aNameOfThreeHundredLettersComesThrough() throws IOException {
    String name = "n".repeat(300);
    assertThat(read(json(feature(name, polygon(SQUARE))), new Notes()).get(0).name())
        .isEqualTo(name);
  }

  @Test
  void aSystemThatNobodyKnowsIsRefused() throws IOException {
    Path path =
        Files.writeString(
            folder.resolve("g.geojson"),
            "{\"type\":\"FeatureCollection\",\"crs\":{\"type\":\"name\",\"properties\":{\"name\":"
                + "\"my own\"}},\"features\":["
                + feature("a", polygon(SQUARE))
                + "]}");
    assertThat(catchThrowableOfType(InputProblem.class, () -> read(path, new Notes())))
        .hasMessageContaining("my own")
        .hasMessageContaining("EPSG:4326");
  }

  @Test
  void aShapefileWithoutItsProjectionIsTakenAsDegreesAndSaysSo() throws IOException {
    for (String end : List.of("shp", "dbf")) {
      Files.copy(resource("boundaries/web." + end), folder.resolve("lone." + end));
    }
    InputProblem problem =
        catchThrowableOfType(
            InputProblem.class, () -> read(folder.resolve("lone.shp"), new Notes()));
    assertThat(problem).hasMessageContaining("metres");
  }

  @Test
  void aFileBesideAShapefileIsNotTheShapefile() {
    InputProblem problem =
        catchThrowableOfType(
            InputProblem.class, () -> read(resource("boundaries/web.dbf"), new Notes()));
    assertThat(problem).hasMessageContaining("Name the .shp file");
  }
}
