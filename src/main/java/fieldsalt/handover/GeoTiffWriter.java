package fieldsalt.handover;

import fieldsalt.geo.RanchProjection;
import fieldsalt.surface.Grid;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import java.util.zip.Deflater;

/**
 * GeoTIFF 1.0 of one Float32 band: tiles of 256 x 256 cells, Deflate, -9999 outside the fields,
 * description and unit in the metadata that GDAL reads, overviews by means of 2 x 2 cells where the
 * raster is larger than two tiles. Tiles are written as they are made; a raster is held once.
 */
final class GeoTiffWriter {
  static final float NODATA = -9999f;
  private static final int TILE = 256;

  private final FileChannel out;
  private final RasterBand band;
  private final RanchProjection projection;

  private GeoTiffWriter(FileChannel out, RasterBand band, RanchProjection projection) {
    this.out = out;
    this.band = band;
    this.projection = projection;
  }

  /** Writes a new file; a local system gets a georeference but no EPSG code. */
  static void write(Path file, RasterBand band, RanchProjection projection) throws IOException {
    try (FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      new GeoTiffWriter(channel, band, projection).write();
    }
  }

  private void write() throws IOException {
    writeFully(ByteBuffer.allocate(Tiff.HEADER_BYTES));
    List<Tiff> directories = new ArrayList<>();
    Level level = new Level(band.values(), band.grid().columns(), band.grid().rows());
    directories.add(described(tiles(level)));
    while (level.isLarge()) {
      level = level.halved();
      directories.add(tiles(level).longs(254, 1));
    }
    writeDirectories(directories);
  }

  private Tiff tiles(Level level) throws IOException {
    int across = level.tilesAcross();
    int down = level.tilesDown();
    int[] offsets = new int[across * down];
    int[] counts = new int[across * down];
    for (int row = 0; row < down; row++) {
      int tileRow = row;
      List<byte[]> packed =
          IntStream.range(0, across)
              .parallel()
              .mapToObj(column -> deflate(level.tile(column, tileRow)))
              .toList();
      for (int column = 0; column < across; column++) {
        offsets[row * across + column] = position();
        counts[row * across + column] = packed.get(column).length;
        writeFully(ByteBuffer.wrap(packed.get(column)));
      }
    }
    return new Tiff()
        .longs(256, level.columns)
        .longs(257, level.rows)
        .shorts(258, 32)
        .shorts(259, 8)
        .shorts(262, 1)
        .shorts(277, 1)
        .shorts(284, 1)
        .shorts(322, TILE)
        .shorts(323, TILE)
        .longs(324, offsets)
        .longs(325, counts)
        .shorts(339, 3)
        .text(42113, "-9999");
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

  private void writeDirectories(List<Tiff> directories) throws IOException {
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

  private static byte[] deflate(byte[] tile) {
    Deflater deflater = new Deflater(Deflater.DEFAULT_COMPRESSION);
    try {
      deflater.setInput(tile);
      deflater.finish();
      byte[] room = new byte[tile.length + 1024];
      int length = deflater.deflate(room);
      return Arrays.copyOf(room, length);
    } finally {
      deflater.end();
    }
  }

  /** The band at one resolution. */
  private record Level(float[] values, int columns, int rows) {
    boolean isLarge() {
      return columns > 2 * TILE || rows > 2 * TILE;
    }

    int tilesAcross() {
      return (columns + TILE - 1) / TILE;
    }

    int tilesDown() {
      return (rows + TILE - 1) / TILE;
    }

    byte[] tile(int tileColumn, int tileRow) {
      ByteBuffer tile = ByteBuffer.allocate(TILE * TILE * Float.BYTES).order(Tiff.ORDER);
      for (int r = tileRow * TILE; r < (tileRow + 1) * TILE; r++) {
        for (int c = tileColumn * TILE; c < (tileColumn + 1) * TILE; c++) {
          float value = c < columns && r < rows ? values[r * columns + c] : Float.NaN;
          tile.putFloat(Float.isFinite(value) ? value : NODATA);
        }
      }
      return tile.array();
    }

    Level halved() {
      int halfColumns = (columns + 1) / 2;
      int halfRows = (rows + 1) / 2;
      float[] half = new float[halfColumns * halfRows];
      for (int r = 0; r < halfRows; r++) {
        for (int c = 0; c < halfColumns; c++) {
          half[r * halfColumns + c] = mean(2 * c, 2 * r);
        }
      }
      return new Level(half, halfColumns, halfRows);
    }

    private float mean(int column, int row) {
      double sum = 0;
      int known = 0;
      for (int r = row; r < Math.min(row + 2, rows); r++) {
        for (int c = column; c < Math.min(column + 2, columns); c++) {
          float value = values[r * columns + c];
          if (Float.isFinite(value)) {
            sum += value;
            known++;
          }
        }
      }
      return known == 0 ? Float.NaN : (float) (sum / known);
    }
  }
}
