package fieldsalt.plan.gypsum;

import fieldsalt.quantity.Dimension;
import fieldsalt.quantity.UnitSystem;
import java.util.List;
import java.util.OptionalDouble;

/**
 * One zone's line of {@code rates.csv}.
 *
 * @param ratePerPass t/ha of product (pure gypsum where no purity is given)
 * @param low 10 % of the requirement, t/ha; empty where it cannot be told, as are high and chance
 * @param costPerHa by the user's prices; empty without
 */
public record RateRow(
    String field,
    String zone,
    double areaHa,
    double ratePerPass,
    int passes,
    double tonnes,
    OptionalDouble low,
    OptionalDouble high,
    OptionalDouble chance,
    double leachingMm,
    OptionalDouble costPerHa,
    String firstStep,
    boolean draft) {

  /** Column names in a system of units. */
  public static List<String> header(UnitSystem units) {
    return units == UnitSystem.US
        ? List.of(
            "field",
            "zone",
            "area_acres",
            "gypsum_tons_acre_per_pass",
            "passes",
            "gypsum_tons",
            "gypsum_tons_acre_low",
            "gypsum_tons_acre_high",
            "gypsum_chance",
            "leaching_inches",
            "cost_per_acre",
            "first_step",
            "draft")
        : List.of(
            "field",
            "zone",
            "area_ha",
            "gypsum_t_ha_per_pass",
            "passes",
            "gypsum_t",
            "gypsum_t_ha_low",
            "gypsum_t_ha_high",
            "gypsum_chance",
            "leaching_mm",
            "cost_per_ha",
            "first_step",
            "draft");
  }

  /** The line's cells in the order of the header. */
  public List<String> cells(UnitSystem units) {
    return List.of(
        field,
        zone,
        number(units, Dimension.AREA, areaHa, 2),
        number(units, Dimension.RATE, ratePerPass, 3),
        String.valueOf(passes),
        number(units, Dimension.MASS, tonnes, 2),
        number(units, Dimension.RATE, low, 2),
        number(units, Dimension.RATE, high, 2),
        chance.isPresent() ? plain(chance.getAsDouble(), 2) : "",
        number(units, Dimension.WATER_DEPTH, leachingMm, 1),
        number(units, Dimension.MONEY_PER_AREA, costPerHa, 2),
        firstStep,
        draft ? "yes" : "no");
  }

  private static String number(UnitSystem units, Dimension dimension, double value, int decimals) {
    return plain(dimension.in(units, value), decimals);
  }

  private static String number(
      UnitSystem units, Dimension dimension, OptionalDouble value, int decimals) {
    return value.isPresent() ? number(units, dimension, value.getAsDouble(), decimals) : "";
  }

  private static String plain(double value, int decimals) {
    return java.math.BigDecimal.valueOf(value)
        .setScale(decimals, java.math.RoundingMode.HALF_UP)
        .toPlainString();
  }
}
