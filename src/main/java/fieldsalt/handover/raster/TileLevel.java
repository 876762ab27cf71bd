package fieldsalt.handover.raster;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import java.util.zip.Deflater;

/** A raster at one resolution on its way into a file: one strip of tiles is held. */
final class TileLevel {
  /** Cells on a side of a tile. */
  static final int TILE = 256;

  private final int columns;
  private final int rows;
  private final float[] strip;
  private int held;
  private final List<int[]> written = new ArrayList<>();

  TileLevel(int columns, int rows) {
    this.columns = columns;
    this.rows = rows;
    this.strip = new float[columns * Math.min(rows, TILE)];
  }

  /** Takes the next row. */
  void add(float[] values, int from) {
    System.arraycopy(values, from, strip, held * columns, columns);
    held++;
  }

  boolean isFull() {
    return held == TILE;
  }

  boolean isEmpty() {
    return held == 0;
  }

  void clear() {
    held = 0;
  }

  /** The strip's tiles from west to east, packed on all cores. */
  List<byte[]> packed() {
    return IntStream.range(0, (columns + TILE - 1) / TILE)
        .parallel()
        .mapToObj(column -> deflate(tile(column)))
        .toList();
  }

  private byte[] tile(int tileColumn) {
    ByteBuffer tile = ByteBuffer.allocate(TILE * TILE * Float.BYTES).order(Tiff.ORDER);
    for (int r = 0; r < TILE; r++) {
      for (int c = tileColumn * TILE; c < (tileColumn + 1) * TILE; c++) {
        float value = c < columns && r < held ? strip[r * columns + c] : Float.NaN;
        tile.putFloat(Float.isFinite(value) ? value : GeoTiffWriter.NODATA);
      }
    }
    return tile.array();
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

  /** Where the next tile lies in the file. */
  void wrote(int offset, int bytes) {
    written.add(new int[] {offset, bytes});
  }

  /** The strip at half the resolution: means of the known among 2 x 2 cells. */
  List<float[]> halved() {
    List<float[]> half = new ArrayList<>();
    for (int row = 0; row < held; row += 2) {
      float[] line = new float[(columns + 1) / 2];
      for (int c = 0; c < line.length; c++) {
        line[c] = mean(2 * c, row);
      }
      half.add(line);
    }
    return half;
  }

  private float mean(int column, int row) {
    double sum = 0;
    int known = 0;
    for (int r = row; r < Math.min(row + 2, held); r++) {
      for (int c = column; c < Math.min(column + 2, columns); c++) {
        float value = strip[r * columns + c];
        if (Float.isFinite(value)) {
          sum += value;
          known++;
        }
      }
    }
    return known == 0 ? Float.NaN : (float) (sum / known);
  }

  /** The tags of this resolution, once all its tiles are written. */
  Tiff directory() {
    return new Tiff()
        .longs(256, columns)
        .longs(257, rows)
        .shorts(258, 32)
        .shorts(259, 8)
        .shorts(262, 1)
        .shorts(277, 1)
        .shorts(284, 1)
        .shorts(322, TILE)
        .shorts(323, TILE)
        .longs(324, written.stream().mapToInt(w -> w[0]).toArray())
        .longs(325, written.stream().mapToInt(w -> w[1]).toArray())
        .shorts(339, 3)
        .text(42113, "-9999");
  }
}
