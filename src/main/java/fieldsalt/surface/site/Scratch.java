package fieldsalt.surface.site;

/**
 * Room for covariances that is used again for the next square of cells: a map of millions of cells
 * would else leave gigabytes to the collector. Serves one thread.
 */
public final class Scratch {
  private double[][] rows = new double[0][];

  /** Arrays of one width; what they hold is anything, and is overwritten by the next call. */
  double[][] rows(int count, int width) {
    if (rows.length != count || (count > 0 && rows[0].length != width)) {
      rows = new double[count][width];
    }
    return rows;
  }
}
