package fieldsalt.read.file;

import fieldsalt.finding.InputProblem;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/** Bytes to text, whatever program wrote them: UTF-8, UTF-16, else Windows-1252. */
public final class TextDecoding {
  private static final Charset WINDOWS_1252 = Charset.forName("windows-1252");
  private static final int LOOKED_AT = 4096;

  private TextDecoding() {}

  /** The text of a file, byte-order mark taken off; bytes that are not text are a problem. */
  public static String decode(InputFile file) {
    String text = text(file);
    if (text.indexOf('\0') >= 0) {
      throw new InputProblem(
          file.name(),
          "bytes that are not text",
          "a text file",
          "Export it as CSV (UTF-8) or GeoJSON.");
    }
    if (text.isBlank()) {
      throw new InputProblem(file.name(), "nothing but spaces", "data", "Export it again.");
    }
    return text;
  }

  private static String text(InputFile file) {
    byte[] bytes = file.bytes();
    if (file.startsWith(0xEF, 0xBB, 0xBF)) {
      return new String(bytes, 3, bytes.length - 3, StandardCharsets.UTF_8);
    }
    boolean marked = file.startsWith(0xFF, 0xFE) || file.startsWith(0xFE, 0xFF);
    if (marked) {
      Charset order = file.startsWith(0xFF) ? StandardCharsets.UTF_16LE : StandardCharsets.UTF_16BE;
      return new String(bytes, 2, bytes.length - 2, order);
    }
    int even = zerosAt(bytes, 0);
    int odd = zerosAt(bytes, 1);
    if (Math.min(even, odd) == 0 && Math.max(even, odd) > bytes.length / 8) {
      return new String(bytes, odd > 0 ? StandardCharsets.UTF_16LE : StandardCharsets.UTF_16BE);
    }
    return text(bytes, 0, bytes.length, StandardCharsets.UTF_8);
  }

  /** Some bytes in the character set that they should be in; in Windows-1252 if they are not. */
  static String text(byte[] bytes, int start, int length, Charset charset) {
    try {
      return charset.newDecoder().decode(ByteBuffer.wrap(bytes, start, length)).toString();
    } catch (CharacterCodingException e) {
      return new String(bytes, start, length, WINDOWS_1252);
    }
  }

  private static int zerosAt(byte[] bytes, int parity) {
    int zeros = 0;
    for (int i = parity; i < Math.min(bytes.length, LOOKED_AT); i += 2) {
      zeros += bytes[i] == 0 ? 1 : 0;
    }
    return bytes.length > LOOKED_AT ? zeros * (bytes.length / LOOKED_AT) : zeros;
  }
}
