package fieldsalt.handover.raster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import fieldsalt.geo.Projections;
import fieldsalt.handover.Gdal;
import fieldsalt.handover.Handover;
import fieldsalt.handover.SmallRanch;
import fieldsalt.handover.folder.WrittenFile;
import fieldsalt.handover.input.HandoverInput;
import fieldsalt.surface.map.HeldMap;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.site.Grid;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** GDAL is the judge of every raster. */
class GeoTiffWriterTest {
  @TempDir Path dir;

  private JsonNode info(String name) throws IOException {
    return new ObjectMapper()
        .readTree(Gdal.run(dir, "gdalinfo", "-json", "-stats", name).replace("nan", "null"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"ece.tif", "ece-error.tif", "p-above.tif"})
  void gdalReadsEachWithoutAWord(String name) throws IOException {
    Gdal.require("gdalinfo");
    Handover.write(dir, SmallRanch.of("North", "South"));
    JsonNode info = info(name);
    JsonNode band = info.path("bands").get(0);
    assertThat(info.path("bands")).hasSize(1);
    assertThat(band.path("type").asText()).isEqualTo("Float32");
    assertThat(band.path("noDataValue").asDouble()).isEqualTo(-9999);
    assertThat(band.path("block").get(0).asInt()).isEqualTo(256);
    assertThat(info.path("metadata").path("IMAGE_STRUCTURE").path("COMPRESSION").asText())
        .isEqualTo("DEFLATE");
    assertThat(info.path("metadata").path("").path("AREA_OR_POINT").asText()).isEqualTo("Area");
    assertThat(info.path("stac").path("proj:epsg").asInt()).isEqualTo(32612);
    JsonNode transform = info.path("geoTransform");
    assertThat(transform.get(0).asDouble()).isEqualTo(SmallRanch.X - 20);
    assertThat(transform.get(3).asDouble()).isEqualTo(SmallRanch.Y + 720);
    assertThat(transform.get(1).asDouble()).isEqualTo(5);
    assertThat(transform.get(5).asDouble()).isEqualTo(-5);
    assertThat(info.path("coordinateSystem").path("wkt").asText())
        .contains("WGS 84 / UTM zone 12N");
  }

  @Test
  void unitScaleAndDescriptionAreThere() throws IOException {
    Gdal.require("gdalinfo");
    Handover.write(dir, SmallRanch.of("North", "South"));
    JsonNode band = info("ece.tif").path("bands").get(0);
    assertThat(band.path("unit").asText()).isEqualTo("dS/m");
    assertThat(band.path("description").asText()).isEqualTo("median ECe");
    assertThat(Gdal.run(dir, "gdalinfo", "p-above.tif")).contains("chance to be above 4 dS/m");
    assertThat(Gdal.run(dir, "gdalinfo", "ece-error.tif")).contains("standard error of ln ECe");
    assertThat(
            Files.readString(dir.resolve("ece.tif"), java.nio.charset.StandardCharsets.ISO_8859_1))
        .contains("role=\"scale\">1<");
  }

  /** Every cell, as GDAL unpacks it, is the cell that was given. */
  @Test
  void everyCellComesBack() throws IOException {
    Gdal.require("gdal_translate");
    HandoverInput input = SmallRanch.of("North", "South");
    Handover.write(dir, input);
    Gdal.run(dir, "gdal_translate", "-q", "-of", "ENVI", "ece.tif", "ece.raw");
    ByteBuffer raw =
        ByteBuffer.wrap(Files.readAllBytes(dir.resolve("ece.raw"))).order(ByteOrder.nativeOrder());
    float[] given = input.maps().get(0).median();
    assertThat(raw.capacity()).isEqualTo(given.length * 4);
    int outside = 0;
    for (float value : given) {
      assertThat(raw.getFloat()).isEqualTo(Float.isNaN(value) ? -9999f : value);
      outside += Float.isNaN(value) ? 1 : 0;
    }
    assertThat(outside).isBetween(1, given.length - 1);
  }

  @Test
  void largeRastersHaveOverviewsOfMeans() throws IOException {
    Gdal.require("gdalinfo", "gdallocationinfo");
    Grid grid = new Grid(0, 0, 1, 700, 1100);
    float[] values = new float[grid.cells()];
    for (int i = 0; i < values.length; i++) {
      int row = i / 700;
      values[i] = i % 2 == 0 ? row : Float.NaN;
    }
    TestRasters.write(
        dir.resolve("big.tif"),
        new RasterBand(grid, "rows", ""),
        values,
        Projections.utmFor(-111, 33));
    JsonNode overviews = info("big.tif").path("bands").get(0).path("overviews");
    assertThat(overviews).hasSize(2);
    assertThat(overviews.get(0).path("size").get(0).asInt()).isEqualTo(350);
    assertThat(overviews.get(1).path("size").get(1).asInt()).isEqualTo(275);
    String at =
        Gdal.run(dir, "gdallocationinfo", "-valonly", "-overview", "1", "big.tif", "200", "600");
    assertThat(Double.parseDouble(at.trim())).isCloseTo(600.5, within(1e-6));
  }

  /** However many rows are handed in at a time. */
  @Test
  void rowsAsTheyAreMadeGiveTheSameFile() throws IOException {
    Grid grid = new Grid(0, 0, 1, 601, 1031);
    float[] values = new float[grid.cells()];
    for (int i = 0; i < values.length; i++) {
      values[i] = i % 7 == 0 ? Float.NaN : (float) Math.sin(i / 1000.0);
    }
    RasterBand band = new RasterBand(grid, "waves", "");
    TestRasters.write(dir.resolve("whole.tif"), band, values, Projections.local());
    try (GeoTiffWriter writer =
        new GeoTiffWriter(dir.resolve("rows.tif"), band, Projections.local())) {
      int row = 0;
      for (int count : new int[] {1, 255, 3, 300, 0, 400, 72}) {
        float[] some =
            java.util.Arrays.copyOfRange(values, row * 601, Math.min(1031, row + count + 5) * 601);
        writer.rows(some, count);
        row += count;
      }
      assertThat(row).isEqualTo(1031);
    }
    assertThat(dir.resolve("rows.tif")).hasSameBinaryContentAs(dir.resolve("whole.tif"));
  }

  @Test
  void aRasterWithoutAllItsRowsIsRefused() throws IOException {
    RasterBand band = new RasterBand(new Grid(0, 0, 1, 4, 3), "few", "");
    GeoTiffWriter writer = new GeoTiffWriter(dir.resolve("few.tif"), band, Projections.local());
    writer.rows(new float[8], 2);
    assertThatThrownBy(writer::close)
        .isInstanceOf(IllegalStateException.class)
        .hasMessage("a raster of 3 rows got 2 of them");
  }

  @Test
  void aLocalSystemHasNoCode() throws IOException {
    Gdal.require("gdalinfo");
    Handover.write(dir, SmallRanch.of(Projections.local(), "North", "South"));
    String info = Gdal.run(dir, "gdalinfo", "ece.tif");
    assertThat(info).doesNotContain("EPSG").contains("Origin = (480980");
  }

  @Test
  void severalMapsMakeASetAFieldWithSafeNames() throws IOException {
    HandoverInput input = SmallRanch.of("../../x", "CON");
    List<SurfaceMap> maps =
        input.fields().stream().map(f -> SmallRanch.map(List.of(f), 20)).toList();
    HandoverInput two =
        new HandoverInput(
            input.projection(),
            input.fields(),
            input.zones(),
            input.samples(),
            maps,
            HeldMap.of(maps),
            input.labels(),
            Optional.empty());
    List<WrittenFile> files = Handover.write(dir, two).files();
    assertThat(files)
        .extracting(WrittenFile::name)
        .contains("ece-x.tif", "ece-error-x.tif", "p-above-x.tif", "ece-field-con.tif");
    for (WrittenFile file : files) {
      assertThat(dir.resolve(file.name())).exists();
    }
    assertThat(files).extracting(WrittenFile::what).contains("median ECe, ../../x");
  }
}
