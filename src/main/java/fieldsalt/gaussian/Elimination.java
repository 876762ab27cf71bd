package fieldsalt.gaussian;

/**
 * Symmetric elimination of some rows out of a larger system, by panels of rows: with A in the first
 * columns and right-hand sides B in the further ones, the rows eliminated become U | L⁻¹B (A = LU,
 * L = U') and the rows below them their Schur complement, what is left of A and B once the
 * eliminated rows are known.
 */
public final class Elimination {
  /** Rows eliminated together: they stay in the nearest caches while the rest is updated. */
  static final int PANEL = 32;

  /** A pivot below this share of its diagonal element is rounding, not information. */
  private static final double SINGULAR = 1e-14;

  private Elimination() {}

  /**
   * Eliminates in place.
   *
   * @param a row by row; of the first {@code rows} columns, which are symmetric, only {@code
   *     a[i][j]}, j >= i, is read and written
   * @param pivots how many rows to eliminate, from the first
   * @param rows how many rows the system has, at least {@code pivots}
   * @param columns how many columns each row has, at least {@code rows}
   * @return the first row that those before it determine (its pivot is below 1e-14 of its diagonal
   *     element, or not a number), or -1; every such row is set to 0, so that it says nothing
   */
  public static int eliminate(double[][] a, int pivots, int rows, int columns) {
    double[] least = new double[pivots];
    for (int i = 0; i < pivots; i++) {
      least[i] = SINGULAR * a[i][i];
    }
    int dropped = -1;
    for (int first = 0; first < pivots; first += PANEL) {
      int last = Math.min(pivots, first + PANEL);
      for (int i = first; i < last; i++) {
        RowKernel.subtract(a[i], a, i, a, first, i, i, columns);
        if (!scale(a[i], i, least[i], columns) && dropped < 0) {
          dropped = i;
        }
      }
      for (int i = last; i < rows; i++) {
        RowKernel.subtract(a[i], a, i, a, first, last, i, columns);
      }
    }
    return dropped;
  }

  private static boolean scale(double[] row, int i, double least, int columns) {
    double pivot = row[i];
    boolean sound = pivot > least && pivot < Double.POSITIVE_INFINITY;
    double inverse = sound ? 1 / Math.sqrt(pivot) : 0;
    for (int j = i; j < columns; j++) {
      row[j] = sound ? row[j] * inverse : 0;
    }
    return sound;
  }
}
