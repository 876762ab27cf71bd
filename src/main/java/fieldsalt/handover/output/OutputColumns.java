package fieldsalt.handover.output;

import fieldsalt.quantity.UnitSystem;
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
import java.util.Objects;

/**
 * The catalogue of the columns of one file: what is not in it cannot be written, and the tables of
 * {@code docs/files.md} are made from it.
 *
 * @param file as the catalogue calls it
 */
public record OutputColumns(String file, List<Column> columns) {
  private static final String RESOURCE = "/fieldsalt/handover/columns.csv";
  private static final Map<String, OutputColumns> ALL = read();

  /**
   * One column.
   *
   * @param name in metric units
   * @param usName in US units; the same where the unit does not differ
   * @param level of the interval it bounds, e.g. {@code 90 %}; empty if none
   */
  public record Column(
      String name, String usName, String type, String unit, String level, String meaning) {
    /** The name in a system of units. */
    public String name(UnitSystem units) {
      return units == UnitSystem.US ? usName : name;
    }
  }

  public OutputColumns {
    columns = List.copyOf(columns);
  }

  /** Every file of the catalogue, in its order. */
  public static List<OutputColumns> all() {
    return List.copyOf(ALL.values());
  }

  /**
   * Columns of a file.
   *
   * @throws IllegalArgumentException if the catalogue does not have it
   */
  public static OutputColumns of(String file) {
    OutputColumns columns = ALL.get(file);
    if (columns == null) {
      throw new IllegalArgumentException("no such file in the catalogue: " + file);
    }
    return columns;
  }

  /** Names in their order. */
  public List<String> names(UnitSystem units) {
    return columns.stream().map(c -> c.name(units)).toList();
  }

  /**
   * Figures under names of the catalogue, in the order in which they are given.
   *
   * @param namesAndValues a name, its value, a name, its value, ...
   * @throws IllegalArgumentException if a name is not in the catalogue
   */
  public Map<String, Object> figures(Object... namesAndValues) {
    Map<String, Object> figures = new LinkedHashMap<>();
    for (int i = 0; i < namesAndValues.length; i += 2) {
      String name = (String) namesAndValues[i];
      if (columns.stream().noneMatch(c -> c.name.equals(name))) {
        throw new IllegalArgumentException(file + " has no column " + name);
      }
      figures.put(name, namesAndValues[i + 1]);
    }
    return figures;
  }

  private static Map<String, OutputColumns> read() {
    Map<String, List<Column>> byFile = new LinkedHashMap<>();
    try (InputStream in =
            Objects.requireNonNull(OutputColumns.class.getResourceAsStream(RESOURCE));
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        if (!line.startsWith("#")) {
          String[] cells = line.split("\\s*;\\s*", -1);
          byFile.computeIfAbsent(cells[0], f -> new ArrayList<>()).add(column(cells));
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    Map<String, OutputColumns> all = new LinkedHashMap<>();
    byFile.forEach((file, columns) -> all.put(file, new OutputColumns(file, columns)));
    return all;
  }

  private static Column column(String[] cells) {
    String[] names = cells[1].split("\\|");
    return new Column(
        names[0],
        names[names.length - 1],
        cells[2].trim(),
        cells[3].trim(),
        cells[4].trim(),
        cells[5].trim());
  }
}
