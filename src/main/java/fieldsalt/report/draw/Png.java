package fieldsalt.report.draw;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import java.util.zip.DeflaterOutputStream;

/**
 * Writes a small picture as PNG (ISO/IEC 15948:2004): a palette of at most 256 colours of which the
 * first is clear.
 */
final class Png {
  private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10};

  private Png() {}

  /**
   * @param indices row by row from the top, each the place of its colour in {@code palette}
   * @param palette colours as 0xRRGGBB; the first is clear
   */
  static byte[] indexed(int width, int height, byte[] indices, int[] palette) {
    try {
      ByteArrayOutputStream png = new ByteArrayOutputStream();
      png.write(SIGNATURE);
      chunk(png, "IHDR", header(width, height));
      chunk(png, "PLTE", colours(palette));
      chunk(png, "tRNS", new byte[] {0});
      chunk(png, "IDAT", deflated(width, height, indices));
      chunk(png, "IEND", new byte[0]);
      return png.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static byte[] header(int width, int height) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    DataOutputStream out = new DataOutputStream(bytes);
    out.writeInt(width);
    out.writeInt(height);
    out.write(new byte[] {8, 3, 0, 0, 0});
    return bytes.toByteArray();
  }

  private static byte[] colours(int[] palette) {
    byte[] colours = new byte[3 * palette.length];
    for (int i = 0; i < palette.length; i++) {
      colours[3 * i] = (byte) (palette[i] >> 16);
      colours[3 * i + 1] = (byte) (palette[i] >> 8);
      colours[3 * i + 2] = (byte) palette[i];
    }
    return colours;
  }

  private static byte[] deflated(int width, int height, byte[] indices) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (DeflaterOutputStream out = new DeflaterOutputStream(bytes)) {
      for (int row = 0; row < height; row++) {
        out.write(0);
        out.write(indices, row * width, width);
      }
    }
    return bytes.toByteArray();
  }

  private static void chunk(ByteArrayOutputStream png, String type, byte[] data)
      throws IOException {
    DataOutputStream out = new DataOutputStream(png);
    byte[] name = type.getBytes(StandardCharsets.US_ASCII);
    CRC32 crc = new CRC32();
    crc.update(name);
    crc.update(data);
    out.writeInt(data.length);
    out.write(name);
    out.write(data);
    out.writeInt((int) crc.getValue());
  }
}
