package fieldsalt.handover.table;

import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/**
 * A dBASE III table in UTF-8: names of at most 10 characters, text of at most 254 bytes cut between
 * characters, numbers as decimal text. Its date is fixed.
 */
public final class DbfTable {
  private static final int TEXT_BYTES = 254;
  private static final int NUMBER_BYTES = 19;
  private static final int MOST_DECIMALS = 10;

  private record Field(String name, Column column, char type, int width, int decimals) {}

  private final List<Field> fields;
  private final int rows;

  private DbfTable(List<Field> fields, int rows) {
    this.fields = fields;
    this.rows = rows;
  }

  static DbfTable of(List<Column> columns, int rows) {
    List<String> names = DbfNames.of(columns.stream().map(Column::property).toList());
    List<Field> fields = new ArrayList<>();
    for (int i = 0; i < columns.size(); i++) {
      fields.add(field(names.get(i), columns.get(i)));
    }
    return new DbfTable(fields, rows);
  }

  private static Field field(String name, Column column) {
    return switch (column.kind()) {
      case TEXT -> new Field(name, column, 'C', textWidth(column), 0);
      case TRUTH -> new Field(name, column, 'L', 1, 0);
      case INTEGER -> number(name, column, 0);
      case REAL -> number(name, column, decimals(column));
    };
  }

  private static int textWidth(Column column) {
    int longest =
        column.values().stream()
            .filter(Objects::nonNull)
            .mapToInt(text -> ShapefileWriter.utf8((String) text).length)
            .max()
            .orElse(1);
    return Math.max(1, Math.min(TEXT_BYTES, longest));
  }

  private static int decimals(Column column) {
    int most =
        column.values().stream()
            .filter(Objects::nonNull)
            .mapToInt(v -> BigDecimal.valueOf((double) v).stripTrailingZeros().scale())
            .max()
            .orElse(0);
    return Math.max(1, Math.min(MOST_DECIMALS, most));
  }

  private static Field number(String name, Column column, int decimals) {
    int width = 1;
    for (Object value : column.values()) {
      width = Math.max(width, value == null ? 0 : digits((Number) value, decimals).length());
    }
    int over = width - NUMBER_BYTES;
    return over <= 0
        ? new Field(name, column, 'N', width, decimals)
        : new Field(name, column, 'N', NUMBER_BYTES, Math.max(0, decimals - over));
  }

  private static String digits(Number value, int decimals) {
    BigDecimal exact =
        value instanceof Long whole
            ? BigDecimal.valueOf(whole)
            : BigDecimal.valueOf((double) value);
    return exact.setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
  }

  byte[] bytes() {
    int headerBytes = 33 + 32 * fields.size();
    int rowBytes = 1 + fields.stream().mapToInt(Field::width).sum();
    ByteBuffer out =
        ByteBuffer.allocate(headerBytes + rows * rowBytes + 1).order(ByteOrder.LITTLE_ENDIAN);
    out.put((byte) 3).put((byte) 100).put((byte) 1).put((byte) 1);
    out.putInt(rows).putShort((short) headerBytes).putShort((short) rowBytes).position(32);
    fields.forEach(field -> describe(out, field));
    out.put((byte) 0x0D);
    for (int row = 0; row < rows; row++) {
      out.put((byte) ' ');
      for (Field field : fields) {
        out.put(cell(field, field.column().values().get(row)));
      }
    }
    return out.put((byte) 0x1A).array();
  }

  private static void describe(ByteBuffer out, Field field) {
    byte[] descriptor = new byte[32];
    byte[] name = field.name().getBytes(StandardCharsets.US_ASCII);
    System.arraycopy(name, 0, descriptor, 0, name.length);
    descriptor[11] = (byte) field.type();
    descriptor[16] = (byte) field.width();
    descriptor[17] = (byte) field.decimals();
    out.put(descriptor);
  }

  private static byte[] cell(Field field, Object value) {
    byte[] cell = new byte[field.width()];
    Arrays.fill(cell, (byte) ' ');
    if (value == null) {
      return cell;
    }
    switch (field.type()) {
      case 'C' -> {
        byte[] text = cut((String) value);
        System.arraycopy(text, 0, cell, 0, text.length);
      }
      case 'L' -> cell[0] = (byte) ((Boolean) value ? 'T' : 'F');
      default -> {
        byte[] digits = ShapefileWriter.utf8(digits((Number) value, field.decimals()));
        if (digits.length > cell.length) {
          Arrays.fill(cell, (byte) '*');
        } else {
          System.arraycopy(digits, 0, cell, cell.length - digits.length, digits.length);
        }
      }
    }
    return cell;
  }

  /** At most 254 bytes, never half a character. */
  public static byte[] cut(String text) {
    byte[] bytes = ShapefileWriter.utf8(text);
    if (bytes.length <= TEXT_BYTES) {
      return bytes;
    }
    int end = TEXT_BYTES;
    while ((bytes[end] & 0xC0) == 0x80) {
      end--;
    }
    return Arrays.copyOf(bytes, end);
  }

  List<Finding> cutText(String file) {
    List<Finding> findings = new ArrayList<>();
    for (Field field : fields) {
      long cut =
          field.column().values().stream()
              .filter(v -> v instanceof String text && cut(text).length < utf8Length(text))
              .count();
      if (cut > 0) {
        findings.add(
            new Finding(
                Code.TEXT_CUT,
                new Place.InFile(file, field.name()),
                cut + " text(s) longer than the 254 bytes that the format holds",
                "cut there; whole in fieldsalt.gpkg and zones.geojson"));
      }
    }
    return findings;
  }

  private static int utf8Length(String text) {
    return ShapefileWriter.utf8(text).length;
  }
}
