package fieldsalt.read;

import java.util.OptionalDouble;

/**
 * Ions of one row in meq/L (boron in mg/L), ratios as the sheet gives them.
 *
 * @param method what the ions were measured in: {@code paste}, {@code 1:5}, {@code extractable} ...
 *     ; by default the row's own method
 * @param atMost names of ions whose cell was below detection ("&lt;"), comma-separated, or empty
 */
public record Ions(
    String method,
    OptionalDouble na,
    OptionalDouble ca,
    OptionalDouble mg,
    OptionalDouble k,
    OptionalDouble cl,
    OptionalDouble so4,
    OptionalDouble hco3,
    OptionalDouble boronMgL,
    OptionalDouble sar,
    OptionalDouble espPct,
    OptionalDouble naExtractableCmolKg,
    String atMost) {
  /** Nothing known. */
  public static Ions none() {
    OptionalDouble e = OptionalDouble.empty();
    return new Ions("", e, e, e, e, e, e, e, e, e, e, e, "");
  }
}
