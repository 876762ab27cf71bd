package fieldsalt.zones;

import java.util.Arrays;

/** Places in steps of a lattice: columns from the west, rows from the north, not whole. */
final class LinePoints {
  private double[] column = new double[1024];
  private double[] row = new double[1024];
  private int size;

  void add(double c, double r) {
    if (size == column.length) {
      column = Arrays.copyOf(column, size * 2);
      row = Arrays.copyOf(row, size * 2);
    }
    column[size] = c;
    row[size++] = r;
  }

  void addAll(LinePoints other) {
    for (int i = 0; i < other.size; i++) {
      add(other.column[i], other.row[i]);
    }
  }

  double[] columns() {
    return Arrays.copyOf(column, size);
  }

  double[] rows() {
    return Arrays.copyOf(row, size);
  }
}
