package fieldsalt.basis.setting;

/**
 * A laboratory's own error of one kind of reading, as standard deviations of the natural logarithm.
 *
 * @param shared the same for all rows of one laboratory and method, at least 0
 * @param own new in every row, at least 0
 */
public record ReadingError(double shared, double own) {
  public ReadingError {
    if (!(shared >= 0 && own >= 0)) {
      throw new IllegalArgumentException("errors must be at least 0, were " + shared + ", " + own);
    }
  }

  /** The same proportion of shared to own, for a given total. */
  public ReadingError withTotal(double sdLn) {
    double total = Math.hypot(shared, own);
    return total == 0
        ? new ReadingError(0, sdLn)
        : new ReadingError(shared * sdLn / total, own * sdLn / total);
  }
}
