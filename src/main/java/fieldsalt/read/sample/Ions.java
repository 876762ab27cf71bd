package fieldsalt.read.sample;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * Ions of one row in meq/L (boron in mg/L), ratios as the sheet gives them.
 *
 * @param method what the ions were measured in: {@code paste}, {@code 1:5}, {@code extractable} ...
 *     ; by default the row's own method
 * @param atMost names of ions and ratios whose cell was below detection ("&lt;"), comma-separated,
 *     or empty
 * @param atLeast names of those whose cell was above what the laboratory could read ("&gt;"),
 *     likewise
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
    String atMost,
    String atLeast) {

  /** Nothing known. */
  public static Ions none() {
    OptionalDouble e = OptionalDouble.empty();
    return new Ions("", e, e, e, e, e, e, e, e, e, e, e, "", "");
  }

  /** The same numbers, measured in something else. */
  public Ions withMethod(String other) {
    return new Ions(
        other,
        na,
        ca,
        mg,
        k,
        cl,
        so4,
        hco3,
        boronMgL,
        sar,
        espPct,
        naExtractableCmolKg,
        atMost,
        atLeast);
  }

  /** Whether no ion and no ratio is known. */
  boolean isEmpty() {
    return withMethod("").equals(none());
  }

  public boolean isAtMost(String name) {
    return names(atMost, name);
  }

  public boolean isAtLeast(String name) {
    return names(atLeast, name);
  }

  private static boolean names(String list, String name) {
    return Arrays.stream(list.split(",")).map(String::strip).anyMatch(name::equals);
  }
}
