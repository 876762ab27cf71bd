package fieldsalt.handover.raster;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;

/** One directory of a TIFF 6.0 file: tags in ascending order, little-endian, with their values. */
final class Tiff {
  static final ByteOrder ORDER = ByteOrder.LITTLE_ENDIAN;
  static final int HEADER_BYTES = 8;
  private static final int ENTRY_BYTES = 12;

  private enum Type {
    ASCII(2, 1),
    SHORT(3, 2),
    LONG(4, 4),
    DOUBLE(12, 8);

    private final int code;
    private final int bytes;

    Type(int code, int bytes) {
      this.code = code;
      this.bytes = bytes;
    }
  }

  private record Entry(Type type, int count, byte[] value) {}

  private final Map<Integer, Entry> entries = new TreeMap<>();

  Tiff shorts(int tag, int... values) {
    ByteBuffer bytes = ByteBuffer.allocate(Type.SHORT.bytes * values.length).order(ORDER);
    for (int value : values) {
      bytes.putShort((short) value);
    }
    return put(tag, Type.SHORT, values.length, bytes.array());
  }

  Tiff longs(int tag, int... values) {
    ByteBuffer bytes = ByteBuffer.allocate(Type.LONG.bytes * values.length).order(ORDER);
    for (int value : values) {
      bytes.putInt(value);
    }
    return put(tag, Type.LONG, values.length, bytes.array());
  }

  Tiff doubles(int tag, double... values) {
    ByteBuffer bytes = ByteBuffer.allocate(Type.DOUBLE.bytes * values.length).order(ORDER);
    for (double value : values) {
      bytes.putDouble(value);
    }
    return put(tag, Type.DOUBLE, values.length, bytes.array());
  }

  Tiff text(int tag, String value) {
    byte[] text = (value + '\0').getBytes(StandardCharsets.UTF_8);
    return put(tag, Type.ASCII, text.length, text);
  }

  private Tiff put(int tag, Type type, int count, byte[] value) {
    entries.put(tag, new Entry(type, count, value));
    return this;
  }

  /** Bytes of the directory and of the values that do not fit into it. */
  int size() {
    int beside =
        entries.values().stream()
            .mapToInt(e -> e.value.length > 4 ? even(e.value.length) : 0)
            .sum();
    return 2 + ENTRY_BYTES * entries.size() + 4 + beside;
  }

  /**
   * The directory as it stands at an even offset of the file.
   *
   * @param next offset of the next directory, 0 if this is the last
   */
  byte[] at(int offset, int next) {
    ByteBuffer out = ByteBuffer.allocate(size()).order(ORDER);
    int beside = 2 + ENTRY_BYTES * entries.size() + 4;
    out.putShort((short) entries.size());
    for (Map.Entry<Integer, Entry> tag : entries.entrySet()) {
      Entry entry = tag.getValue();
      out.putShort(tag.getKey().shortValue()).putShort((short) entry.type.code);
      out.putInt(entry.count);
      if (entry.value.length > 4) {
        out.putInt(offset + beside);
        out.put(beside, entry.value);
        beside += even(entry.value.length);
      } else {
        out.put(entry.value).position(out.position() + 4 - entry.value.length);
      }
    }
    out.putInt(next);
    return out.array();
  }

  private static int even(int bytes) {
    return bytes + (bytes & 1);
  }
}
