package fieldsalt.zones.lattice;

/** Points of a square lattice in metres; row 0 is the northernmost, column 0 the westernmost. */
public record Lattice(double westM, double northM, double stepM, int columns, int rows) {
  public int columnOf(int node) {
    return node % columns;
  }

  public int rowOf(int node) {
    return node / columns;
  }

  public double x(int node) {
    return westM + columnOf(node) * stepM;
  }

  public double y(int node) {
    return northM - rowOf(node) * stepM;
  }

  public int nodes() {
    return Math.multiplyExact(columns, rows);
  }

  /** The node nearest to a place, kept inside. */
  public int nearest(double xM, double yM) {
    long column = Math.round((xM - westM) / stepM);
    long row = Math.round((northM - yM) / stepM);
    return (int) Math.max(0, Math.min(rows - 1L, row)) * columns
        + (int) Math.max(0, Math.min(columns - 1L, column));
  }
}
