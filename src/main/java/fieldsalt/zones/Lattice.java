package fieldsalt.zones;

/** Points of a square lattice in metres; row 0 is the northernmost, column 0 the westernmost. */
record Lattice(double westM, double northM, double stepM, int columns, int rows) {
  int columnOf(int node) {
    return node % columns;
  }

  int rowOf(int node) {
    return node / columns;
  }

  double x(int node) {
    return westM + columnOf(node) * stepM;
  }

  double y(int node) {
    return northM - rowOf(node) * stepM;
  }

  int nodes() {
    return Math.multiplyExact(columns, rows);
  }

  /** The node nearest to a place, kept inside. */
  int nearest(double xM, double yM) {
    long column = Math.round((xM - westM) / stepM);
    long row = Math.round((northM - yM) / stepM);
    return (int) Math.max(0, Math.min(rows - 1L, row)) * columns
        + (int) Math.max(0, Math.min(columns - 1L, column));
  }
}
