package fieldsalt.zones.line;

import fieldsalt.zones.lattice.Lattice;
import fieldsalt.zones.lattice.Nodes;
import fieldsalt.zones.lattice.Tiles;
import java.util.Arrays;

/**
 * One square of a lattice with enough ground around it to tell, of every node in it, how far it
 * lies beyond the opening of its own piece: what discs of the machine's width cover that lie within
 * the piece. All distances are straight and in steps.
 */
final class OpeningTile {
  private final Lattice lattice;
  private final boolean[] inside;
  private final double radius;
  private final double limit;

  private final int firstRow;
  private final int firstColumn;
  private final int rows;
  private final int columns;
  private final float[] toLine;
  private final boolean[] core;

  /**
   * @param limit distance beyond an opening from which on it counts as infinite
   */
  OpeningTile(Tiles tiles, int tile, boolean[] inside, double radius, double limit) {
    this.lattice = tiles.lattice();
    this.inside = inside;
    this.radius = radius;
    this.limit = limit;
    firstRow = Math.max(0, tiles.firstRow(tile) - tiles.halo());
    firstColumn = Math.max(0, tiles.firstColumn(tile) - tiles.halo());
    rows = Math.min(lattice.rows(), tiles.endRow(tile) + tiles.halo()) - firstRow;
    columns = Math.min(lattice.columns(), tiles.endColumn(tile) + tiles.halo()) - firstColumn;
    toLine = new float[rows * columns];
    core = new boolean[toLine.length];
    Arrays.fill(toLine, Float.POSITIVE_INFINITY);
  }

  private int global(int row, int column) {
    return (firstRow + row) * lattice.columns() + firstColumn + column;
  }

  /** Adds a point of a line, in steps of the whole lattice. */
  void line(double column, double row) {
    double c = column - firstColumn;
    double r = row - firstRow;
    double reach = radius + 2;
    int west = Math.max(0, (int) Math.ceil(c - reach));
    int east = Math.min(columns - 1, (int) Math.floor(c + reach));
    int south = Math.min(rows - 1, (int) Math.floor(r + reach));
    for (int y = Math.max(0, (int) Math.ceil(r - reach)); y <= south; y++) {
      double down = (y - r) * (y - r);
      for (int x = west; x <= east; x++) {
        double square = down + (x - c) * (x - c);
        int i = y * columns + x;
        if (square < toLine[i]) {
          toLine[i] = (float) square;
        }
      }
    }
  }

  /** Adds the lines between pieces. */
  void linesBetween(int[] piece, Nodes nodes) {
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        int i = global(row, column);
        if (piece[i] >= 0) {
          boolean east = column + 1 < columns && isOther(piece, i, i + 1);
          boolean south = row + 1 < rows && isOther(piece, i, i + lattice.columns());
          if (east) {
            line(firstColumn + column + nodes.where(i, i + 1), firstRow + (double) row);
          }
          if (south) {
            line(
                firstColumn + (double) column,
                firstRow + row + nodes.where(i, i + lattice.columns()));
          }
        }
      }
    }
  }

  private static boolean isOther(int[] piece, int i, int next) {
    return piece[next] >= 0 && piece[next] != piece[i];
  }

  /** Whether every node in reach is of one piece: then no line is near. */
  boolean isOnePiece(int[] piece) {
    int first = piece[global(0, 0)];
    for (int row = 0; row < rows; row++) {
      int start = global(row, 0);
      for (int i = start; i < start + columns; i++) {
        if (piece[i] != first) {
          return false;
        }
      }
    }
    return true;
  }

  /** Ends the adding of lines. */
  void settle() {
    for (int i = 0; i < toLine.length; i++) {
      toLine[i] = (float) Math.sqrt(toLine[i]);
      core[i] = toLine[i] >= radius && inside[global(i / columns, i % columns)];
    }
  }

  /** Hands out distances to lines, of the nodes of the tile itself. */
  void distances(Tiles tiles, int tile, float[] result) {
    copy(tiles, tile, toLine, result);
  }

  /**
   * Works out how far nodes lie beyond the opening: 0 or less within it, infinite from the limit
   * on.
   *
   * @param piece of each node of the whole lattice
   * @param enough what is surely nearer than this need not be told exactly
   */
  void beyond(Tiles tiles, int tile, int[] piece, double enough, float[] result) {
    int endColumn = tiles.endColumn(tile);
    for (int row = tiles.firstRow(tile); row < tiles.endRow(tile); row++) {
      for (int column = tiles.firstColumn(tile); column < endColumn; column++) {
        int at = row * lattice.columns() + column;
        int i = (row - firstRow) * columns + column - firstColumn;
        boolean within =
            core[i]
                || !inside[at]
                || isSurelyNear(row - firstRow, column - firstColumn, piece, enough);
        result[at] = within ? -1 : exact(row - firstRow, column - firstColumn, piece);
      }
    }
  }

  /** Looks for a disc of the opening in eight directions. */
  private boolean isSurelyNear(int row, int column, int[] piece, double enough) {
    int mine = piece[global(row, column)];
    int straight = (int) (radius + enough);
    int slant = (int) ((radius + enough) * Math.sqrt(0.5));
    for (int k = 0; k < 9; k++) {
      int down = k / 3 - 1;
      int right = k % 3 - 1;
      int step = down == 0 || right == 0 ? straight : slant;
      int r = row + down * step;
      int c = column + right * step;
      if (k != 4 && r >= 0 && c >= 0 && r < rows && c < columns) {
        if (core[r * columns + c] && piece[global(r, c)] == mine) {
          return true;
        }
      }
    }
    return false;
  }

  private float exact(int row, int column, int[] piece) {
    int mine = piece[global(row, column)];
    int reach = (int) Math.floor(radius + 2 + limit);
    int west = Math.max(0, column - reach);
    int east = Math.min(columns - 1, column + reach);
    double best = Double.POSITIVE_INFINITY;
    for (int y = Math.max(0, row - reach); y <= Math.min(rows - 1, row + reach); y++) {
      int down = (y - row) * (y - row);
      int away = global(y, 0);
      for (int x = west; x <= east; x++) {
        if (core[y * columns + x] && piece[away + x] == mine) {
          double size = Math.min(toLine[y * columns + x], radius + 2);
          double square = (double) down + (x - column) * (x - column);
          double known = Math.min(best, limit) + size;
          if (known > 0 && square < known * known) {
            best = Math.sqrt(square) - size;
          }
        }
      }
    }
    return (float) best;
  }

  private void copy(Tiles tiles, int tile, float[] from, float[] to) {
    int width = tiles.endColumn(tile) - tiles.firstColumn(tile);
    for (int row = tiles.firstRow(tile); row < tiles.endRow(tile); row++) {
      System.arraycopy(
          from,
          (row - firstRow) * columns + tiles.firstColumn(tile) - firstColumn,
          to,
          row * lattice.columns() + tiles.firstColumn(tile),
          width);
    }
  }
}
