package fieldsalt.geo;

import fieldsalt.finding.InputProblem;
import fieldsalt.geo.projection.OutOfReach;
import fieldsalt.geo.raster.GeoTiffBand;
import java.awt.geom.Point2D;
import java.nio.file.Path;

/**
 * The first band of a user's GeoTIFF, in any coordinate system, asked by places in a ranch's
 * projection. Between cell centres the value is bilinear over the neighbours that have one.
 */
public final class RasterFile {
  private final GeoTiffBand band;
  private final Place place;

  /** From the ranch's metres to the raster's coordinates. */
  private interface Place {
    double[] of(PlaceM metres);
  }

  private RasterFile(GeoTiffBand band, Place place) {
    this.band = band;
    this.place = place;
  }

  /**
   * Reads a file whole.
   *
   * @param ranch the projection in which it will be asked; in a local system the raster's
   *     coordinates are taken as that system's metres
   * @throws InputProblem if it is no GeoTIFF, has no coordinate system, no cell with a value, or
   *     more than 100 million cells
   */
  public static RasterFile open(Path file, RanchProjection ranch) {
    GeoTiffBand band = GeoTiffBand.read(file);
    return new RasterFile(band, place(band.place(), ranch));
  }

  private static Place place(GeoTiffBand.Place said, RanchProjection ranch) {
    if (ranch.isLocal() || said.isCode(ranch.epsg().orElse(0))) {
      return metres -> new double[] {metres.xM(), metres.yM()};
    }
    SourceSystem system = new SourceSystem(said.grid());
    return metres -> {
      double[] lonLat = ranch.toLonLat(metres.xM(), metres.yM());
      return system.ofLonLat(lonLat[0], lonLat[1]);
    };
  }

  /** The file's name. */
  public String name() {
    return band.name();
  }

  /** The value at a place; NaN outside the raster and where the nearest cell has none. */
  public double at(PlaceM metres) {
    try {
      double[] ground = place.of(metres);
      Point2D cell = band.toCells().transform(new Point2D.Double(ground[0], ground[1]), null);
      return bilinear(cell.getX(), cell.getY());
    } catch (OutOfReach e) {
      return Double.NaN;
    }
  }

  /** Cell centres lie at whole numbers. */
  private double bilinear(double column, double row) {
    if (Double.isNaN(cell((int) Math.rint(column), (int) Math.rint(row)))) {
      return Double.NaN;
    }
    int left = (int) Math.floor(column);
    int top = (int) Math.floor(row);
    double sum = 0;
    double weights = 0;
    for (int c = left; c <= left + 1; c++) {
      for (int r = top; r <= top + 1; r++) {
        double value = cell(c, r);
        double weight = (1 - Math.abs(column - c)) * (1 - Math.abs(row - r));
        if (!Double.isNaN(value) && weight > 0) {
          sum += weight * value;
          weights += weight;
        }
      }
    }
    return sum / weights;
  }

  private double cell(int column, int row) {
    boolean inside = column >= 0 && column < band.columns() && row >= 0 && row < band.rows();
    float value = inside ? band.values()[row * band.columns() + column] : Float.NaN;
    return Float.isFinite(value) ? value : Double.NaN;
  }
}
