package fieldsalt.read.sample;

/**
 * An electrical conductivity as the laboratory gave it, in dS/m, unconverted.
 *
 * @param dSPerM the number itself; for a censored value the limit
 * @param censored whether the cell has "&lt;" or "&gt;"
 */
public record Ec(double dSPerM, Censored censored) {
  /** Exact, below the printed limit, or above it. */
  public enum Censored {
    NO,
    BELOW,
    ABOVE
  }
}
