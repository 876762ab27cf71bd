package fieldsalt.read.sample;

import fieldsalt.finding.Code;
import fieldsalt.quantity.DepthRange;
import fieldsalt.quantity.Method;
import fieldsalt.quantity.ReadingKind;
import fieldsalt.read.file.Notes;
import fieldsalt.read.table.SheetCells;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** One samples file to samples: one per reading, and one for a row that brings only properties. */
public final class LaboratorySheet {
  private final SheetCells cells;
  private final ReadingRules rules;
  private final Notes notes;
  private final List<ParsedRow> rows;
  private final boolean hasProperty;
  private final Depths depths;
  private final Dates dates;
  private final Readings readings;

  private LaboratorySheet(SheetCells cells, ReadingRules rules, Notes notes) {
    RowParser parser = new RowParser(cells, rules, notes);
    this.cells = cells;
    this.rules = rules;
    this.notes = notes;
    this.rows = IdDepths.takenOff(parser.read(), rules);
    this.hasProperty = parser.hasProperty();
    this.depths = Depths.of(rows, rules, notes);
    this.dates = Dates.of(rows, rules, notes);
    this.readings = Readings.of(rows, rules, notes);
  }

  /** The usable samples of a sheet, in its order. */
  public static List<UnplacedSample> samples(SheetCells cells, ReadingRules rules, Notes notes) {
    LaboratorySheet sheet = new LaboratorySheet(cells, rules, notes);
    return rules.mapsEc() ? sheet.readings() : sheet.properties();
  }

  private List<UnplacedSample> readings() {
    if (cells.columns().readings().isEmpty()) {
      notes.problem(
          cells.file(),
          "no column of EC readings",
          "a column such as ec, ECe, EC 1:5",
          "Name it in the job: columns: {ec: \"your header\"}.");
      return List.of();
    }
    if (noReadingNamesItsMethod()) {
      notes.problem(
          cells.file(),
          "readings without a method",
          "a method for each: paste, 1:1, 1:2, 1:2.5 or 1:5 (an EC 1:5 read as paste would hide the salt)",
          "Ask the laboratory, then add a column method, or set defaults: {method: ...} or laboratory:"
              + " {NAME: {method: ...}} in the job.");
      return List.of();
    }
    return rows.stream().flatMap(row -> readings(row).stream()).toList();
  }

  private boolean noReadingNamesItsMethod() {
    List<ParsedRow.Reading> all = rows.stream().flatMap(r -> r.readings().stream()).toList();
    return !all.isEmpty() && all.stream().allMatch(r -> r.method().isEmpty());
  }

  private List<UnplacedSample> readings(ParsedRow row) {
    Optional<DepthRange> depth = depths.range(row);
    Optional<LocalDate> date = dates.date(row);
    List<Sample> samples = new ArrayList<>();
    if (depth.isEmpty()) {
      return List.of();
    }
    for (ParsedRow.Reading reading : row.readings()) {
      Optional<Ec> ec = ec(row, reading);
      if (ec.isPresent()) {
        samples.add(sample(row, depth.get(), date, Optional.of(reading), ec));
      }
    }
    if (!samples.isEmpty()) {
      int first = takesIons(samples);
      samples.set(first, withIons(samples.get(first), row, samples.get(first).method()));
    } else if (bringsProperties(row)) {
      samples.add(bare(row, depth.get(), date));
    }
    return samples.stream().map(row::unplaced).toList();
  }

  private Optional<Ec> ec(ParsedRow row, ParsedRow.Reading reading) {
    if (reading.method().isPresent()) {
      return readings.ec(row, reading);
    }
    notes.row(
        Code.METHOD_MISSING,
        row.source(),
        "a reading without a method",
        "left out; fill in the column method, or set defaults: {method: ...}");
    return Optional.empty();
  }

  /** Ions come with the saturation extract where a row has one, else with the first reading. */
  private static int takesIons(List<Sample> samples) {
    return Math.max(
        0, samples.stream().map(Sample::method).toList().indexOf(Optional.of(Method.PASTE)));
  }

  private Sample withIons(Sample sample, ParsedRow row, Optional<Method> own) {
    Ions ions = row.ions();
    if (ions.isEmpty()) {
      return sample;
    }
    Optional<String> usual = rules.ruleOf(row.laboratory()).ionsMethod().map(IonCells::canonical);
    String method = usual.or(() -> own.map(Method::label)).orElse("");
    return sample.withIons(ions.method().isEmpty() ? ions.withMethod(method) : ions);
  }

  private static boolean bringsProperties(ParsedRow row) {
    Soil soil = row.soil();
    return !soil.equals(Soil.unknown().withTexture(soil.texture(), soil.clayPct()))
        || !row.ions().isEmpty();
  }

  private Sample bare(ParsedRow row, DepthRange depth, Optional<LocalDate> date) {
    Sample sample = sample(row, depth, date, Optional.empty(), Optional.empty());
    return withIons(sample, row, rules.ruleOf(row.laboratory()).method());
  }

  private static Sample sample(
      ParsedRow row,
      DepthRange depth,
      Optional<LocalDate> date,
      Optional<ParsedRow.Reading> reading,
      Optional<Ec> ec) {
    ParsedRow.Handling how = row.handling();
    return new Sample(
        row.id(),
        "",
        Optional.empty(),
        depth,
        reading.flatMap(ParsedRow.Reading::method),
        reading.map(ParsedRow.Reading::kind).orElse(ReadingKind.UNKNOWN),
        ec,
        how.temperatureC(),
        how.temperatureCompensated(),
        row.soil(),
        Ions.none(),
        row.laboratory(),
        date,
        how.pair(),
        how.restedH(),
        how.composite(),
        row.source(),
        row.extras());
  }

  private List<UnplacedSample> properties() {
    if (!hasProperty) {
      notes.problem(
          cells.file(),
          "no column " + rules.property(),
          "the column that the job names as property",
          "Correct property: {column: ...} in the job.");
      return List.of();
    }
    List<UnplacedSample> samples = new ArrayList<>();
    for (ParsedRow row : rows) {
      Optional<DepthRange> depth = depths.range(row);
      if (row.extras().property().isEmpty()) {
        notes.row(Code.NO_READING, row.source(), "no number for " + rules.property(), "left out");
      } else {
        depth.ifPresent(d -> samples.add(row.unplaced(bare(row, d, dates.date(row)))));
      }
    }
    return samples;
  }
}
