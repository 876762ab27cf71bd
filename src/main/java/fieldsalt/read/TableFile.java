package fieldsalt.read;

import fieldsalt.finding.InputProblem;

/** A table in whatever file it came: CSV and its kin, or the first sheet of a workbook. */
final class TableFile {
  private TableFile() {}

  static RawTable read(InputFile file) {
    if (file.startsWith(0xD0, 0xCF, 0x11, 0xE0)) {
      throw unusable(file, "an old .xls workbook (or one with a password)");
    }
    if (file.startsWith('P', 'K')) {
      if (file.extension().equals("ods")) {
        throw unusable(file, "an .ods workbook");
      }
      return XlsxTable.read(file);
    }
    if (file.startsWith('%', 'P', 'D', 'F')) {
      throw unusable(file, "a PDF");
    }
    return CsvText.read(file.name(), TextDecoding.decode(file).text());
  }

  private static InputProblem unusable(InputFile file, String what) {
    return new InputProblem(
        file.name(), what, "CSV or .xlsx", "Open it and save the table as .xlsx or CSV (UTF-8).");
  }
}
