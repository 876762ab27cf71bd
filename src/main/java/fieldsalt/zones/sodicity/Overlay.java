package fieldsalt.zones.sodicity;

import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.site.Grid;
import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.locationtech.jts.geom.Envelope;

/**
 * Another property on the grid of a map, field by field: both grids have their lines on whole
 * multiples of the same cell. Fields of one map share the arrays, each fills its own cells.
 */
final class Overlay {
  private final SurfaceMap map;
  private final float[] values;
  private final float[] chance;

  Overlay(SurfaceMap map) {
    this.map = map;
    values = new float[map.grid().cells()];
    chance = new float[map.grid().cells()];
    Arrays.fill(values, Float.NaN);
    Arrays.fill(chance, Float.NaN);
  }

  /** One value a cell of the map; NaN where nothing was taken over. */
  float[] values() {
    return values;
  }

  /** One chance a cell of the map, 0 to 1; NaN where nothing was taken over. */
  float[] chance() {
    return chance;
  }

  /**
   * Takes over the cells of a field.
   *
   * @param from a map of the other property that holds the field, with cells of the same size
   * @param scale what is made of its medians
   */
  void take(FieldBoundary field, SurfaceMap from, DoubleUnaryOperator scale) {
    Grid grid = map.grid();
    Envelope box = field.shapeM().getEnvelopeInternal();
    int west = (int) Math.max(0, Math.floor((box.getMinX() - grid.westM()) / grid.cellM()));
    int north = (int) Math.max(0, Math.floor((grid.northM() - box.getMaxY()) / grid.cellM()));
    double east = Math.ceil((box.getMaxX() - grid.westM()) / grid.cellM());
    double south = Math.ceil((grid.northM() - box.getMinY()) / grid.cellM());
    int mine = map.fields().indexOf(field.name());
    int theirs = from.fields().indexOf(field.name());
    for (int row = north; row < Math.min(grid.rows(), south); row++) {
      for (int column = west; column < Math.min(grid.columns(), east); column++) {
        int cell = row * grid.columns() + column;
        int there = map.fieldOf()[cell] == mine ? cellOf(from.grid(), column, row) : -1;
        if (there >= 0 && from.fieldOf()[there] == theirs) {
          values[cell] = (float) scale.applyAsDouble(from.median()[there]);
          chance[cell] = from.chance()[there];
        }
      }
    }
  }

  /** Index in another grid of the cell at the same place, -1 outside it. */
  private int cellOf(Grid other, int column, int row) {
    Grid grid = map.grid();
    long right = column + Math.round((grid.westM() - other.westM()) / grid.cellM());
    long down = row + Math.round((other.northM() - grid.northM()) / grid.cellM());
    boolean inside = right >= 0 && down >= 0 && right < other.columns() && down < other.rows();
    return inside ? (int) (down * other.columns() + right) : -1;
  }
}
