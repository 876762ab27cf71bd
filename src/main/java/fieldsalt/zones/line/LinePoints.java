package fieldsalt.zones.line;

import java.util.Arrays;

/** Places in steps of a lattice: columns from the west, rows from the north, not whole. */
final class LinePoints {
  private double[] column = new double[64];
  private double[] row = new double[64];
  private int size;

  void add(double c, double r) {
    if (size == column.length) {
      column = Arrays.copyOf(column, size * 2);
      row = Arrays.copyOf(row, size * 2);
    }
    column[size] = c;
    row[size++] = r;
  }

  /** Takes a place: column, row. */
  interface Taker {
    void take(double c, double r);
  }

  void forEach(Taker taker) {
    for (int i = 0; i < size; i++) {
      taker.take(column[i], row[i]);
    }
  }
}
