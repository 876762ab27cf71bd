package fieldsalt.facts;

import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
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
      MappingIterator<Map<String, String>> rows =
          new CsvMapper()
              .readerForMapOf(String.class)
              .with(CsvSchema.emptySchema().withHeader())
              .with(CsvParser.Feature.TRIM_SPACES)
              .readValues(body);
      return List.copyOf(rows.readAll());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
