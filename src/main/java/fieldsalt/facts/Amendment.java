package fieldsalt.facts;

import java.util.List;

/**
 * Another amendment that brings calcium to the exchange.
 *
 * @param tPerTGypsum tonnes that do the work of one tonne of pure gypsum
 * @param needsLime whether it works only where the soil holds free lime
 */
public record Amendment(String name, double tPerTGypsum, boolean needsLime) {
  private static final List<Amendment> ALL =
      FactTable.rows("amendments.csv").stream()
          .map(
              row ->
                  new Amendment(
                      row.get("amendment"),
                      Double.parseDouble(row.get("t_per_t_gypsum")),
                      row.get("needs_lime").equals("yes")))
          .toList();

  /** Every amendment of the table. */
  public static List<Amendment> all() {
    return ALL;
  }
}
