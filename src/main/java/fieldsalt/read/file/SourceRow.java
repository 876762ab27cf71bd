package fieldsalt.read.file;

/**
 * Where a reading stands: file name and its row (as a spreadsheet numbers it) or feature number.
 *
 * @param word {@code row} or {@code feature}
 */
public record SourceRow(String file, int row, String word) {
  public SourceRow(String file, int row) {
    this(file, row, "row");
  }

  @Override
  public String toString() {
    return file + " " + word + " " + row;
  }
}
