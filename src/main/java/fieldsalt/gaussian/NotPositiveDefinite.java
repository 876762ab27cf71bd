package fieldsalt.gaussian;

/**
 * A matrix given as a covariance is none, or is singular to working precision: two rows say exactly
 * the same and have no error of their own.
 */
public final class NotPositiveDefinite extends ArithmeticException {
  private static final long serialVersionUID = 1L;

  private final int row;

  NotPositiveDefinite(int row, double pivot) {
    super("not positive definite: pivot of row " + row + " was " + pivot);
    this.row = row;
  }

  NotPositiveDefinite(int row) {
    super("not positive definite: row " + row + " is determined by those before it");
    this.row = row;
  }

  /** The first row, from 0, that the rows before it determine. */
  public int row() {
    return row;
  }
}
