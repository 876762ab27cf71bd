package fieldsalt.read.sample;

import fieldsalt.finding.Code;
import fieldsalt.geo.PlaceM;
import fieldsalt.quantity.DepthRange;
import fieldsalt.quantity.Method;
import fieldsalt.quantity.ReadingKind;
import fieldsalt.read.file.Notes;
import fieldsalt.read.table.Columns;
import fieldsalt.read.table.Sheet;
import fieldsalt.read.word.DepthText;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;

/** One samples file to rows: a row per reading, and one for a line that brings only properties. */
public final class LaboratorySheet {
  private final ReadingRules rules;
  private final Notes notes;
  private final List<ParsedRow> lines;
  private final boolean hasProperty;
  private final boolean depthsInIds;
  private final Depths depths;
  private final Dates dates;
  private final Readings readings;

  private LaboratorySheet(Sheet sheet, Columns columns, ReadingRules rules, Notes notes) {
    RowParser reader = new RowParser(sheet, columns, rules, notes);
    this.rules = rules;
    this.notes = notes;
    List<ParsedRow> read = reader.read();
    this.depthsInIds = !rules.idPatternGiven() && depthsInIds(read, rules);
    this.lines = read.stream().map(this::withoutSuffix).toList();
    this.hasProperty = reader.hasProperty();
    this.depths = Depths.of(lines, rules, notes);
    this.dates = Dates.of(lines, rules, notes);
    this.readings = Readings.of(lines, rules, notes);
  }

  /** The usable rows of a sheet, in its order. */
  public static List<UnplacedSample> rows(
      Sheet sheet, Columns columns, ReadingRules rules, Notes notes) {
    LaboratorySheet file = new LaboratorySheet(sheet, columns, rules, notes);
    return rules.mapsEc() ? file.rows(sheet, columns) : file.propertyRows(sheet);
  }

  /** The id without the depth at its end; that depth where the row gives none. */
  private ParsedRow withoutSuffix(ParsedRow line) {
    Matcher m = rules.idPattern().matcher(line.id());
    if (!m.find() || m.groupCount() < 1 || m.group(1) == null || m.group(1).isBlank()) {
      return line;
    }
    if (rules.idPatternGiven()) {
      return renamed(line, m.group(1), line.depth());
    }
    Optional<DepthText> suffix = DepthText.of(m.group(2));
    boolean meant =
        suffix.isPresent()
            && (depthsInIds
                || !suffix.get().unit().isEmpty()
                || isSame(suffix.get(), line.depth())
                || rules.isSiteOnly(m.group(1).strip(), line.id()));
    return meant
        ? renamed(line, m.group(1), line.depth().isPresent() ? line.depth() : suffix)
        : line;
  }

  private static boolean isSame(DepthText suffix, Optional<DepthText> depth) {
    return depth
        .filter(d -> d.bottom() == suffix.bottom() && d.top().equals(suffix.top()))
        .isPresent();
  }

  /**
   * Whether the ids carry the layers: no depth elsewhere, every id ends in one, some start at 0.
   */
  private static boolean depthsInIds(List<ParsedRow> lines, ReadingRules rules) {
    boolean fromTop = false;
    for (ParsedRow line : lines) {
      Matcher m = rules.idPattern().matcher(line.id());
      Optional<DepthText> suffix =
          m.find() && m.groupCount() > 1 ? DepthText.of(m.group(2)) : Optional.empty();
      if (line.depth().isPresent() || suffix.flatMap(DepthText::top).isEmpty()) {
        return false;
      }
      fromTop |= suffix.get().top().get() == 0;
    }
    return fromTop;
  }

  private static ParsedRow renamed(ParsedRow line, String id, Optional<DepthText> depth) {
    return new ParsedRow(
        line.source(),
        id.strip(),
        line.spot(),
        line.fieldSaid(),
        depth,
        line.date(),
        line.laboratory(),
        line.soil(),
        line.ions(),
        line.extras(),
        line.handling(),
        line.readings());
  }

  private List<UnplacedSample> rows(Sheet sheet, Columns columns) {
    if (columns.readings().isEmpty()) {
      notes.problem(
          sheet.file(),
          "no column of EC readings",
          "a column such as ec, ECe, EC 1:5",
          "Name it in the job: columns: {ec: \"your header\"}.");
      return List.of();
    }
    if (nobodySaysMethod()) {
      methodProblem(sheet);
      return List.of();
    }
    List<UnplacedSample> rows = new ArrayList<>();
    lines.forEach(line -> addRows(line, rows));
    return rows;
  }

  private boolean nobodySaysMethod() {
    boolean any = false;
    for (ParsedRow line : lines) {
      for (ParsedRow.Reading reading : line.readings()) {
        if (reading.method().isPresent()) {
          return false;
        }
        any = true;
      }
    }
    return any;
  }

  private void methodProblem(Sheet sheet) {
    notes.problem(
        sheet.file(),
        "readings of which none says by which method it was made",
        "a method for each: paste, 1:1, 1:2, 1:2.5 or 1:5 (an EC 1:5 read as paste would hide the salt)",
        "Ask the laboratory, then add a column method, or say defaults: {method: ...} or laboratory:"
            + " {NAME: {method: ...}} in the job.");
  }

  private void addRows(ParsedRow line, List<UnplacedSample> rows) {
    Optional<DepthRange> depth = depths.range(line);
    Optional<LocalDate> date = dates.date(line);
    if (depth.isEmpty()) {
      return;
    }
    List<ParsedRow.Reading> usable = new ArrayList<>();
    List<Ec> values = new ArrayList<>();
    for (ParsedRow.Reading reading : line.readings()) {
      if (reading.method().isEmpty()) {
        notes.row(
            Code.METHOD_MISSING,
            line.source(),
            "a reading that says no method",
            "left out; fill in the column method, or say defaults: {method: ...}");
      } else {
        Optional<Ec> ec = readings.ec(line, reading);
        if (ec.isPresent()) {
          usable.add(reading);
          values.add(ec.get());
        }
      }
    }
    int withIons = ionsOf(usable);
    for (int i = 0; i < usable.size(); i++) {
      rows.add(row(line, depth.get(), date, usable.get(i), values.get(i), i == withIons));
    }
    if (usable.isEmpty() && bringsProperties(line)) {
      rows.add(bare(line, depth.get(), date));
    }
  }

  /** Ions come with the saturation extract where a line has one, else with the first reading. */
  private static int ionsOf(List<ParsedRow.Reading> readings) {
    for (int i = 0; i < readings.size(); i++) {
      if (readings.get(i).method().filter(m -> m == Method.PASTE).isPresent()) {
        return i;
      }
    }
    return 0;
  }

  private static boolean bringsProperties(ParsedRow line) {
    return !line.soil()
            .equals(Soil.unknown().withTexture(line.soil().texture(), line.soil().clayPct()))
        || !line.ions().withMethod("").equals(Ions.none());
  }

  private UnplacedSample row(
      ParsedRow line,
      DepthRange depth,
      Optional<LocalDate> date,
      ParsedRow.Reading reading,
      Ec ec,
      boolean withIons) {
    Ions ions = withIons ? ionsWith(line, reading.method().orElseThrow().label()) : Ions.none();
    return sample(line, depth, date, reading.method(), reading.kind(), Optional.of(ec), ions);
  }

  private UnplacedSample bare(ParsedRow line, DepthRange depth, Optional<LocalDate> date) {
    Optional<Method> method = Optional.empty();
    return sample(
        line,
        depth,
        date,
        method,
        ReadingKind.UNKNOWN,
        Optional.empty(),
        ionsWith(line, rules.method(line.laboratory()).map(Method::label).orElse("")));
  }

  private Ions ionsWith(ParsedRow line, String own) {
    String said = line.ions().method();
    String method =
        said.isEmpty()
            ? rules.ionsMethod(line.laboratory()).map(IonCells::canonical).orElse(own)
            : said;
    Ions none = line.ions().withMethod("");
    return none.equals(Ions.none()) ? Ions.none() : line.ions().withMethod(method);
  }

  private static UnplacedSample sample(
      ParsedRow line,
      DepthRange depth,
      Optional<LocalDate> date,
      Optional<Method> method,
      ReadingKind kind,
      Optional<Ec> ec,
      Ions ions) {
    Optional<PlaceM> nowhere = Optional.empty();
    ParsedRow.Handling how = line.handling();
    Sample sample =
        new Sample(
            line.id(),
            "",
            nowhere,
            depth,
            method,
            kind,
            ec,
            how.temperatureC(),
            how.temperatureCompensated(),
            line.soil(),
            ions,
            line.laboratory(),
            date,
            how.pair(),
            how.restedH(),
            how.composite(),
            line.source(),
            line.extras());
    return new UnplacedSample(sample, line.spot(), line.fieldSaid());
  }

  private List<UnplacedSample> propertyRows(Sheet sheet) {
    if (!hasProperty) {
      notes.problem(
          sheet.file(),
          "no column " + rules.property(),
          "the column that the job names as property",
          "Mend property: {column: ...} in the job.");
      return List.of();
    }
    List<UnplacedSample> rows = new ArrayList<>();
    for (ParsedRow line : lines) {
      Optional<DepthRange> depth = depths.range(line);
      if (line.extras().property().isEmpty()) {
        notes.row(Code.NO_READING, line.source(), "no number for " + rules.property(), "left out");
      } else {
        depth.ifPresent(d -> rows.add(bare(line, d, dates.date(line))));
      }
    }
    return rows;
  }
}
