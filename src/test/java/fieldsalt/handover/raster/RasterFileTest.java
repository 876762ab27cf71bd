package fieldsalt.handover.raster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.finding.InputProblem;
import fieldsalt.geo.PlaceM;
import fieldsalt.geo.Projections;
import fieldsalt.geo.RasterFile;
import fieldsalt.handover.Gdal;
import fieldsalt.handover.SmallRanch;
import fieldsalt.surface.site.Grid;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A plane z = 10 + x/50 + y/80 comes back from any GeoTIFF that GDAL makes of it. */
class RasterFileTest {
  private static final double X = SmallRanch.X;
  private static final double Y = SmallRanch.Y;
  @TempDir Path dir;

  private static double plane(double x, double y) {
    return 10 + (x - X) / 50 + (y - Y) / 80;
  }

  @BeforeEach
  void write() throws IOException {
    Grid grid = new Grid(X - 100, Y + 900, 5, 240, 200);
    float[] values = new float[grid.cells()];
    for (int i = 0; i < values.length; i++) {
      double x = grid.centreX(i % grid.columns());
      double y = grid.centreY(i / grid.columns());
      values[i] = x > X + 900 ? Float.NaN : (float) plane(x, y);
    }
    TestRasters.write(
        dir.resolve("plane.tif"), new RasterBand(grid, "plane", "m"), values, SmallRanch.UTM);
  }

  private static void assertPlane(RasterFile raster, double tolerance) {
    Random random = new Random(3);
    for (int i = 0; i < 200; i++) {
      double x = X + 850 * random.nextDouble();
      double y = Y + 800 * random.nextDouble();
      assertThat(raster.at(new PlaceM(x, y))).isCloseTo(plane(x, y), within(tolerance));
    }
    assertThat(raster.at(new PlaceM(X + 950, Y + 100))).as("nodata").isNaN();
    assertThat(raster.at(new PlaceM(X - 5000, Y))).as("outside").isNaN();
  }

  @Test
  void betweenCentresTheValueIsBilinear() {
    RasterFile raster = RasterFile.open(dir.resolve("plane.tif"), SmallRanch.UTM);
    assertThat(raster.name()).isEqualTo("plane.tif");
    assertPlane(raster, 1e-5);
  }

  @ParameterizedTest
  @CsvSource({"LZW, YES, Float64", "PACKBITS, NO, Float32", "NONE, YES, Float32"})
  void otherCompressionsAndTypesAreRead(String compression, String tiled, String type) {
    Gdal.require("gdal_translate");
    Gdal.run(
        dir,
        "gdal_translate",
        "-q",
        "-ot",
        type,
        "-co",
        "COMPRESS=" + compression,
        "-co",
        "TILED=" + tiled,
        "plane.tif",
        "other.tif");
    assertPlane(RasterFile.open(dir.resolve("other.tif"), SmallRanch.UTM), 1e-5);
  }

  /** Nearest cells of a warp are half a cell off at most: 2.5 m, or 0.08 of the plane. */
  @ParameterizedTest
  @CsvSource({"EPSG:4326", "EPSG:3857", "EPSG:26912", "EPSG:32611", "EPSG:2223"})
  void otherSystemsAreRead(String system) {
    Gdal.require("gdalwarp");
    Gdal.run(
        dir,
        "gdalwarp",
        "-q",
        "-r",
        "bilinear",
        "-t_srs",
        system,
        "-ts",
        "600",
        "600",
        "plane.tif",
        "other.tif");
    assertPlane(RasterFile.open(dir.resolve("other.tif"), SmallRanch.UTM), 0.05);
  }

  @Test
  void wholeNumbersAreRead() {
    Gdal.require("gdal_translate");
    Gdal.run(
        dir,
        "gdal_translate",
        "-q",
        "-ot",
        "Int16",
        "-a_nodata",
        "-9999",
        "plane.tif",
        "whole.tif");
    assertPlane(RasterFile.open(dir.resolve("whole.tif"), SmallRanch.UTM), 0.51);
  }

  @Test
  void aRasterWithoutASystemIsRefusedButInALocalOne() {
    Gdal.require("gdal_translate");
    Gdal.run(
        dir,
        "gdal_translate",
        "-q",
        "-co",
        "PROFILE=BASELINE",
        "-co",
        "TFW=YES",
        "plane.tif",
        "bare.tif");
    Path bare = dir.resolve("bare.tif");
    assertThatThrownBy(() -> RasterFile.open(bare, SmallRanch.UTM))
        .isInstanceOf(InputProblem.class)
        .hasMessageContaining("bare.tif");
    RasterFile local = RasterFile.open(dir.resolve("plane.tif"), Projections.local());
    assertPlane(local, 1e-5);
  }

  @Test
  void whatIsNoGeoTiffIsRefusedWithARemedy() throws IOException {
    Path text = Files.writeString(dir.resolve("text.tif"), "not a raster");
    byte[] whole = Files.readAllBytes(dir.resolve("plane.tif"));
    Path half = Files.write(dir.resolve("half.tif"), java.util.Arrays.copyOf(whole, 1000));
    for (Path bad : new Path[] {text, half, dir.resolve("absent.tif"), dir}) {
      assertThatThrownBy(() -> RasterFile.open(bad, SmallRanch.UTM))
          .as(bad.toString())
          .isInstanceOf(InputProblem.class)
          .hasMessageContaining(bad.getFileName().toString())
          .hasMessageContaining("GeoTIFF");
    }
  }
}
