package fieldsalt.surface.site;

import fieldsalt.read.field.FieldBoundary;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/**
 * Which cells of a grid have their centre inside which field.
 *
 * @param fieldOf index into the fields, -1 outside; where fields overlap the first one has the cell
 */
public record FieldCells(Grid grid, short[] fieldOf) {

  /** A grid over all fields; its lines lie on whole multiples of the cell. */
  public static Grid gridOver(List<FieldBoundary> fields, double cellM) {
    Envelope box = new Envelope();
    fields.forEach(f -> box.expandToInclude(f.shapeM().getEnvelopeInternal()));
    double west = Math.floor(box.getMinX() / cellM) * cellM;
    double north = Math.ceil(box.getMaxY() / cellM) * cellM;
    int columns = (int) Math.max(1, Math.ceil((box.getMaxX() - west) / cellM));
    int rows = (int) Math.max(1, Math.ceil((north - box.getMinY()) / cellM));
    return new Grid(west, north, cellM, columns, rows);
  }

  /** Cells of one field, row by row, on a grid of its own. */
  static FieldCells ofOne(FieldBoundary field, double cellM) {
    Grid grid = gridOver(List.of(field), cellM);
    short[] fieldOf = new short[grid.cells()];
    Arrays.fill(fieldOf, (short) -1);
    FieldCells cells = new FieldCells(grid, fieldOf);
    cells.add(field, (short) 0, grid.boxOf(field.shapeM().getEnvelopeInternal()));
    return cells;
  }

  /**
   * Gives a field the cells that no field has yet.
   *
   * @param box the grid's cells that it can touch, as {@link Grid#boxOf} gives them
   */
  public void add(FieldBoundary field, short index, int[] box) {
    List<Coordinate[]> rings = rings(field.shapeM());
    for (int row = box[2]; row < box[3]; row++) {
      fillRow(grid, row, crossings(rings, grid.centreY(row)), index, fieldOf);
    }
  }

  private static List<Coordinate[]> rings(Geometry shape) {
    List<Coordinate[]> rings = new ArrayList<>();
    for (int g = 0; g < shape.getNumGeometries(); g++) {
      if (shape.getGeometryN(g) instanceof Polygon polygon) {
        rings.add(polygon.getExteriorRing().getCoordinates());
        for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
          rings.add(polygon.getInteriorRingN(h).getCoordinates());
        }
      }
    }
    return rings;
  }

  /** Eastings at which the boundary crosses a northing, sorted. */
  private static double[] crossings(List<Coordinate[]> rings, double y) {
    double[] found = new double[8];
    int count = 0;
    for (Coordinate[] ring : rings) {
      for (int i = 1; i < ring.length; i++) {
        Coordinate a = ring[i - 1];
        Coordinate b = ring[i];
        if (a.y > y != b.y > y) {
          found = count == found.length ? Arrays.copyOf(found, 2 * count) : found;
          found[count++] = a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x);
        }
      }
    }
    double[] sorted = Arrays.copyOf(found, count);
    Arrays.sort(sorted);
    return sorted;
  }

  private static void fillRow(Grid grid, int row, double[] x, short field, short[] fieldOf) {
    for (int i = 0; i + 1 < x.length; i += 2) {
      int from = (int) Math.max(0, Math.ceil((x[i] - grid.westM()) / grid.cellM() - 0.5));
      int to =
          (int) Math.min(grid.columns(), Math.ceil((x[i + 1] - grid.westM()) / grid.cellM() - 0.5));
      for (int column = from; column < to; column++) {
        int cell = row * grid.columns() + column;
        fieldOf[cell] = fieldOf[cell] < 0 ? field : fieldOf[cell];
      }
    }
  }

  /** Cells of one field within a square of the grid, row by row. */
  public int[] ofSquare(short field, int column, int row, int side) {
    int[] cells = new int[side * side];
    int count = 0;
    for (int r = row; r < Math.min(grid.rows(), row + side); r++) {
      for (int c = column; c < Math.min(grid.columns(), column + side); c++) {
        int cell = r * grid.columns() + c;
        if (fieldOf[cell] == field) {
          cells[count++] = cell;
        }
      }
    }
    return Arrays.copyOf(cells, count);
  }
}
