package fieldsalt.read.table;

import fieldsalt.finding.InputProblem;
import fieldsalt.read.file.InputFile;
import fieldsalt.read.file.RawTable;
import fieldsalt.read.file.TableRow;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Row;

/**
 * A sheet of an .xlsx workbook as text cells; dates become ISO, percents their number, formulas
 * their result.
 */
final class XlsxTable {
  /** Shown for a formula that was saved without its result. */
  private static final String NOT_CALCULATED =
      "formula without its result (open in a spreadsheet, save)";

  private XlsxTable() {}

  /**
   * The rows of a sheet.
   *
   * @param number of the sheet, from 0
   * @return empty if the workbook has fewer sheets
   */
  static Optional<RawTable> read(InputFile file, int number) {
    ReadingOptions options = new ReadingOptions(true, false);
    try (ReadableWorkbook book =
        new ReadableWorkbook(new ByteArrayInputStream(file.bytes()), options)) {
      Optional<org.dhatim.fastexcel.reader.Sheet> sheet = book.getSheet(number);
      return sheet.isPresent()
          ? Optional.of(table(file, sheet.get(), book.isDate1904()))
          : Optional.empty();
    } catch (IOException | RuntimeException e) {
      throw new InputProblem(
              file.name(),
              "a workbook that cannot be opened",
              "an .xlsx workbook without a password",
              "Open it in a spreadsheet program and save it again as .xlsx or CSV.")
          .because(e);
    }
  }

  private static RawTable table(
      InputFile file, org.dhatim.fastexcel.reader.Sheet sheet, boolean from1904)
      throws IOException {
    try (Stream<Row> rows = sheet.openStream()) {
      LocalDate start = from1904 ? LocalDate.of(1904, 1, 1) : LocalDate.of(1899, 12, 30);
      List<TableRow> all = new ArrayList<>();
      rows.forEach(
          row -> {
            TableRow cells = new TableRow(row.getRowNum(), cells(row, start));
            if (!cells.isBlank()) {
              all.add(cells);
            }
          });
      return new RawTable(file.name(), all, false);
    }
  }

  private static String[] cells(Row row, LocalDate start) {
    String[] cells = new String[row.getCellCount()];
    for (int i = 0; i < cells.length; i++) {
      Cell cell = row.getCell(i);
      cells[i] = cell == null ? "" : text(cell, start).strip();
    }
    return cells;
  }

  private static String text(Cell cell, LocalDate start) {
    if (cell.getType() == CellType.NUMBER || cell.getType() == CellType.FORMULA) {
      return number(cell, start);
    }
    if (cell.getType() == CellType.ERROR) {
      return String.valueOf(cell.getRawValue());
    }
    String text = cell.getText();
    return text == null ? "" : text;
  }

  private static String number(Cell cell, LocalDate start) {
    String raw = cell.getRawValue() == null ? "" : cell.getRawValue();
    if (raw.isEmpty() && cell.getValue() == null) {
      return NOT_CALCULATED;
    }
    if (!raw.matches("[-+]?[0-9.]+([eE][-+]?[0-9]+)?")) {
      return cell.getType() == CellType.FORMULA && cell.getValue() instanceof String s ? s : raw;
    }
    BigDecimal value = new BigDecimal(raw);
    if (isDate(cell) && value.signum() > 0) {
      return start.plusDays(value.longValue()).toString();
    }
    value = isPercent(cell) ? value.movePointRight(2) : value;
    // binary noise of spreadsheets: 0.1 + 0.2 shows 15 digits there too
    return value.round(new java.math.MathContext(15)).stripTrailingZeros().toPlainString();
  }

  /** A cell that shows 31 % holds 0.31. */
  private static boolean isPercent(Cell cell) {
    Integer id = cell.getDataFormatId();
    return (id != null && (id == 9 || id == 10)) || plainFormat(cell).contains("%");
  }

  /** The format without colours, quoted and escaped text. */
  private static String plainFormat(Cell cell) {
    String format = cell.getDataFormatString();
    return format == null
        ? ""
        : format.toLowerCase(Locale.ROOT).replaceAll("\\[[^]]*]|\"[^\"]*\"|\\\\.", "");
  }

  private static boolean isDate(Cell cell) {
    Integer id = cell.getDataFormatId();
    if (id != null && ((id >= 14 && id <= 17) || id == 22)) {
      return true;
    }
    String plain = plainFormat(cell);
    return (plain.contains("d") && plain.contains("m")) || plain.contains("yy");
  }
}
