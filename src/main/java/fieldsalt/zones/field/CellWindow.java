package fieldsalt.zones.field;

import fieldsalt.surface.site.Grid;
import fieldsalt.zones.lattice.InsideNodes;
import fieldsalt.zones.lattice.Lattice;
import fieldsalt.zones.lattice.Spread;
import java.util.Arrays;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Polygon;

/**
 * The cells of a map around one part of a field, with a margin, every one with a value: cells that
 * the map leaves empty, or gives to another field, take that of the nearest cell of the field.
 *
 * @param cells lattice of cell centres
 * @param value on the scale of the zones
 * @param second values of the second criterion, empty without one
 * @param filled cells inside the field that the map had left empty
 */
record CellWindow(Lattice cells, double[] value, double[] second, int filled) {
  private static final int MARGIN = 3;

  /**
   * How much of the map is taken.
   *
   * @param stride 1, or more to take only every so many-th cell of a very large field
   * @param reachM distance from known cells to which values outside the part matter; farther out
   *     they are some value or other
   */
  record Extent(int stride, double reachM) {}

  /**
   * Cuts a window out of a map.
   *
   * @param part of the field that the window is for
   * @return empty if no cell of the field has a value
   */
  static Optional<CellWindow> of(
      FieldMap map,
      Polygon part,
      ValueScale scale,
      Optional<SecondCriterion> second,
      Extent extent) {
    Envelope box = part.getEnvelopeInternal();
    int stride = extent.stride();
    Grid grid = map.map().grid();
    double step = grid.cellM() * stride;
    int west = (int) Math.floor((box.getMinX() - grid.westM()) / step) - MARGIN;
    int north = (int) Math.floor((grid.northM() - box.getMaxY()) / step) - MARGIN;
    int east = (int) Math.ceil((box.getMaxX() - grid.westM()) / step) + MARGIN;
    int south = (int) Math.ceil((grid.northM() - box.getMinY()) / step) + MARGIN;
    Lattice cells =
        new Lattice(
            grid.centreX(0) + west * step,
            grid.centreY(0) - north * step,
            step,
            east - west + 1,
            south - north + 1);
    int[] cellOf = cellIndex(grid, cells, west, north, stride);
    double[] value = new double[cells.nodes()];
    boolean[] known = new boolean[cells.nodes()];
    int holes = 0;
    for (int i = 0; i < cellOf.length; i++) {
      boolean mine = cellOf[i] >= 0 && map.isOfField(cellOf[i]);
      value[i] = mine ? scale.apply(map.map().median()[cellOf[i]]) : Double.NaN;
      known[i] = Double.isFinite(value[i]);
      holes += mine && !known[i] ? 1 : 0;
    }
    boolean[] inside = InsideNodes.of(cells, part);
    int reach = (int) Math.ceil(extent.reachM() / step) + MARGIN;
    if (!fill(cells, value, known, inside, reach)) {
      return Optional.empty();
    }
    double[] other =
        second.map(s -> secondValues(s, map, cells, cellOf, inside, reach)).orElse(new double[0]);
    return Optional.of(new CellWindow(cells, value, other, holes));
  }

  private static int[] cellIndex(Grid grid, Lattice cells, int west, int north, int stride) {
    int[] index = new int[cells.nodes()];
    for (int i = 0; i < index.length; i++) {
      int column = (west + i % cells.columns()) * stride;
      int row = (north + i / cells.columns()) * stride;
      boolean there = column >= 0 && row >= 0 && column < grid.columns() && row < grid.rows();
      index[i] = there ? row * grid.columns() + column : -1;
    }
    return index;
  }

  private static double[] secondValues(
      SecondCriterion second,
      FieldMap map,
      Lattice cells,
      int[] cellOf,
      boolean[] inside,
      int reach) {
    double[] value = new double[cells.nodes()];
    boolean[] known = new boolean[cells.nodes()];
    for (int i = 0; i < cellOf.length; i++) {
      boolean mine = cellOf[i] >= 0 && map.isOfField(cellOf[i]);
      value[i] = mine ? second.values()[cellOf[i]] : Double.NaN;
      known[i] = Double.isFinite(value[i]);
    }
    return fill(cells, value, known, inside, reach) ? value : new double[0];
  }

  private static boolean fill(
      Lattice cells, double[] value, boolean[] known, boolean[] inside, int reach) {
    boolean[] wanted = around(cells, known, reach);
    for (int i = 0; i < wanted.length; i++) {
      wanted[i] |= inside[i];
    }
    int[] nearest = Spread.nearestKnown(cells, known, wanted);
    if (isAnyMissing(nearest, wanted)) {
      Arrays.fill(wanted, true);
      nearest = Spread.nearestKnown(cells, known, wanted);
      if (isAnyMissing(nearest, wanted)) {
        return false;
      }
    }
    double last = 0;
    for (int i = 0; i < value.length; i++) {
      last = nearest[i] < 0 ? last : value[nearest[i]];
      value[i] = last;
    }
    return true;
  }

  private static boolean isAnyMissing(int[] nearest, boolean[] wanted) {
    for (int i = 0; i < nearest.length; i++) {
      if (wanted[i] && nearest[i] < 0) {
        return true;
      }
    }
    return false;
  }

  /** Nodes within a number of columns and rows of known ones. */
  private static boolean[] around(Lattice cells, boolean[] known, int reach) {
    boolean[] wide = new boolean[known.length];
    for (int row = 0; row < cells.rows(); row++) {
      sweep(known, wide, row * cells.columns(), 1, cells.columns(), reach);
    }
    boolean[] all = new boolean[known.length];
    for (int column = 0; column < cells.columns(); column++) {
      sweep(wide, all, column, cells.columns(), cells.rows(), reach);
    }
    return all;
  }

  private static void sweep(
      boolean[] from, boolean[] to, int start, int stride, int count, int reach) {
    int last = -reach - 1;
    for (int k = 0; k < count; k++) {
      int i = start + k * stride;
      last = from[i] ? k : last;
      to[i] |= k - last <= reach;
    }
    last = count + reach;
    for (int k = count - 1; k >= 0; k--) {
      int i = start + k * stride;
      last = from[i] ? k : last;
      to[i] |= last - k <= reach;
    }
  }

  /** The window on a lattice this many times finer, values between cell centres interpolated. */
  CellWindow finer(int times) {
    if (times == 1) {
      return this;
    }
    Lattice fine =
        new Lattice(
            cells.westM(),
            cells.northM(),
            cells.stepM() / times,
            (cells.columns() - 1) * times + 1,
            (cells.rows() - 1) * times + 1);
    return new CellWindow(
        fine,
        interpolated(value, fine, times),
        second.length == 0 ? second : interpolated(second, fine, times),
        filled);
  }

  private double[] interpolated(double[] coarse, Lattice fine, int times) {
    double[] result = new double[fine.nodes()];
    for (int i = 0; i < result.length; i++) {
      int fineRow = i / fine.columns();
      int fineColumn = i - fineRow * fine.columns();
      int row = Math.min(fineRow / times, cells.rows() - 2);
      int column = Math.min(fineColumn / times, cells.columns() - 2);
      double down = (double) (fineRow - row * times) / times;
      double along = (double) (fineColumn - column * times) / times;
      int a = row * cells.columns() + column;
      int d = a + cells.columns();
      double top = between(coarse[a], coarse[a + 1], along);
      result[i] = between(top, between(coarse[d], coarse[d + 1], along), down);
    }
    return result;
  }

  /** Exactly one of both at 0 and at 1, so that cell centres keep their values. */
  private static double between(double from, double to, double share) {
    return share == 0 ? from : share == 1 ? to : from + share * (to - from);
  }
}
