package fieldsalt.read.file;

import fieldsalt.finding.InputProblem;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/** Bytes to text, whatever program wrote them: UTF-8, UTF-16, else Windows-1252. */
public final class TextDecoding {
  private static final Charset WINDOWS_1252 = Charset.forName("windows-1252");

  private TextDecoding() {}

  /** Text and the encoding it was in. */
  public record Decoded(String text, Charset encoding) {}

  /** The text of a file, byte-order mark taken off; bytes that are no text are a problem. */
  public static Decoded decode(InputFile file) {
    Decoded decoded = decode(file.bytes());
    if (decoded.text().indexOf('\0') >= 0) {
      throw new InputProblem(
          file.name(),
          "bytes that are no text",
          "a text file",
          "Export it as CSV (UTF-8) or GeoJSON.");
    }
    if (decoded.text().isBlank()) {
      throw new InputProblem(file.name(), "nothing but blanks", "data", "Export it again.");
    }
    return decoded;
  }

  private static Decoded decode(byte[] bytes) {
    if (starts(bytes, 0xEF, 0xBB, 0xBF)) {
      return lenient(bytes, 3, StandardCharsets.UTF_8);
    }
    if (starts(bytes, 0xFF, 0xFE)) {
      return lenient(bytes, 2, StandardCharsets.UTF_16LE);
    }
    if (starts(bytes, 0xFE, 0xFF)) {
      return lenient(bytes, 2, StandardCharsets.UTF_16BE);
    }
    int zeros = zerosAt(bytes, 1);
    int front = zerosAt(bytes, 0);
    if (zeros > bytes.length / 8 && front == 0) {
      return lenient(bytes, 0, StandardCharsets.UTF_16LE);
    }
    if (front > bytes.length / 8 && zeros == 0) {
      return lenient(bytes, 0, StandardCharsets.UTF_16BE);
    }
    return utf8Or1252(bytes);
  }

  private static Decoded utf8Or1252(byte[] bytes) {
    try {
      String text =
          StandardCharsets.UTF_8
              .newDecoder()
              .onMalformedInput(CodingErrorAction.REPORT)
              .onUnmappableCharacter(CodingErrorAction.REPORT)
              .decode(ByteBuffer.wrap(bytes))
              .toString();
      return new Decoded(text, StandardCharsets.UTF_8);
    } catch (CharacterCodingException e) {
      return lenient(bytes, 0, WINDOWS_1252);
    }
  }

  private static Decoded lenient(byte[] bytes, int from, Charset charset) {
    return new Decoded(new String(bytes, from, bytes.length - from, charset), charset);
  }

  private static int zerosAt(byte[] bytes, int parity) {
    int zeros = 0;
    for (int i = parity; i < Math.min(bytes.length, 4096); i += 2) {
      zeros += bytes[i] == 0 ? 1 : 0;
    }
    return bytes.length > 4096 ? zeros * (bytes.length / 4096) : zeros;
  }

  private static boolean starts(byte[] bytes, int... mark) {
    for (int i = 0; i < mark.length; i++) {
      if (bytes.length <= i || (bytes[i] & 0xff) != mark[i]) {
        return false;
      }
    }
    return true;
  }
}
