package fieldsalt.geo.datum;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/** The tables of this stage: fields between semicolons, remarks behind a #. */
public final class GeoTable {
  private GeoTable() {}

  /** The rows of a table, by its file's name. */
  public static List<String[]> rows(String table) {
    try (InputStream in = GeoTable.class.getResourceAsStream("/fieldsalt/geo/" + table)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.isBlank() && !line.startsWith("#"))
          .map(line -> line.split(";", -1))
          .toList();
    } catch (IOException e) {
      throw new IllegalStateException("our own table " + table + " cannot be read", e);
    }
  }

  static double[] numbers(String field) {
    if (field.isEmpty()) {
      return new double[0];
    }
    return Arrays.stream(field.split(" ")).mapToDouble(Double::parseDouble).toArray();
  }
}
