package fieldsalt.read.table;

import fieldsalt.read.file.RawTable;
import fieldsalt.read.file.TableRow;
import fieldsalt.read.word.HeaderText;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * Names of groups of columns in one or two lines above a header: {@code Saturated paste} over
 * {@code EC}. A group holds until the next one of its line, and until the next one of the line
 * above.
 */
final class GroupNames {
  private final TableRow header;
  private final TableRow near;
  private final TableRow far;
  private final Predicate<String> known;

  /**
   * @param header number of the header's line in the table
   * @param known whether a name is one of ours
   */
  GroupNames(RawTable table, int header, Predicate<String> known) {
    this.header = table.rows().get(header);
    this.near = line(table, header - 1);
    this.far = line(table, header - 2);
    this.known = known;
  }

  /** One cell alone at the beginning is a title, not a group. */
  private static TableRow line(RawTable table, int at) {
    boolean groups =
        at >= 0 && Arrays.stream(table.rows().get(at).cells()).skip(1).anyMatch(c -> !c.isEmpty());
    return groups ? table.rows().get(at) : new TableRow(0);
  }

  /** The header's names, each with its groups where they make it known or name its method. */
  String[] joined() {
    String[] names = header.cells().clone();
    String below = "";
    String above = "";
    for (int i = 0; i < names.length; i++) {
      below = near.cell(i).isEmpty() && far.cell(i).isEmpty() ? below : near.cell(i);
      above = far.cell(i).isEmpty() ? above : far.cell(i);
      names[i] = names[i].isEmpty() ? "" : better(names[i], below, above);
    }
    return names;
  }

  private String better(String name, String below, String above) {
    for (String group : List.of(below, above, (above + " " + below).strip())) {
      Optional<String> joined = joins(name, group).filter(j -> says(j, name)).findFirst();
      if (!group.isEmpty() && joined.isPresent()) {
        return joined.get();
      }
    }
    return name;
  }

  private static Stream<String> joins(String name, String group) {
    String unit = HeaderText.of(name).unit();
    return Stream.of(
        group + " " + name, name + " " + group + (unit.isEmpty() ? "" : " (" + unit + ")"));
  }

  /** Whether a joined name is known and the bare one is not, or names a method that it does not. */
  private boolean says(String joined, String name) {
    if (!known.test(name)) {
      return known.test(joined);
    }
    return namesMethod(joined) && isReading(name) && !namesMethod(name);
  }

  private static boolean isReading(String name) {
    return ColumnGuess.of(HeaderText.of(name)).filter(g -> g.ours().equals("ec")).isPresent();
  }

  private static boolean namesMethod(String name) {
    return isReading(name)
        && ColumnGuess.of(HeaderText.of(name)).orElseThrow().stated().method().isPresent();
  }
}
