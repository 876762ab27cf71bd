package fieldsalt.surface.map;

import fieldsalt.surface.site.Grid;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/**
 * The surface on a grid, all arrays row by row from the north-west, one value a cell; NaN outside
 * the fields.
 *
 * @param fields names; {@code fieldOf} holds an index into it, -1 outside every field
 * @param median in the property's own unit (dS/m)
 * @param error standard error of ln ECe (of the value itself on the natural scale), micro-scale
 *     included
 * @param chance that the point is above its field's limit, 0 to 1
 * @param beyond cells whose drift lies outside the surveyed range (drawn hatched); may be empty
 */
public record SurfaceMap(
    Grid grid,
    List<String> fields,
    short[] fieldOf,
    float[] median,
    float[] error,
    float[] chance,
    BitSet beyond) {
  public SurfaceMap {
    fields = List.copyOf(fields);
  }

  /** A map of no field yet. */
  static SurfaceMap empty(Grid grid, List<String> fields) {
    float[][] bands = new float[3][grid.cells()];
    for (float[] band : bands) {
      Arrays.fill(band, Float.NaN);
    }
    short[] fieldOf = new short[grid.cells()];
    Arrays.fill(fieldOf, (short) -1);
    return new SurfaceMap(grid, fields, fieldOf, bands[0], bands[1], bands[2], new BitSet());
  }

  /** Every so-many-th cell each way, as a map of larger cells; this map itself for 1. */
  public SurfaceMap thinned(int step) {
    if (step == 1) {
      return this;
    }
    int columns = (grid.columns() + step - 1) / step;
    int rows = (grid.rows() + step - 1) / step;
    Grid larger = new Grid(grid.westM(), grid.northM(), grid.cellM() * step, columns, rows);
    SurfaceMap thin = empty(larger, fields);
    for (int to = 0; to < larger.cells(); to++) {
      int row = Math.min(grid.rows() - 1, to / columns * step + step / 2);
      int column = Math.min(grid.columns() - 1, to % columns * step + step / 2);
      int from = row * grid.columns() + column;
      thin.fieldOf[to] = fieldOf[from];
      thin.median[to] = median[from];
      thin.error[to] = error[from];
      thin.chance[to] = chance[from];
      thin.beyond.set(to, beyond.get(from));
    }
    return thin;
  }
}
