package fieldsalt.facts;

import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.dataformat.csv.CsvFactory;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * A published table, kept as it was printed: a CSV resource of this package whose first lines begin
 * with {@code #} and give caption, units and source.
 */
public final class FactTable {
  private FactTable() {}

  /**
   * Rows of a resource, header to cell, in the file's order.
   *
   * @param name file name, e.g. {@code crops.csv}
   */
  public static List<Map<String, String>> rows(String name) {
    try (InputStream in = FactTable.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("resource missing: " + name);
      }
      String body =
          new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))
              .lines()
              .filter(line -> !line.startsWith("#"))
              .collect(Collectors.joining("\n"));
      return parsed(body);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<Map<String, String>> parsed(String csv) throws IOException {
    List<Map<String, String>> rows = new ArrayList<>();
    try (CsvParser parser =
        new CsvFactory().enable(CsvParser.Feature.TRIM_SPACES).createParser(csv)) {
      parser.setSchema(CsvSchema.emptySchema().withHeader());
      while (parser.nextToken() == JsonToken.START_OBJECT) {
        rows.add(row(parser));
      }
    }
    return List.copyOf(rows);
  }

  private static Map<String, String> row(CsvParser parser) throws IOException {
    Map<String, String> row = new LinkedHashMap<>();
    while (parser.nextToken() == JsonToken.FIELD_NAME) {
      String header = parser.currentName();
      parser.nextToken();
      row.put(header, parser.getText());
    }
    return row;
  }
}
