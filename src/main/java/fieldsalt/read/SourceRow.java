package fieldsalt.read;

/** Where a reading stands: file name and its row (the header is row 1) or feature number. */
public record SourceRow(String file, int row) {
  @Override
  public String toString() {
    return file + " row " + row;
  }
}
