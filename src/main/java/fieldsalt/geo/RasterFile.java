package fieldsalt.geo;

import fieldsalt.finding.InputProblem;
import java.awt.geom.AffineTransform;
import java.awt.geom.NoninvertibleTransformException;
import java.awt.geom.Point2D;
import java.awt.image.RenderedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.OptionalInt;
import org.geotools.api.data.DataSourceException;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.EngineeringCRS;
import org.geotools.api.referencing.operation.TransformException;
import org.geotools.coverage.grid.GridCoverage2D;
import org.geotools.coverage.util.CoverageUtilities;
import org.geotools.gce.geotiff.GeoTiffReader;
import org.geotools.referencing.CRS;

/**
 * The first band of a user's GeoTIFF, in any coordinate system, asked by places in a ranch's
 * projection. Between cell centres the value is bilinear over the neighbours that have one.
 */
public final class RasterFile {
  private static final long MOST_CELLS = 100_000_000;

  private final String name;
  private final float[] values;
  private final int columns;
  private final int rows;
  private final AffineTransform toCells;
  private final Place place;

  /** From the ranch's metres to the raster's coordinates; null where it has none. */
  private interface Place {
    double[] of(PlaceM metres);
  }

  private RasterFile(
      String name, float[] values, int columns, int rows, AffineTransform toCells, Place place) {
    this.name = name;
    this.values = values;
    this.columns = columns;
    this.rows = rows;
    this.toCells = toCells;
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
    if (!Files.isReadable(file)) {
      throw problem(file, "no such file, or no permission to read it", "Check the path.");
    }
    Registry.prepare();
    GeoTiffReader reader = null;
    try {
      reader = new GeoTiffReader(file.toFile());
      return read(file, reader, ranch);
    } catch (DataSourceException | RuntimeException e) {
      if (e instanceof InputProblem told) {
        throw told;
      }
      InputProblem problem = problem(file, "a file that does not open as one", SAVE_AS);
      problem.initCause(e);
      throw problem;
    } catch (IOException e) {
      InputProblem problem =
          problem(file, "a file that breaks off (" + e.getMessage() + ")", SAVE_AS);
      problem.initCause(e);
      throw problem;
    } finally {
      if (reader != null) {
        reader.dispose();
      }
    }
  }

  private static final String SAVE_AS =
      "Save it again as a GeoTIFF of one band with its coordinate system.";

  private static InputProblem problem(Path file, String found, String remedy) {
    return new InputProblem(
        file.getFileName().toString(), found, "a GeoTIFF of one band with numbers", remedy);
  }

  private static RasterFile read(Path file, GeoTiffReader reader, RanchProjection ranch)
      throws IOException {
    Place place = place(file, reader.getCoordinateReferenceSystem(), ranch);
    GridCoverage2D coverage = reader.read(null);
    RenderedImage image = coverage.getRenderedImage();
    long cells = (long) image.getWidth() * image.getHeight();
    if (cells > MOST_CELLS) {
      throw problem(
          file,
          String.format(Locale.ROOT, "%,d cells", cells),
          "Cut it to the ranch, or save it with larger cells: at most 100 million.");
    }
    float[] values = values(image, coverage);
    if (!anyFinite(values)) {
      throw problem(file, "no cell with a value", SAVE_AS);
    }
    AffineTransform toGround =
        new AffineTransform((AffineTransform) coverage.getGridGeometry().getGridToCRS2D());
    return new RasterFile(
        file.getFileName().toString(),
        values,
        image.getWidth(),
        image.getHeight(),
        inverse(toGround),
        place);
  }

  private static AffineTransform inverse(AffineTransform toGround) {
    try {
      return toGround.createInverse();
    } catch (NoninvertibleTransformException e) {
      throw new IllegalArgumentException("cells without a size", e);
    }
  }

  private static float[] values(RenderedImage image, GridCoverage2D coverage) {
    int columns = image.getWidth();
    int rows = image.getHeight();
    float[] values = new float[columns * rows];
    var raster = image.getData();
    for (int row = 0; row < rows; row++) {
      float[] line =
          raster.getSamples(image.getMinX(), image.getMinY() + row, columns, 1, 0, (float[]) null);
      System.arraycopy(line, 0, values, row * columns, columns);
    }
    var nothing = CoverageUtilities.getNoDataProperty(coverage);
    if (nothing != null) {
      float nodata = (float) nothing.getAsSingleValue();
      for (int i = 0; i < values.length; i++) {
        values[i] = values[i] == nodata ? Float.NaN : values[i];
      }
    }
    return values;
  }

  private static boolean anyFinite(float[] values) {
    for (float value : values) {
      if (Float.isFinite(value)) {
        return true;
      }
    }
    return false;
  }

  private static Place place(Path file, CoordinateReferenceSystem crs, RanchProjection ranch) {
    if (ranch.isLocal() || sameCode(crs, ranch.epsg())) {
      return metres -> new double[] {metres.xM(), metres.yM()};
    }
    if (crs == null || crs instanceof EngineeringCRS || CRS.getHorizontalCRS(crs) == null) {
      throw problem(file, "no coordinate system", SAVE_AS);
    }
    SourceSystem system = SourceSystems.of(crs);
    return metres -> {
      try {
        double[] lonLat = ranch.toLonLat(metres.xM(), metres.yM());
        return system.ofLonLat(lonLat[0], lonLat[1]);
      } catch (TransformException e) {
        return null;
      }
    };
  }

  private static boolean sameCode(CoordinateReferenceSystem crs, OptionalInt epsg) {
    return crs != null
        && epsg.isPresent()
        && crs.getIdentifiers().stream()
            .anyMatch(id -> id.getCode().equals(Integer.toString(epsg.getAsInt())));
  }

  /** The file's name. */
  public String name() {
    return name;
  }

  /** The value at a place; NaN outside the raster and where the nearest cell has none. */
  public double at(PlaceM metres) {
    double[] ground = place.of(metres);
    if (ground == null) {
      return Double.NaN;
    }
    Point2D cell = toCells.transform(new Point2D.Double(ground[0], ground[1]), null);
    return bilinear(cell.getX(), cell.getY());
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
    boolean inside = column >= 0 && column < columns && row >= 0 && row < rows;
    float value = inside ? values[row * columns + column] : Float.NaN;
    return Float.isFinite(value) ? value : Double.NaN;
  }
}
