package fieldsalt.handover;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import fieldsalt.geo.Projections;
import fieldsalt.handover.folder.WrittenFile;
import fieldsalt.handover.input.HandoverInput;
import fieldsalt.handover.input.ZoneFeature;
import fieldsalt.handover.table.DbfNames;
import fieldsalt.handover.table.DbfTable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** GDAL reads every layer as it was given, and says nothing. */
class GisFilesTest {
  static final String LONG = "x".repeat(300);
  @TempDir Path dir;

  @BeforeEach
  void tools() {
    Gdal.require("ogrinfo", "ogr2ogr");
  }

  static Stream<Arguments> names() {
    return Stream.of(
        Arguments.of("North", "Ñandú 2"),
        Arguments.of("../../x", "CON"),
        Arguments.of("a/b", "a\\b"),
        Arguments.of(LONG, "\uD83C\uDF3E\uD83D\uDE9C"),
        Arguments.of("حقل شمالي", "שדה \"2\" & <b>"),
        Arguments.of("'; DROP TABLE zones; --", "null"));
  }

  /** The layer as GDAL gives it in GeoJSON of the layer's own system. */
  private List<JsonNode> features(String file, String layer) throws IOException {
    Path out = dir.resolve("back.json");
    Files.deleteIfExists(out);
    Gdal.run(
        dir,
        "ogr2ogr",
        "-f",
        "GeoJSON",
        "-lco",
        "RFC7946=NO",
        "-lco",
        "COORDINATE_PRECISION=9",
        "back.json",
        file,
        layer);
    List<JsonNode> features = new ArrayList<>();
    new ObjectMapper().readTree(out.toFile()).path("features").forEach(features::add);
    return features;
  }

  private double areaHa(String file, String layer, String zone) {
    String sql =
        "SELECT OGR_GEOM_AREA AS a FROM \""
            + layer
            + "\" WHERE zone = '"
            + zone.replace("'", "''")
            + "'";
    String said = Gdal.run(dir, "ogrinfo", "-q", file, "-dialect", "OGRSQL", "-sql", sql);
    return Double.parseDouble(said.replaceAll("(?s).*a \\(Real\\) = ([-0-9.e+]+).*", "$1")) / 1e4;
  }

  @ParameterizedTest
  @MethodSource("names")
  void namesComeBackIntactAndReachNoPath(String first, String second) throws IOException {
    Path inside = Files.createDirectories(dir.resolve("deep/in"));
    HandoverInput input = SmallRanch.of(first, second);
    List<WrittenFile> files = Handover.write(inside, input).files();
    try (Stream<Path> all = Files.walk(dir)) {
      assertThat(all.filter(Files::isRegularFile).map(p -> inside.relativize(p).toString()))
          .containsExactlyInAnyOrderElementsOf(files.stream().map(WrittenFile::name).toList())
          .allMatch(name -> name.matches("[A-Za-z0-9.-]+"));
    }
    dir = inside;
    List<String> wanted = input.zones().stream().map(z -> z.zone().field()).toList();
    for (String file : List.of("zones.geojson", "fieldsalt.gpkg")) {
      assertThat(features(file, "zones"))
          .as(file)
          .extracting(f -> f.path("properties").path("field").asText())
          .containsExactlyElementsOf(wanted);
    }
    assertThat(features("fieldsalt.gpkg", "samples"))
        .extracting(f -> f.path("properties").path("id").asText())
        .containsExactly("S-" + first, "S-" + second);
    assertThat(features("zones.shp", "zones"))
        .extracting(f -> f.path("properties").path("field").asText())
        .containsExactlyElementsOf(wanted.stream().map(GisFilesTest::cut).toList());
  }

  private static String cut(String name) {
    return name.length() > 254 ? name.substring(0, 254) : name;
  }

  @Test
  void textThatTheShapefileCannotHoldIsSaid() throws IOException {
    HandoverResult result = Handover.write(dir, SmallRanch.of(LONG, "South"));
    assertThat(result.findings())
        .filteredOn(f -> f.code().id().equals("text-cut"))
        .extracting(f -> f.where())
        .contains("zones.dbf, field", "zones.dbf, zone");
  }

  @Test
  void everyLayerIsReadWithoutAWord() throws IOException {
    List<WrittenFile> files = Handover.write(dir, SmallRanch.of("North", "Ñandú 2")).files();
    for (WrittenFile file : files) {
      if (file.name().matches(".*\\.(geojson|gpkg|shp)")) {
        String said = Gdal.run(dir, "ogrinfo", "-so", "-al", file.name());
        assertThat(said).contains("Feature Count: ").doesNotContainIgnoringCase("warning");
      }
    }
  }

  @Test
  void theSystemIsTheSameEverywhere() throws IOException {
    Handover.write(dir, SmallRanch.of("North", "South"));
    assertThat(Gdal.run(dir, "ogrinfo", "-so", "-al", "fieldsalt.gpkg"))
        .contains("ID[\"EPSG\",32612]");
    assertThat(Gdal.run(dir, "gdalsrsinfo", "-o", "epsg", "zones.prj")).contains("EPSG:32612");
    assertThat(Gdal.run(dir, "ogrinfo", "-so", "-al", "zones.shp")).contains("ID[\"EPSG\",32612]");
    assertThat(Gdal.run(dir, "ogrinfo", "-so", "-al", "zones.geojson"))
        .contains("ID[\"EPSG\",4326]");
  }

  @Test
  void areasAreTheZonesOwnInEveryLayer() throws IOException {
    HandoverInput input = SmallRanch.of("North", "Ñandú 2");
    Handover.write(dir, input);
    Gdal.run(dir, "ogr2ogr", "-f", "GPKG", "-t_srs", "EPSG:32612", "back.gpkg", "zones.geojson");
    Gdal.run(dir, "ogr2ogr", "-f", "GPKG", "round.gpkg", "fieldsalt.gpkg", "zones");
    Gdal.run(dir, "ogr2ogr", "-f", "ESRI Shapefile", "round.shp", "zones.shp", "-nln", "round");
    for (ZoneFeature zone : input.zones()) {
      String name = zone.zone().name();
      double ha = zone.zone().areaHa();
      assertThat(areaHa("fieldsalt.gpkg", "zones", name)).isCloseTo(ha, within(1e-9));
      assertThat(areaHa("round.gpkg", "zones", name)).isCloseTo(ha, within(1e-9));
      assertThat(areaHa("zones.shp", "zones", name)).isCloseTo(ha, within(1e-9));
      assertThat(areaHa("round.shp", "round", name)).isCloseTo(ha, within(1e-9));
      assertThat(areaHa("back.gpkg", "zones", name)).isCloseTo(ha, within(1e-3));
    }
  }

  @Test
  void everyFigureComesBack() throws IOException {
    HandoverInput input = SmallRanch.of("North", "South");
    Handover.write(dir, input);
    for (String file : List.of("zones.geojson", "fieldsalt.gpkg", "zones.shp")) {
      List<JsonNode> features = features(file, "zones");
      String gypsum = file.equals("zones.shp") ? "gyp_t_ha" : "gypsum_t_ha";
      for (int i = 0; i < features.size(); i++) {
        JsonNode properties = features.get(i).path("properties");
        Map<String, Object> given = input.zones().get(i).properties();
        assertThat(properties.path("class").asText())
            .isEqualTo(input.zones().get(i).zone().label());
        assertThat(properties.path("ece_low").asDouble()).isEqualTo(given.get("ece_low"));
        assertThat(properties.path("p_above").asDouble())
            .isCloseTo((double) given.get("p_above"), within(1e-9));
        assertThat(properties.path("yield_pct").isNull()).isEqualTo(given.get("yield_pct") == null);
        assertThat(properties.path(gypsum).asInt(-1)).as(file).isEqualTo(given.get("gypsum_t_ha"));
        assertThat(properties.path("leach").isNull()).isFalse();
      }
    }
  }

  @Test
  void multipartsAndHolesComeBackFromTheShapefile() throws IOException {
    Handover.write(dir, SmallRanch.of("North", "South"));
    JsonNode shape = features("zones.shp", "zones").get(0).path("geometry");
    assertThat(shape.path("type").asText()).isEqualTo("MultiPolygon");
    assertThat(shape.path("coordinates")).hasSize(2);
    assertThat(shape.path("coordinates").get(0)).as("shell and hole").hasSize(2);
  }

  /** The table of docs/files.md. */
  @Test
  void shortNamesAreDistinctAndReadable() {
    List<String> names =
        DbfNames.of(
            List.of(
                "ece_dS_m",
                "leaching_requirement",
                "leaching_status",
                "leaching_mm",
                "leaching_mm_low",
                "leaching_mm_high",
                "leaching_chance",
                "leaching_target_ece",
                "irrigation_mm",
                "gypsum_advice",
                "gypsum_t_ha",
                "gypsum_t_ha_low",
                "gypsum_t_ha_high",
                "gypsum_chance",
                "gypsum_passes",
                "something_else_long",
                "something_else_longer",
                "zone"));
    assertThat(names)
        .containsExactly(
            "ece_dS_m",
            "lch_req",
            "lch_stat",
            "lch_mm",
            "lch_mm_low",
            "lch_mm_hi",
            "lch_chance",
            "lch_tg_ece",
            "irr_mm",
            "gyp_advice",
            "gyp_t_ha",
            "gyp_tha_lo",
            "gyp_tha_hi",
            "gyp_chance",
            "gyp_passes",
            "smthng_els",
            "smthng_e_2",
            "zone");
  }

  @Test
  void aLocalRanchHasNoSystem() throws IOException {
    List<WrittenFile> files =
        Handover.write(dir, SmallRanch.of(Projections.local(), "North", "South")).files();
    assertThat(files).extracting(WrittenFile::name).doesNotContain("zones.prj");
    assertThat(Gdal.run(dir, "ogrinfo", "-so", "-al", "zones.shp")).doesNotContain("EPSG");
    assertThat(Gdal.run(dir, "ogrinfo", "-so", "-al", "fieldsalt.gpkg")).doesNotContain("EPSG");
  }

  @Test
  void anEmptyLayerIsStillALayer() throws IOException {
    HandoverInput full = SmallRanch.of("North", "South");
    HandoverInput empty =
        new HandoverInput(
            full.projection(),
            full.fields(),
            List.of(),
            List.of(),
            full.maps(),
            full.rasters(),
            full.labels(),
            java.util.Optional.empty());
    Handover.write(dir, empty);
    for (String file : List.of("fieldsalt.gpkg", "zones.shp")) {
      assertThat(Gdal.run(dir, "ogrinfo", "-so", "-al", file)).contains("Feature Count: 0");
    }
  }

  /** A table's cell is cut between characters, never inside one. */
  @Test
  void textIsCutBetweenCharacters() {
    Map<String, Integer> bytes = new HashMap<>();
    bytes.put("ñ".repeat(200), 254);
    bytes.put("x" + "ñ".repeat(200), 253);
    bytes.put("\uD83C\uDF3E".repeat(100), 252);
    bytes.put("x".repeat(254), 254);
    bytes.forEach(
        (text, length) -> {
          byte[] cut = DbfTable.cut(text);
          assertThat(cut).hasSize(length);
          assertThat(text).startsWith(new String(cut, java.nio.charset.StandardCharsets.UTF_8));
        });
  }
}
