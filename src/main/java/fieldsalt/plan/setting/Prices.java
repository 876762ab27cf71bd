package fieldsalt.plan.setting;

import fieldsalt.finding.InputProblem.Problem;
import fieldsalt.quantity.UnitSystem;
import fieldsalt.quantity.UnitSystem.Amount;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * The user's prices in the user's money. None is shipped as a fact.
 *
 * @param byName one of {@link #NAMES} to its value, at least 0
 */
public record Prices(Map<String, Double> byName) {
  /** Gross value of a full yield, money per ha and year. */
  public static final String CROP = "crop-per-ha";

  public static final String GYPSUM = "gypsum-per-t";
  public static final String HAULAGE = "haulage-per-t";
  public static final String SPREADING = "spreading-per-ha";
  public static final String WATER = "water-per-m3";

  /** Percent of the full yield lost for each ESP point above the target: the user's own figure. */
  public static final String SODIUM_LOSS = "sodium-loss-pct-per-esp";

  /** One more sample, taken and analysed. */
  public static final String SAMPLE = "sample";

  /** Every name, with what it is. */
  public static final Map<String, String> NAMES = names();

  /** Names in units of the United States, and the metric name and factor they turn into. */
  private static final Map<String, Map.Entry<String, Double>> US =
      Map.of(
          "crop-per-acre", Map.entry(CROP, perUnit(Amount.AREA)),
          "gypsum-per-ton", Map.entry(GYPSUM, perUnit(Amount.MASS)),
          "haulage-per-ton", Map.entry(HAULAGE, perUnit(Amount.MASS)),
          "spreading-per-acre", Map.entry(SPREADING, perUnit(Amount.AREA)),
          "water-per-acre-foot", Map.entry(WATER, perUnit(Amount.WATER_VOLUME)));

  public Prices {
    byName = java.util.Collections.unmodifiableMap(new TreeMap<>(byName));
  }

  private static double perUnit(Amount amount) {
    return UnitSystem.US.of(1, amount);
  }

  private static Map<String, String> names() {
    Map<String, String> names = new LinkedHashMap<>();
    names.put(CROP, "gross value of a full yield, per ha and year (or crop-per-acre)");
    names.put(GYPSUM, "gypsum product, per tonne (or gypsum-per-ton)");
    names.put(HAULAGE, "haulage of it, per tonne (or haulage-per-ton)");
    names.put(SPREADING, "one pass of the spreader, per ha (or spreading-per-acre)");
    names.put(WATER, "leaching water, per m3 (or water-per-acre-foot)");
    names.put(SODIUM_LOSS, "percent of the yield lost per ESP point above the target, your figure");
    names.put(SAMPLE, "one more sample, taken and analysed");
    return java.util.Collections.unmodifiableMap(names);
  }

  public static Prices none() {
    return new Prices(Map.of());
  }

  /** From the job: names in either system of units become metric. Unknown names are kept apart. */
  public static Prices of(Map<String, Double> asGiven) {
    Map<String, Double> metric = new TreeMap<>();
    asGiven.forEach(
        (name, value) -> {
          Map.Entry<String, Double> us = US.get(name);
          metric.put(us == null ? name : us.getKey(), us == null ? value : value * us.getValue());
        });
    return new Prices(metric);
  }

  public OptionalDouble get(String name) {
    Double value = byName.get(name);
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  public boolean has(String name) {
    return byName.containsKey(name);
  }

  public double orZero(String name) {
    return byName.getOrDefault(name, 0.0);
  }

  List<Problem> problems() {
    List<Problem> problems = new ArrayList<>();
    byName.forEach(
        (name, value) -> {
          if (!NAMES.containsKey(name)) {
            problems.add(
                new Problem(
                    "job key prices: " + name,
                    "an unknown price",
                    "one of " + String.join(", ", NAMES.keySet()),
                    "Rename or remove it."));
          } else if (!(value >= 0 && value < Double.POSITIVE_INFINITY)) {
            problems.add(
                new Problem(
                    "job key prices: " + name,
                    String.valueOf(value),
                    "a price of at least 0",
                    "Give what it costs you; leave it out if you do not know."));
          }
        });
    return problems;
  }
}
