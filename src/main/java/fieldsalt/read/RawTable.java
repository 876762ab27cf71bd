package fieldsalt.read;

import java.util.List;

/**
 * The cells of a table as text, before its header is found.
 *
 * @param rows in the file's order, blank ones left out
 * @param semicolons whether cells were divided by semicolons (then a comma in a number more likely
 *     stands before decimals than before thousands)
 */
record RawTable(String file, List<RawRow> rows, boolean semicolons) {
  /** One row with its number as a spreadsheet shows it. */
  record RawRow(int number, String[] cells) {
    String cell(int index) {
      return index >= 0 && index < cells.length ? cells[index] : "";
    }

    boolean isBlank() {
      for (String cell : cells) {
        if (!cell.isEmpty()) {
          return false;
        }
      }
      return true;
    }
  }
}
