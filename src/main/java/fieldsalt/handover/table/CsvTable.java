package fieldsalt.handover.table;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * A table as RFC 4180 has it: UTF-8, commas, lines that end in a line feed, quotes where needed; no
 * cell that a spreadsheet would run as a formula.
 *
 * @param header column names, with units where they have one
 * @param rows as long as the header; text, numbers, truth values, null for an empty cell
 */
public record CsvTable(List<String> header, List<List<Object>> rows) {
  private static final String FORMULA = "=+-@\t\r";
  private static final Pattern NUMBER = Pattern.compile("[-+]?[0-9]*\\.?[0-9]+([eE][-+]?[0-9]+)?");

  public CsvTable {
    header = List.copyOf(header);
    rows = List.copyOf(rows);
    for (List<Object> row : rows) {
      if (row.size() != header.size()) {
        throw new IllegalArgumentException(
            "a row has " + row.size() + " cells under " + header.size() + " names");
      }
    }
  }

  /** The table as text. */
  public String text() {
    return line(header) + rows.stream().map(CsvTable::line).collect(Collectors.joining());
  }

  /** Writes the table into a new file. */
  public void write(Path file) throws IOException {
    try (BufferedWriter out = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
      out.write(line(header));
      for (List<Object> row : rows) {
        out.write(line(row));
      }
    }
  }

  private static String line(List<?> cells) {
    return cells.stream().map(CsvTable::cell).collect(Collectors.joining(",", "", "\n"));
  }

  /**
   * A spreadsheet takes a text that begins so for a formula and would run it: an apostrophe in
   * front makes it a text. A number stays a number.
   */
  private static String guarded(String text) {
    boolean formula = !text.isEmpty() && FORMULA.indexOf(text.charAt(0)) >= 0;
    return formula && !NUMBER.matcher(text).matches() ? "'" + text : text;
  }

  private static String cell(Object value) {
    Object plain = Values.plain(value);
    if (plain == null) {
      return "";
    }
    String text =
        plain instanceof Double number
            ? Rounding.plain(number, 7)
            : plain instanceof String written ? guarded(written) : plain.toString();
    boolean quoted = text.chars().anyMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r');
    return quoted ? '"' + text.replace("\"", "\"\"") + '"' : text;
  }
}
