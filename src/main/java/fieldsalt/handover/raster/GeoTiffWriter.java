package fieldsalt.handover.raster;

import fieldsalt.geo.RanchProjection;
import fieldsalt.handover.table.Xml;
import fieldsalt.surface.site.Grid;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;

/**
 * GeoTIFF 1.0 of one Float32 band: tiles of 256 x 256 cells, Deflate, -9999 outside the fields,
 * description and unit in the metadata that GDAL reads, overviews by means of 2 x 2 cells where the
 * raster is larger than two tiles. Rows are taken from the north as they are made and written at
 * every 256th: no more than a strip of the raster, and one of each overview, is held.
 */
public final class GeoTiffWriter implements AutoCloseable {
  public static final float NODATA = -9999f;

  private final FileChannel out;
  private final RasterBand band;
  private final RanchProjection projection;
  private final List<TileLevel> levels = new ArrayList<>();
  private int rows;

  /**
   * Begins a new file; a local system gets a georeference but no EPSG code.
   *
   * @throws java.nio.file.FileAlreadyExistsException if there is one of that name
   */
  GeoTiffWriter(Path file, RasterBand band, RanchProjection projection) throws IOException {
    this.band = band;
    this.projection = projection;
    int columns = band.grid().columns();
    int down = band.grid().rows();
    levels.add(new TileLevel(columns, down));
    while (columns > 2 * TileLevel.TILE || down > 2 * TileLevel.TILE) {
      columns = (columns + 1) / 2;
      down = (down + 1) / 2;
      levels.add(new TileLevel(columns, down));
    }
    out = FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    writeFully(ByteBuffer.allocate(Tiff.HEADER_BYTES));
  }

  /**
   * Takes the next rows from the north.
   *
   * @param values of so many whole rows, more behind them are left alone; NaN where there is none
   */
  void rows(float[] values, int count) throws IOException {
    int columns = band.grid().columns();
    for (int row = 0; row < count; row++) {
      add(0, values, row * columns);
    }
    rows += count;
  }

  /** One row into a level; a level that is full is written, and its halved rows go one up. */
  private void add(int level, float[] values, int from) throws IOException {
    TileLevel own = levels.get(level);
    own.add(values, from);
    if (own.isFull()) {
      flush(level);
    }
  }

  private void flush(int level) throws IOException {
    TileLevel own = levels.get(level);
    for (byte[] tile : own.packed()) {
      own.wrote(position(), tile.length);
      writeFully(ByteBuffer.wrap(tile));
    }
    if (level + 1 < levels.size()) {
      for (float[] row : own.halved()) {
        add(level + 1, row, 0);
      }
    }
    own.clear();
  }

  /**
   * Writes what is left, and the directories.
   *
   * @throws IllegalStateException if rows are missing
   */
  @Override
  public void close() throws IOException {
    try (out) {
      if (rows != band.grid().rows()) {
        throw new IllegalStateException(
            "a raster of " + band.grid().rows() + " rows got " + rows + " of them");
      }
      for (int level = 0; level < levels.size(); level++) {
        if (!levels.get(level).isEmpty()) {
          flush(level);
        }
      }
      writeDirectories();
    }
  }

  private List<Tiff> directories() {
    List<Tiff> directories = new ArrayList<>();
    for (TileLevel level : levels) {
      Tiff directory = level.directory();
      directories.add(directories.isEmpty() ? described(directory) : directory.longs(254, 1));
    }
    return directories;
  }

  private Tiff described(Tiff directory) {
    Grid grid = band.grid();
    directory
        .text(305, "fieldsalt")
        .doubles(33550, grid.cellM(), grid.cellM(), 0)
        .doubles(33922, 0, 0, 0, grid.westM(), grid.northM(), 0)
        .text(42112, metadata());
    geoKeys(directory);
    return directory;
  }

  private void geoKeys(Tiff directory) {
    if (projection.epsg().isPresent()) {
      String citation = projection.name() + "|";
      directory.shorts(
          34735,
          1,
          1,
          0,
          5,
          1024,
          0,
          1,
          1,
          1025,
          0,
          1,
          1,
          1026,
          34737,
          citation.length(),
          0,
          3072,
          0,
          1,
          projection.epsg().getAsInt(),
          3076,
          0,
          1,
          9001);
      directory.text(34737, citation);
    } else {
      directory.shorts(34735, 1, 1, 0, 1, 1025, 0, 1, 1);
    }
  }

  private String metadata() {
    return "<GDALMetadata>\n"
        + item("DESCRIPTION", "description", band.description())
        + item("UNITTYPE", "unittype", band.unit())
        + item("SCALE", "scale", "1")
        + item("OFFSET", "offset", "0")
        + "</GDALMetadata>\n";
  }

  private static String item(String name, String role, String value) {
    return "  <Item name=\"%s\" sample=\"0\" role=\"%s\">%s</Item>\n"
        .formatted(name, role, Xml.escape(value));
  }

  private void writeDirectories() throws IOException {
    List<Tiff> directories = directories();
    if ((position() & 1) == 1) {
      writeFully(ByteBuffer.allocate(1));
    }
    int first = position();
    for (int i = 0; i < directories.size(); i++) {
      int here = position();
      boolean last = i == directories.size() - 1;
      int next = last ? 0 : here + directories.get(i).size();
      writeFully(ByteBuffer.wrap(directories.get(i).at(here, next)));
    }
    ByteBuffer header = ByteBuffer.allocate(Tiff.HEADER_BYTES).order(Tiff.ORDER);
    header.put((byte) 'I').put((byte) 'I').putShort((short) 42).putInt(first).flip();
    out.position(0);
    writeFully(header);
  }

  private int position() throws IOException {
    return Math.toIntExact(out.position());
  }

  private void writeFully(ByteBuffer bytes) throws IOException {
    while (bytes.hasRemaining()) {
      out.write(bytes);
    }
  }
}
