package fieldsalt.read.file;

/**
 * Where a reading is: file name and its row (as a spreadsheet numbers it) or feature number.
 *
 * @param word {@code row}, {@code feature} or {@code waypoint}
 */
public record SourceRow(String file, int row, String word) {
  public SourceRow(String file, int row) {
    this(file, row, "row");
  }

  /** The row without its file: {@code row 4}. */
  public String inFile() {
    return word + " " + row;
  }

  @Override
  public String toString() {
    return file + " " + inFile();
  }
}
