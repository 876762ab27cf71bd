package fieldsalt.read.table;

import fieldsalt.finding.InputProblem;
import fieldsalt.read.file.CsvText;
import fieldsalt.read.file.InputFile;
import fieldsalt.read.file.RawTable;
import fieldsalt.read.file.TextDecoding;
import java.util.Optional;

/** A table of any file: CSV and the like, or a sheet of a workbook. */
final class TableFile {
  private TableFile() {}

  /**
   * The rows of a file.
   *
   * @param sheet which one of a workbook, from 0
   * @return empty if there is no such sheet
   */
  static Optional<RawTable> read(InputFile file, int sheet) {
    if (file.startsWith(0xD0, 0xCF, 0x11, 0xE0)) {
      throw unusable(file, "an old .xls workbook (or one with a password)");
    }
    if (file.startsWith('P', 'K')) {
      if (file.extension().equals("ods")) {
        throw unusable(file, "an .ods workbook");
      }
      return XlsxTable.read(file, sheet);
    }
    if (file.startsWith('%', 'P', 'D', 'F')) {
      throw unusable(file, "a PDF");
    }
    return sheet == 0
        ? Optional.of(CsvText.read(file.name(), TextDecoding.decode(file)))
        : Optional.empty();
  }

  private static InputProblem unusable(InputFile file, String what) {
    return new InputProblem(
        file.name(), what, "CSV or .xlsx", "Open it and save the table as .xlsx or CSV (UTF-8).");
  }
}
