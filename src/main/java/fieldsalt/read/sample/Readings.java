package fieldsalt.read.sample;

import fieldsalt.facts.Plausibility;
import fieldsalt.finding.Code;
import fieldsalt.quantity.EcUnit;
import fieldsalt.quantity.Method;
import fieldsalt.read.file.Notes;
import fieldsalt.read.table.Limits;
import fieldsalt.read.word.PlainText;
import fieldsalt.read.word.ReadingUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Settles the EC of a file's readings in dS/m: units that nobody names, dissolved solids, values
 * that no soil gives, and values that look like a slip of their unit. A suspected reading is left
 * out until the user confirms its unit; it is never mended.
 */
final class Readings {
  private static final double FAR_LN = Math.log(8);
  private static final double NEAR_LN = Math.log(3);
  private static final int ENOUGH = 5;

  private final ReadingRules rules;
  private final Notes notes;
  private final Map<String, Boolean> plausibleAsDs = new HashMap<>();
  private final Map<Method, Double> medians = new EnumMap<>(Method.class);

  private Readings(ReadingRules rules, Notes notes) {
    this.rules = rules;
    this.notes = notes;
  }

  static Readings of(List<ParsedRow> rows, ReadingRules rules, Notes notes) {
    Readings readings = new Readings(rules, notes);
    readings.lookAtUnits(rows);
    readings.lookAtMedians(rows);
    return readings;
  }

  private void lookAtUnits(List<ParsedRow> rows) {
    for (ParsedRow row : rows) {
      for (ParsedRow.Reading r : row.readings()) {
        if (unit(row, r).isEmpty() && r.method().isPresent()) {
          Plausibility limits = Plausibility.ofEc(r.method().get());
          boolean usual = limits.isUsual(r.raw()) && r.raw() > 0;
          plausibleAsDs.merge(r.header(), usual, (a, b) -> a && b);
        }
      }
    }
  }

  private void lookAtMedians(List<ParsedRow> rows) {
    Map<Method, List<Double>> values = new EnumMap<>(Method.class);
    for (ParsedRow row : rows) {
      for (ParsedRow.Reading r : row.readings()) {
        OptionalDouble ds = stated(row, r);
        if (r.method().isPresent()
            && r.censored() == Ec.Censored.NO
            && ds.isPresent()
            && ds.getAsDouble() > 0) {
          values.computeIfAbsent(r.method().get(), m -> new ArrayList<>()).add(ds.getAsDouble());
        }
      }
    }
    values.forEach((method, all) -> medians.put(method, all.size() < ENOUGH ? 0 : median(all)));
  }

  private static double median(List<Double> values) {
    double[] sorted = values.stream().mapToDouble(Double::doubleValue).toArray();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }

  private Optional<ReadingUnit> unit(ParsedRow row, ParsedRow.Reading r) {
    return rules
        .confirmed(row.source(), row.id())
        .or(r::unit)
        .or(() -> rules.ruleOf(row.laboratory()).unit());
  }

  private OptionalDouble stated(ParsedRow row, ParsedRow.Reading r) {
    Optional<ReadingUnit> unit = unit(row, r);
    if (unit.isEmpty()) {
      return OptionalDouble.of(r.raw());
    }
    if (unit.get().isDissolvedSolids()) {
      OptionalDouble factor = rules.ruleOf(row.laboratory()).tdsFactor();
      return factor.isPresent()
          ? OptionalDouble.of(r.raw() / factor.getAsDouble())
          : OptionalDouble.empty();
    }
    return OptionalDouble.of(r.raw() * unit.get().ec().orElseThrow().dSPerM());
  }

  /** The reading in dS/m; empty, with a finding, if it cannot be used. */
  Optional<Ec> ec(ParsedRow row, ParsedRow.Reading r) {
    Method method = r.method().orElseThrow();
    Optional<ReadingUnit> unit = unit(row, r);
    OptionalDouble ds = stated(row, r);
    if (ds.isEmpty()) {
      notes.row(
          Code.TDS_WITHOUT_FACTOR,
          row.source(),
          "dissolved solids in ppm",
          "left out; say tds-factor in the job (ask the laboratory; 640 is usual below 5 dS/m)");
      return Optional.empty();
    }
    if (unit.isEmpty() && !plausibleAsDs.getOrDefault(r.header(), true)) {
      notes.row(Code.UNIT_MISSING, row.source(), "an EC without a unit", missingUnit(method));
      return Optional.empty();
    }
    return checked(row, r, method, unit, ds.getAsDouble());
  }

  private String missingUnit(Method method) {
    double median = medians.getOrDefault(method, 0.0);
    String likely =
        median > 0
            ? likely(median, median, method, OptionalDouble.empty())
                .map(u -> " (" + u.what() + "?)")
                .orElse("")
            : "";
    return "left out: not all values of this column can be dS/m; say defaults: {unit: ...} in the"
        + " job"
        + likely;
  }

  private Optional<Ec> checked(
      ParsedRow row, ParsedRow.Reading r, Method method, Optional<ReadingUnit> unit, double ds) {
    Plausibility limits = Plausibility.ofEc(method);
    if (limits.refuses(ds)) {
      impossible(row, r, method, unit, ds);
      return Optional.empty();
    }
    if (!isConfirmed(row, unit) && isSuspect(ds, r.censored(), limits, method)) {
      Optional<Likely> likely = likely(r.raw(), ds, method, typical(method));
      if (likely.isPresent()) {
        slip(row, r, unit, ds, likely.get());
        return Optional.empty();
      }
    }
    if (unit.isEmpty()) {
      notes.row(
          Code.UNIT_MISSING,
          row.source(),
          "an EC without a unit",
          "taken as dS/m, which all values of the column can be; say defaults: {unit: dS/m}");
    }
    if (!limits.isUsual(ds)) {
      notes.row(
          Code.UNUSUAL,
          row.source(),
          "EC " + method.label() + " of " + PlainText.number(ds) + " dS/m",
          "kept; usual is " + Limits.usual(limits));
    }
    return Optional.of(new Ec(ds, r.censored()));
  }

  private boolean isConfirmed(ParsedRow row, Optional<ReadingUnit> unit) {
    return rules.confirmed(row.source(), row.id()).isPresent()
        || rules
            .ruleOf(row.laboratory())
            .unit()
            .filter(u -> unit.filter(u::equals).isPresent())
            .isPresent();
  }

  private OptionalDouble typical(Method method) {
    double median = medians.getOrDefault(method, 0.0);
    Plausibility limits = Plausibility.ofEc(method);
    boolean usable = median > low(method) && limits.isUsual(median);
    return usable ? OptionalDouble.of(median) : OptionalDouble.empty();
  }

  private boolean isSuspect(double ds, Ec.Censored censored, Plausibility limits, Method method) {
    boolean odd = !limits.isUsual(ds) || ds < low(method);
    OptionalDouble typical = typical(method);
    if (!odd || typical.isEmpty()) {
      return odd && medians.getOrDefault(method, 0.0) > 0;
    }
    double far = Math.log(ds / typical.getAsDouble());
    // a limit of detection may lie as low, a limit of the meter as high as it likes
    boolean limitOnly =
        (censored == Ec.Censored.BELOW && far < 0) || (censored == Ec.Censored.ABOVE && far > 0);
    return !limitOnly && Math.abs(far) > FAR_LN;
  }

  private static double low(Method method) {
    return method == Method.PASTE ? 0.05 : 0.005;
  }

  private void impossible(
      ParsedRow row, ParsedRow.Reading r, Method method, Optional<ReadingUnit> unit, double ds) {
    Optional<Likely> likely =
        r.raw() > 0 ? likely(r.raw(), ds, method, typical(method)) : Optional.empty();
    if (likely.isPresent()) {
      slip(row, r, unit, ds, likely.get());
    } else {
      notes.row(
          Code.IMPOSSIBLE,
          row.source(),
          "EC " + method.label() + " of " + PlainText.number(ds) + " dS/m",
          "left out; possible is " + Limits.possible(Plausibility.ofEc(method)));
    }
  }

  private void slip(
      ParsedRow row, ParsedRow.Reading r, Optional<ReadingUnit> unit, double ds, Likely likely) {
    double other = likely.dSPerM();
    String by = PlainText.number(Math.max(ds / other, other / ds));
    notes.row(
        Code.UNIT_SLIP,
        row.source(),
        "EC "
            + r.method().orElseThrow().label()
            + " of "
            + PlainText.number(r.raw())
            + " "
            + unit.map(ReadingUnit::label).orElse("(no unit)")
            + ", likely off by a factor of "
            + by
            + ": "
            + likely.inWords(r.raw())
            + " (= "
            + PlainText.number(other)
            + " dS/m)",
        "left out until you confirm it: confirm: {\""
            + rules.name(row.source())
            + "\": "
            + likely.unit().label()
            + "} in the job, or the right unit in the file");
  }

  /**
   * What a number most likely is.
   *
   * @param what the unit, or a slip of the decimal point
   * @param unit to confirm
   */
  private record Likely(String what, EcUnit unit, double dSPerM) {
    String inWords(double raw) {
      return what.equals(unit.label()) ? PlainText.number(raw) + " " + what : what;
    }
  }

  /**
   * The unit (or the place of the point) that makes a number usual, nearest to the file's others.
   */
  private static Optional<Likely> likely(
      double raw, double ds, Method method, OptionalDouble typical) {
    List<Likely> candidates = new ArrayList<>();
    for (EcUnit unit : EcUnit.values()) {
      candidates.add(new Likely(unit.label(), unit, raw * unit.dSPerM()));
    }
    for (double factor : new double[] {10, 100, 1000}) {
      String by = PlainText.number(factor) + " times too ";
      candidates.add(new Likely(by + "large", EcUnit.DS_PER_M, ds / factor));
      candidates.add(new Likely(by + "small", EcUnit.DS_PER_M, ds * factor));
    }
    double middle = typical.orElse(method == Method.PASTE ? 3 : 0.8);
    Plausibility limits = Plausibility.ofEc(method);
    Likely best = null;
    for (Likely candidate : candidates) {
      double far = far(candidate, middle);
      boolean fits =
          typical.isPresent()
              ? far < NEAR_LN
              : limits.isUsual(candidate.dSPerM()) && candidate.dSPerM() >= low(method);
      if (fits && (best == null || far < far(best, middle) - 1e-9)) {
        best = candidate;
      }
    }
    return Optional.ofNullable(best);
  }

  private static double far(Likely candidate, double middle) {
    return Math.abs(Math.log(candidate.dSPerM() / middle));
  }
}
