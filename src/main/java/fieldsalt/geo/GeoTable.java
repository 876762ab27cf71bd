package fieldsalt.geo;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The rows of a table of this package: fields between semicolons, remarks behind a #. */
final class GeoTable {
  private GeoTable() {}

  static List<String[]> rows(String resource) {
    try (InputStream in = GeoTable.class.getResourceAsStream(resource)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.isBlank() && !line.startsWith("#"))
          .map(line -> line.split(";", -1))
          .toList();
    } catch (IOException e) {
      throw new IllegalStateException("our own table " + resource + " cannot be read", e);
    }
  }

  static double[] numbers(String field) {
    if (field.isEmpty()) {
      return new double[0];
    }
    String[] words = field.split(" ");
    double[] numbers = new double[words.length];
    for (int i = 0; i < words.length; i++) {
      numbers[i] = Double.parseDouble(words[i]);
    }
    return numbers;
  }
}
