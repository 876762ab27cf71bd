package fieldsalt.read.file;

import java.util.Arrays;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;

/**
 * One row of a table as text.
 *
 * @param number as a spreadsheet shows it, or that of the feature
 * @param point longitude and latitude, where the file brings geometry
 */
public record TableRow(int number, String[] cells, Optional<Coordinate> point) {
  public TableRow(int number, String... cells) {
    this(number, cells, Optional.empty());
  }

  /** The text of a cell; empty text beyond the row's end. */
  public String cell(int index) {
    return index >= 0 && index < cells.length ? cells[index] : "";
  }

  public boolean isBlank() {
    return first().isEmpty();
  }

  /** The first cell that holds text; empty text if none does. */
  public String first() {
    return Arrays.stream(cells).filter(c -> !c.isEmpty()).findFirst().orElse("");
  }
}
