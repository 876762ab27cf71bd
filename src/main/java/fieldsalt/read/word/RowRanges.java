package fieldsalt.read.word;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;

/** Row numbers as people write them: {@code row 4}, {@code rows 2-40, 57 (40 rows)}. */
public final class RowRanges {
  private RowRanges() {}

  public static String text(String word, SortedSet<Integer> rows) {
    List<String> parts = new ArrayList<>();
    int from = Integer.MIN_VALUE;
    int to = Integer.MIN_VALUE;
    for (int row : rows) {
      if (row != to + 1 && from != Integer.MIN_VALUE) {
        parts.add(range(from, to));
      }
      from = row == to + 1 ? from : row;
      to = row;
    }
    parts.add(range(from, to));
    boolean one = rows.size() == 1;
    String count = rows.size() > 3 ? " (" + rows.size() + " " + word + "s)" : "";
    return word + (one ? " " : "s ") + String.join(", ", parts) + count;
  }

  private static String range(int from, int to) {
    return from == to ? String.valueOf(from) : from + "-" + to;
  }
}
