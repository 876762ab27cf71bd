package fieldsalt.facts;

import fieldsalt.quantity.Method;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * The plausible range of one quantity: beyond {@code warn} a value is used and named, beyond {@code
 * refuse} it is not used. Common practice, no source.
 *
 * @param refuseAt whether the lower limit of refusal is itself refused
 */
public record Plausibility(
    String quantity,
    String unit,
    OptionalDouble warnBelow,
    OptionalDouble warnAbove,
    OptionalDouble refuseBelow,
    boolean refuseAt,
    OptionalDouble refuseAbove) {

  private static final Map<String, Plausibility> ALL = read();

  private static Map<String, Plausibility> read() {
    Map<String, Plausibility> all = new LinkedHashMap<>();
    for (Map<String, String> row : FactTable.rows("plausibility.csv")) {
      all.put(
          row.get("quantity"),
          new Plausibility(
              row.get("quantity"),
              row.get("unit"),
              Cells.number(row.get("warn_below")),
              Cells.number(row.get("warn_above")),
              Cells.number(row.get("refuse_below")),
              row.get("refuse_at").equals("yes"),
              Cells.number(row.get("refuse_above"))));
    }
    return all;
  }

  /** The limits of a quantity, e.g. {@code ec_1:5} or {@code sp_pct}. */
  public static Plausibility of(String quantity) {
    Plausibility found = ALL.get(quantity);
    if (found == null) {
      throw new IllegalArgumentException("no plausibility limits for " + quantity);
    }
    return found;
  }

  /** The limits of a reading of EC by a method. */
  public static Plausibility ofEc(Method method) {
    return of("ec_" + method.label());
  }

  /** Whether a value is outside what can be used at all; a NaN is. */
  public boolean refuses(double value) {
    boolean low =
        refuseBelow.isPresent()
            && (refuseAt ? value <= refuseBelow.getAsDouble() : value < refuseBelow.getAsDouble());
    boolean high = refuseAbove.isPresent() && value > refuseAbove.getAsDouble();
    return Double.isNaN(value) || low || high;
  }

  /** Whether a value can be used and is likely. */
  public boolean isUsual(double value) {
    return !refuses(value) && !doubts(value);
  }

  /** Whether a value is usable but unlikely. */
  public boolean doubts(double value) {
    boolean low = warnBelow.isPresent() && value < warnBelow.getAsDouble();
    boolean high = warnAbove.isPresent() && value > warnAbove.getAsDouble();
    return !refuses(value) && (low || high);
  }
}
