package fieldsalt.surface.site;

import org.locationtech.jts.geom.Envelope;

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

  /**
   * The cells that a box touches: first column and that after the last, first row and that after
   * the last; none where the box lies outside.
   */
  public int[] boxOf(Envelope box) {
    return new int[] {
      within(Math.floor((box.getMinX() - westM) / cellM), columns),
      within(Math.ceil((box.getMaxX() - westM) / cellM), columns),
      within(Math.floor((northM - box.getMaxY()) / cellM), rows),
      within(Math.ceil((northM - box.getMinY()) / cellM), rows)
    };
  }

  private static int within(double line, int most) {
    return (int) Math.max(0, Math.min(most, line));
  }

  /** A strip of it. */
  public Grid rows(int from, int count) {
    return new Grid(westM, northM - from * cellM, cellM, columns, count);
  }

  public int cells() {
    return Math.multiplyExact(columns, rows);
  }
}
