package fieldsalt.handover.raster;

import fieldsalt.geo.RanchProjection;
import fieldsalt.surface.site.Grid;
import java.io.IOException;
import java.nio.file.Path;
import java.util.function.DoubleBinaryOperator;

/** Rasters for tests of other stages. */
public final class TestRasters {
  private TestRasters() {}

  /** A GeoTIFF of a function of the cells' centres, in metres of a system; NaN is no value. */
  public static void write(
      Path file, Grid grid, RanchProjection projection, DoubleBinaryOperator value)
      throws IOException {
    float[] values = new float[grid.cells()];
    for (int i = 0; i < values.length; i++) {
      values[i] =
          (float)
              value.applyAsDouble(
                  grid.centreX(i % grid.columns()), grid.centreY(i / grid.columns()));
    }
    write(file, new RasterBand(grid, "drift", ""), values, projection);
  }

  /** A whole raster, row by row from the north-west, NaN where there is no value. */
  static void write(Path file, RasterBand band, float[] values, RanchProjection projection)
      throws IOException {
    try (GeoTiffWriter writer = new GeoTiffWriter(file, band, projection)) {
      writer.rows(values, band.grid().rows());
    }
  }
}
