package fieldsalt.read.file;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The table beside a Shapefile (dBASE III) as text. */
public final class DbfRows {
  private DbfRows() {}

  private record Column(String name, int start, int length) {}

  /** Rows in the file's order, deleted ones too, so that they stay beside their shapes. */
  static List<Map<String, String>> rows(InputFile file, Optional<InputFile> cpg) {
    ByteBuffer bytes = ByteBuffer.wrap(file.bytes()).order(ByteOrder.LITTLE_ENDIAN);
    int count = bytes.getInt(4);
    int header = bytes.getShort(8) & 0xffff;
    int length = bytes.getShort(10) & 0xffff;
    List<Column> columns = columns(file.bytes(), header);
    Charset charset = charset(cpg);
    List<Map<String, String>> rows = new ArrayList<>();
    for (int i = 0; i < count && header + (i + 1L) * length <= file.bytes().length; i++) {
      rows.add(row(file.bytes(), header + i * length, columns, charset));
    }
    return rows;
  }

  private static List<Column> columns(byte[] bytes, int header) {
    List<Column> columns = new ArrayList<>();
    int start = 1;
    for (int at = 32; at + 32 <= header && bytes[at] != 0x0D; at += 32) {
      int end = at;
      while (end < at + 11 && bytes[end] != 0) {
        end++;
      }
      int length = bytes[at + 16] & 0xff;
      columns.add(
          new Column(
              new String(bytes, at, end - at, StandardCharsets.UTF_8).strip(), start, length));
      start += length;
    }
    return columns;
  }

  private static Map<String, String> row(
      byte[] bytes, int at, List<Column> columns, Charset charset) {
    Map<String, String> row = new LinkedHashMap<>();
    for (Column column : columns) {
      String cell =
          TextDecoding.text(bytes, at + column.start(), column.length(), charset)
              .replace("\0", "")
              .strip();
      if (!cell.isEmpty()) {
        row.put(column.name(), cell);
      }
    }
    return row;
  }

  /** UTF-8 where no .cpg file names another, as most programs write today; else Windows-1252. */
  private static Charset charset(Optional<InputFile> cpg) {
    String name =
        cpg.map(f -> new String(f.bytes(), StandardCharsets.US_ASCII).strip())
            .orElse("UTF-8")
            .toUpperCase(Locale.ROOT)
            .replaceAll("^(ANSI )?(\\d{3,4})$", "windows-$2");
    try {
      return Charset.forName(name);
    } catch (IllegalArgumentException e) {
      return StandardCharsets.UTF_8;
    }
  }
}
