package fieldsalt.surface.site;

/** Square cells, north up; row 0 is the northernmost, column 0 the westernmost. Metres. */
public record Grid(double westM, double northM, double cellM, int columns, int rows) {
  public Grid {
    if (!(cellM > 0) || columns < 1 || rows < 1) {
      throw new IllegalArgumentException(
          "a grid needs cells, was " + columns + " x " + rows + " of " + cellM + " m");
    }
  }

  public double centreX(int column) {
    return westM + (column + 0.5) * cellM;
  }

  public double centreY(int row) {
    return northM - (row + 0.5) * cellM;
  }

  /** A strip of it. */
  public Grid rows(int from, int count) {
    return new Grid(westM, northM - from * cellM, cellM, columns, count);
  }

  public int cells() {
    return Math.multiplyExact(columns, rows);
  }
}
