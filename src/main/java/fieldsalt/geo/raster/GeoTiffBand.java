package fieldsalt.geo.raster;

import fieldsalt.finding.InputProblem;
import fieldsalt.geo.projection.TiedGrid;
import fieldsalt.geo.registry.LibrarySystems;
import java.awt.geom.AffineTransform;
import java.awt.geom.NoninvertibleTransformException;
import java.awt.image.RenderedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import org.geotools.api.data.DataSourceException;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.EngineeringCRS;
import org.geotools.coverage.grid.GridCoverage2D;
import org.geotools.coverage.util.CoverageUtilities;
import org.geotools.gce.geotiff.GeoTiffReader;
import org.geotools.referencing.CRS;

/**
 * The first band of a GeoTIFF as it stands in the file.
 *
 * @param values row by row from the north; NaN where the file says that there is none
 * @param toCells from the file's coordinates to columns and rows, cell centres at whole numbers
 * @param place what the file says of its coordinates
 */
public record GeoTiffBand(
    String name, float[] values, int columns, int rows, AffineTransform toCells, Place place) {
  private static final long MOST_CELLS = 100_000_000;
  private static final String SAVE_AS =
      "Save it again as a GeoTIFF of one band with its coordinate system.";

  /** The system of the file's coordinates. */
  public static final class Place {
    private final Path file;
    private final Optional<CoordinateReferenceSystem> system;

    private Place(Path file, CoordinateReferenceSystem system) {
      this.file = file;
      this.system = Optional.ofNullable(system);
    }

    /** Whether it is the system with that EPSG code. */
    public boolean isCode(int epsg) {
      return system.stream()
          .flatMap(crs -> crs.getIdentifiers().stream())
          .anyMatch(id -> id.getCode().equals(Integer.toString(epsg)));
    }

    /**
     * The system with its ties.
     *
     * @throws InputProblem if there is none, or it cannot be computed or tied to WGS 84
     */
    public TiedGrid grid() {
      return LibrarySystems.of(
          system
              .filter(crs -> !(crs instanceof EngineeringCRS) && CRS.getHorizontalCRS(crs) != null)
              .orElseThrow(() -> problem(file, "no coordinate system", SAVE_AS)));
    }
  }

  /**
   * Reads a file whole.
   *
   * @throws InputProblem if it is no GeoTIFF, has no cell with a value, or more than 100 million
   */
  public static GeoTiffBand read(Path file) {
    if (!Files.isReadable(file)) {
      throw problem(file, "no such file, or no permission to read it", "Check the path.");
    }
    LibrarySystems.prepare();
    GeoTiffReader reader = null;
    try {
      reader = new GeoTiffReader(file.toFile());
      return read(file, reader);
    } catch (InputProblem e) {
      throw e;
    } catch (DataSourceException | RuntimeException e) {
      throw problem(file, "a file that does not open as one", e);
    } catch (IOException e) {
      throw problem(file, "a file that breaks off (" + e.getMessage() + ")", e);
    } finally {
      if (reader != null) {
        reader.dispose();
      }
    }
  }

  private static InputProblem problem(Path file, String found, Exception cause) {
    InputProblem problem = problem(file, found, SAVE_AS);
    problem.initCause(cause);
    return problem;
  }

  private static InputProblem problem(Path file, String found, String remedy) {
    return new InputProblem(
        file.getFileName().toString(), found, "a GeoTIFF of one band with numbers", remedy);
  }

  private static GeoTiffBand read(Path file, GeoTiffReader reader) throws IOException {
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
    return new GeoTiffBand(
        file.getFileName().toString(),
        values,
        image.getWidth(),
        image.getHeight(),
        inverse((AffineTransform) coverage.getGridGeometry().getGridToCRS2D()),
        new Place(file, reader.getCoordinateReferenceSystem()));
  }

  private static AffineTransform inverse(AffineTransform toGround) {
    try {
      return new AffineTransform(toGround).createInverse();
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
}
