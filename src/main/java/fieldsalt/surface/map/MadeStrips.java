package fieldsalt.surface.map;

import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.site.Grid;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleConsumer;

/**
 * A map that is worked out while it is given out.
 *
 * @param limits by field, above which the chance is wanted
 * @param progress told the share that is done, 0 to 1
 */
public record MadeStrips(
    MapMaker maker,
    Grid grid,
    List<FieldBoundary> boundaries,
    Map<String, Double> limits,
    DoubleConsumer progress)
    implements SurfaceStrips {
  /** Whole squares of cells that are predicted together, so that strips change no value. */
  static final int ROWS = 8 * MapMaker.SQUARE;

  @Override
  public List<String> fields() {
    return boundaries.stream().map(FieldBoundary::name).toList();
  }

  @Override
  public boolean mayExtrapolate() {
    return maker.hasDrift();
  }

  @Override
  public void forEach(Taker taker) throws IOException {
    for (int row = 0; row < grid.rows(); row += ROWS) {
      Grid strip = grid.rows(row, Math.min(ROWS, grid.rows() - row));
      taker.take(maker.map(strip, boundaries, limits, share -> {}));
      progress.accept(Math.min(1, (row + ROWS) / (double) grid.rows()));
    }
  }
}
