package fieldsalt.read.table;

import fieldsalt.read.file.SourceRow;
import fieldsalt.read.word.HeaderText;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;

/**
 * A table with its header found.
 *
 * @param word what a line is called in messages: {@code row} or {@code feature}
 * @param titles the text above the header
 */
public record Sheet(
    String file,
    String word,
    List<HeaderText> headers,
    List<Line> lines,
    boolean semicolons,
    List<String> titles) {
  /** One line; its point where the file brings geometry. */
  public record Line(int number, String[] cells, Optional<Coordinate> point) {
    public String cell(int index) {
      return index >= 0 && index < cells.length ? cells[index] : "";
    }

    public int filled() {
      int filled = 0;
      for (String cell : cells) {
        filled += cell.isEmpty() ? 0 : 1;
      }
      return filled;
    }
  }

  public SourceRow source(Line line) {
    return new SourceRow(file, line.number(), word);
  }
}
