package fieldsalt.read;

import fieldsalt.finding.InputProblem;
import fieldsalt.read.RawTable.RawRow;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Row;

/** The first sheet of an .xlsx workbook as text cells; dates become ISO, formulas their result. */
final class XlsxTable {
  private XlsxTable() {}

  static RawTable read(InputFile file) {
    ReadingOptions options = new ReadingOptions(true, false);
    try (ReadableWorkbook book =
            new ReadableWorkbook(new ByteArrayInputStream(file.bytes()), options);
        Stream<Row> rows = book.getFirstSheet().openStream()) {
      LocalDate start = book.isDate1904() ? LocalDate.of(1904, 1, 1) : LocalDate.of(1899, 12, 30);
      List<RawRow> all = new ArrayList<>();
      rows.forEach(
          row -> {
            RawRow cells = new RawRow(row.getRowNum(), cells(row, start));
            if (!cells.isBlank()) {
              all.add(cells);
            }
          });
      return new RawTable(file.name(), all, false);
    } catch (IOException | RuntimeException e) {
      InputProblem problem =
          new InputProblem(
              file.name(),
              "a workbook that cannot be opened",
              "an .xlsx workbook without a password, the table on its first sheet",
              "Open it in a spreadsheet program and save it again as .xlsx or CSV.");
      problem.initCause(e);
      throw problem;
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
    if (!raw.matches("[-+]?[0-9.]+([eE][-+]?[0-9]+)?")) {
      return cell.getType() == CellType.FORMULA && cell.getValue() instanceof String s ? s : raw;
    }
    BigDecimal value = new BigDecimal(raw);
    if (isDate(cell) && value.signum() > 0) {
      return start.plusDays(value.longValue()).toString();
    }
    // binary noise of spreadsheets: 0.1 + 0.2 shows 15 digits there too
    return value.round(new java.math.MathContext(15)).stripTrailingZeros().toPlainString();
  }

  private static boolean isDate(Cell cell) {
    Integer id = cell.getDataFormatId();
    String format = cell.getDataFormatString();
    if (id != null && ((id >= 14 && id <= 17) || id == 22)) {
      return true;
    }
    String plain =
        format == null
            ? ""
            : format.toLowerCase(Locale.ROOT).replaceAll("\\[[^]]*]|\"[^\"]*\"|\\\\.", "");
    return (plain.contains("d") && plain.contains("m")) || plain.contains("yy");
  }
}
