package fieldsalt.read.file;

import fieldsalt.finding.InputProblem;
import java.util.ArrayList;
import java.util.List;

/** Text with separators to cells: {@code , ; |} or tab, cells may be in double quotes. */
public final class CsvText {
  private static final char[] SEPARATORS = {'\t', ';', '|', ','};
  private static final int LOOKED_AT = 100;
  private static final double ENOUGH = 0.6;

  private final String file;
  private final String text;
  private final char separator;
  private int at;
  private int number = 1;

  private CsvText(String file, String text, char separator, int start) {
    this.file = file;
    this.text = text;
    this.separator = separator;
    this.at = start;
  }

  /** The rows of a text; a quote that is never closed is a problem. */
  public static RawTable read(String file, String text) {
    boolean named = text.regionMatches(true, 0, "sep=", 0, 4) && text.length() > 5;
    char separator = named ? text.charAt(4) : separator(text);
    int start = named ? afterLine(text) : 0;
    CsvText csv = new CsvText(file, text, separator, start);
    csv.number = named ? 2 : 1;
    return new RawTable(file, csv.rows(), separator == ';');
  }

  private static int afterLine(String text) {
    int end = text.indexOf('\n');
    return end < 0 ? text.length() : end + 1;
  }

  private static char separator(String text) {
    List<String> lines = text.lines().filter(line -> !line.isBlank()).limit(LOOKED_AT).toList();
    for (char candidate : SEPARATORS) {
      long with = lines.stream().filter(line -> holds(line, candidate)).count();
      if (with >= ENOUGH * lines.size()) {
        return candidate;
      }
    }
    return ',';
  }

  /** A bar may be part of a text among commas; as a separator it is not rarer than they are. */
  private static boolean holds(String line, char candidate) {
    int count = count(line, candidate);
    return count > 0 && (candidate != '|' || count >= count(line, ','));
  }

  private static int count(String line, char candidate) {
    boolean quoted = false;
    int count = 0;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      quoted = (c == '"') != quoted;
      count += c == candidate && !quoted ? 1 : 0;
    }
    return count;
  }

  private List<TableRow> rows() {
    List<TableRow> rows = new ArrayList<>();
    List<String> cells = new ArrayList<>();
    while (at < text.length()) {
      cells.clear();
      boolean more = true;
      while (more) {
        cells.add(at < text.length() && text.charAt(at) == '"' ? quoted() : plain());
        more = at < text.length() && text.charAt(at) == separator;
        at += more ? 1 : 0;
      }
      skipLineEnd();
      TableRow row = new TableRow(number++, cells.toArray(String[]::new));
      if (!row.isBlank()) {
        rows.add(row);
      }
    }
    return rows;
  }

  private void skipLineEnd() {
    if (at < text.length() && text.charAt(at) == '\r') {
      at++;
    }
    if (at < text.length() && text.charAt(at) == '\n') {
      at++;
    }
  }

  private String plain() {
    int start = at;
    while (at < text.length() && !ends(text.charAt(at))) {
      at++;
    }
    return text.substring(start, at).strip();
  }

  private boolean ends(char c) {
    return c == separator || c == '\n' || c == '\r';
  }

  private String quoted() {
    StringBuilder cell = new StringBuilder();
    int opened = number;
    at++;
    while (at < text.length()) {
      char c = text.charAt(at++);
      if (c != '"') {
        cell.append(c);
      } else if (at < text.length() && text.charAt(at) == '"') {
        cell.append('"');
        at++;
      } else {
        return cell.append(plain()).toString().strip();
      }
    }
    throw new InputProblem(
        file + " row " + opened,
        "a cell that opens with \" and never closes",
        "a closing \"",
        "Close it, or take the quote out.");
  }
}
