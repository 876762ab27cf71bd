package fieldsalt.report.draw;

import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.site.Grid;
import java.util.HashMap;
import java.util.Map;
import java.util.function.IntPredicate;

/**
 * The cells of a grid that are to be hatched, as path data: runs of cells along a row, joined with
 * the same run of the row above.
 */
public final class Hatching {
  private static final int MOST_CELLS = 60_000;
  private final Frame frame;
  private final Grid grid;
  private final IntPredicate hatched;
  private final int step;
  private final StringBuilder path = new StringBuilder();

  private Hatching(Frame frame, Grid grid, IntPredicate hatched) {
    this.frame = frame;
    this.grid = grid;
    this.hatched = hatched;
    this.step = (int) Math.max(1, Math.ceil(Math.sqrt(grid.cells() / (double) MOST_CELLS)));
  }

  /** Where nobody can say whether the limit is passed: the chance is between 0.2 and 0.8. */
  public static String undecided(Frame frame, SurfaceMap map) {
    return new Hatching(
            frame,
            map.grid(),
            i -> map.fieldOf()[i] >= 0 && map.chance()[i] > 0.2 && map.chance()[i] < 0.8)
        .path();
  }

  /** Where the survey's values lie outside those that were sampled. */
  public static String beyond(Frame frame, SurfaceMap map) {
    return new Hatching(frame, map.grid(), i -> map.beyond().get(i)).path();
  }

  /** A run of hatched cells and the row it began in. */
  private record Run(int from, int to) {}

  private String path() {
    Map<Run, Integer> open = new HashMap<>();
    for (int row = 0; row < grid.rows(); row += step) {
      open = nextRow(row, open);
    }
    close(open, grid.rows());
    return path.toString();
  }

  private Map<Run, Integer> nextRow(int row, Map<Run, Integer> above) {
    Map<Run, Integer> here = new HashMap<>();
    int column = 0;
    while (column < grid.columns()) {
      int end = column;
      while (end < grid.columns() && hatched.test(row * grid.columns() + end)) {
        end += step;
      }
      if (end > column) {
        Run run = new Run(column, Math.min(end, grid.columns()));
        Integer began = above.remove(run);
        here.put(run, began == null ? row : began);
      }
      column = end + step;
    }
    close(above, row);
    return here;
  }

  private void close(Map<Run, Integer> runs, int rowAfter) {
    runs.entrySet().stream()
        .sorted(java.util.Comparator.comparingInt(e -> e.getKey().from()))
        .forEach(e -> rectangle(e.getKey(), e.getValue(), rowAfter));
  }

  private void rectangle(Run run, int fromRow, int toRow) {
    String left = x(run.from());
    String right = x(run.to());
    path.append('M').append(left).append(' ').append(y(fromRow));
    path.append('H')
        .append(right)
        .append('V')
        .append(y(toRow))
        .append('H')
        .append(left)
        .append('Z');
  }

  private String x(int column) {
    return Chart.number(frame.x(grid.westM() + column * grid.cellM()));
  }

  private String y(int row) {
    return Chart.number(frame.y(grid.northM() - row * grid.cellM()));
  }
}
