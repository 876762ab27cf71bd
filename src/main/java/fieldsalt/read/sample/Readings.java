package fieldsalt.read.sample;

import fieldsalt.facts.Plausibility;
import fieldsalt.finding.Code;
import fieldsalt.quantity.Method;
import fieldsalt.read.file.Notes;
import fieldsalt.read.table.Limits;
import fieldsalt.read.word.PlainText;
import fieldsalt.read.word.ReadingUnit;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Settles the EC of a file's readings in dS/m: units that are not given, dissolved solids, values
 * that no soil gives, and values that look like a slip of their unit. A suspected reading is left
 * out until the user confirms its unit; it is never corrected here.
 */
final class Readings {
  private static final double FAR_LN = Math.log(8);
  private static final int ENOUGH = 5;

  private final ReadingRules rules;
  private final Notes notes;
  private final Map<String, Boolean> usualAsDsPerM = new HashMap<>();
  private final Map<Method, Double> medians = new EnumMap<>(Method.class);

  /**
   * A reading with its unit.
   *
   * @param unit empty where neither the file nor the job gives it
   * @param dSPerM the number in dS/m; without a unit it is taken to be in dS/m already
   */
  private record Value(
      ParsedRow row,
      ParsedRow.Reading reading,
      Method method,
      Optional<ReadingUnit> unit,
      double dSPerM) {
    Plausibility limits() {
      return Plausibility.ofEc(method);
    }

    String inWords() {
      return "EC " + method.label() + " of " + PlainText.number(dSPerM) + " dS/m";
    }
  }

  private Readings(ReadingRules rules, Notes notes) {
    this.rules = rules;
    this.notes = notes;
  }

  static Readings of(List<ParsedRow> rows, ReadingRules rules, Notes notes) {
    Readings readings = new Readings(rules, notes);
    Map<Method, List<Double>> values = new EnumMap<>(Method.class);
    for (ParsedRow row : rows) {
      for (ParsedRow.Reading reading : row.readings()) {
        reading.method().ifPresent(method -> readings.look(row, reading, method, values));
      }
    }
    values.forEach((method, all) -> readings.medians.put(method, median(all)));
    return readings;
  }

  private void look(
      ParsedRow row, ParsedRow.Reading r, Method method, Map<Method, List<Double>> values) {
    if (unit(row, r).isEmpty()) {
      boolean usual = Plausibility.ofEc(method).isUsual(r.raw()) && r.raw() > 0;
      usualAsDsPerM.merge(r.header(), usual, Boolean::logicalAnd);
    }
    double ds = dSPerM(row, r).orElse(0);
    if (r.censored() == Ec.Censored.NO && ds > 0) {
      values.computeIfAbsent(method, m -> new ArrayList<>()).add(ds);
    }
  }

  /** The median of enough values, else 0. */
  private static double median(List<Double> values) {
    return values.size() < ENOUGH ? 0 : values.stream().sorted().toList().get(values.size() / 2);
  }

  private Optional<ReadingUnit> unit(ParsedRow row, ParsedRow.Reading r) {
    return rules
        .confirmed(row.source(), row.id())
        .or(r::unit)
        .or(() -> rules.ruleOf(row.laboratory()).unit());
  }

  private OptionalDouble dSPerM(ParsedRow row, ParsedRow.Reading r) {
    Optional<ReadingUnit> unit = unit(row, r);
    if (unit.filter(ReadingUnit::isDissolvedSolids).isPresent()) {
      OptionalDouble factor = rules.ruleOf(row.laboratory()).tdsFactor();
      return factor.isPresent() ? OptionalDouble.of(r.raw() / factor.getAsDouble()) : factor;
    }
    return OptionalDouble.of(r.raw() * unit.map(u -> u.ec().orElseThrow().dSPerM()).orElse(1.0));
  }

  /** The reading in dS/m; empty, with a finding, if it cannot be used. */
  Optional<Ec> ec(ParsedRow row, ParsedRow.Reading r) {
    Method method = r.method().orElseThrow();
    OptionalDouble ds = dSPerM(row, r);
    if (ds.isEmpty()) {
      notes.row(
          Code.TDS_WITHOUT_FACTOR,
          row.source(),
          "dissolved solids in ppm",
          "left out; set tds-factor in the job (ask the laboratory; 640 is usual below 5 dS/m)");
      return Optional.empty();
    }
    Value value = new Value(row, r, method, unit(row, r), ds.getAsDouble());
    if (value.unit().isEmpty() && !usualAsDsPerM.getOrDefault(r.header(), true)) {
      notes.row(Code.UNIT_MISSING, row.source(), "an EC without a unit", missingUnit(method));
      return Optional.empty();
    }
    return isUsable(value) ? Optional.of(new Ec(value.dSPerM(), r.censored())) : Optional.empty();
  }

  private String missingUnit(Method method) {
    double median = medians.getOrDefault(method, 0.0);
    String likely =
        Optional.of(median)
            .filter(m -> m > 0)
            .flatMap(m -> UnitSlip.of(m, m, method, OptionalDouble.empty()))
            .map(slip -> " (" + slip.what() + "?)")
            .orElse("");
    return "left out: not all values of this column can be dS/m; set defaults: {unit: ...} in the"
        + " job"
        + likely;
  }

  private boolean isUsable(Value value) {
    Plausibility limits = value.limits();
    boolean impossible = limits.refuses(value.dSPerM());
    if (impossible || (!isConfirmed(value) && isSuspect(value))) {
      double raw = value.reading().raw();
      Optional<UnitSlip> slip =
          raw > 0
              ? UnitSlip.of(raw, value.dSPerM(), value.method(), typical(value.method()))
              : Optional.empty();
      slip.ifPresent(s -> noteSlip(value, s));
      if (impossible && slip.isEmpty()) {
        notes.row(
            Code.IMPOSSIBLE,
            value.row().source(),
            value.inWords(),
            "left out; possible is " + Limits.possible(limits));
      }
      if (impossible || slip.isPresent()) {
        return false;
      }
    }
    noteKept(value);
    return true;
  }

  private void noteKept(Value value) {
    if (value.unit().isEmpty()) {
      notes.row(
          Code.UNIT_MISSING,
          value.row().source(),
          "an EC without a unit",
          "taken as dS/m, which fits every value of the column; confirm it with defaults: {unit:"
              + " dS/m}");
    }
    if (!value.limits().isUsual(value.dSPerM())) {
      notes.row(
          Code.UNUSUAL,
          value.row().source(),
          value.inWords(),
          "kept; usual is " + Limits.usual(value.limits()));
    }
  }

  private boolean isConfirmed(Value value) {
    ParsedRow row = value.row();
    Optional<ReadingUnit> general = rules.ruleOf(row.laboratory()).unit();
    return rules.confirmed(row.source(), row.id()).isPresent()
        || (general.isPresent() && general.equals(value.unit()));
  }

  private OptionalDouble typical(Method method) {
    double median = medians.getOrDefault(method, 0.0);
    boolean usable = median > UnitSlip.low(method) && Plausibility.ofEc(method).isUsual(median);
    return usable ? OptionalDouble.of(median) : OptionalDouble.empty();
  }

  private boolean isSuspect(Value value) {
    Method method = value.method();
    double ds = value.dSPerM();
    boolean odd = !value.limits().isUsual(ds) || ds < UnitSlip.low(method);
    OptionalDouble typical = typical(method);
    if (!odd || typical.isEmpty()) {
      return odd && medians.getOrDefault(method, 0.0) > 0;
    }
    double far = Math.log(ds / typical.getAsDouble());
    // a limit of detection may be as low, a limit of the meter as high as it likes
    Ec.Censored censored = value.reading().censored();
    boolean limitOnly =
        (censored == Ec.Censored.BELOW && far < 0) || (censored == Ec.Censored.ABOVE && far > 0);
    return !limitOnly && Math.abs(far) > FAR_LN;
  }

  private void noteSlip(Value value, UnitSlip slip) {
    double raw = value.reading().raw();
    double factor = value.dSPerM() / slip.dSPerM();
    notes.row(
        Code.UNIT_SLIP,
        value.row().source(),
        "EC "
            + value.method().label()
            + " of "
            + PlainText.number(raw)
            + " "
            + value.unit().map(ReadingUnit::label).orElse("(no unit)")
            + ", probably off by a factor of "
            + PlainText.number(Math.max(factor, 1 / factor))
            + ": "
            + slip.inWords(raw)
            + " (= "
            + PlainText.number(slip.dSPerM())
            + " dS/m)",
        "left out until you confirm it: confirm: {\""
            + rules.name(value.row().source())
            + "\": "
            + slip.unit().label()
            + "} in the job, or correct the unit in the file");
  }
}
