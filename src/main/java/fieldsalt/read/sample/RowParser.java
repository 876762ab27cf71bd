package fieldsalt.read.sample;

import fieldsalt.finding.Code;
import fieldsalt.finding.Place;
import fieldsalt.quantity.Texture;
import fieldsalt.read.file.Notes;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.table.ColumnNames;
import fieldsalt.read.table.Columns;
import fieldsalt.read.table.LineCells;
import fieldsalt.read.table.Sheet;
import fieldsalt.read.table.SheetLayout;
import fieldsalt.read.word.DateText;
import fieldsalt.read.word.DepthText;
import fieldsalt.read.word.Memo;
import fieldsalt.read.word.NumberCell;
import fieldsalt.read.word.TextureWords;
import fieldsalt.read.word.UnitText;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/** Reads the lines of a samples sheet cell by cell. */
public final class RowParser {
  private static final int MOST_CORES = 1000;
  private static final double TONS_PER_ACRE = 2.241702; // short tons per acre in Mg/ha

  private static final Set<String> UNCOMPENSATED =
      Set.of("no", "n", "false", "0", "uncompensated", "raw");
  private static final Pattern SIGN =
      Pattern.compile("(?i)\\++|-+|yes|no|none|low|medium|high|trace|slight|strong|moderate|[lmh]");

  private static final int FEWEST_CLAYS = 3;

  private final Sheet sheet;
  private final Columns columns;
  private final ReadingRules rules;
  private final Notes notes;
  private final LineCells cells;
  private final IonCells ions;
  private final SpotCells spots;
  private final ReadingCells readings;
  private final Memo<Optional<Texture>> textures = new Memo<>(TextureWords::of);
  private final Memo<Optional<DepthText>> depths = new Memo<>(DepthText::of);
  private final Memo<Optional<DateText>> dates = new Memo<>(DateText::of);
  private final Memo<String> headerUnits = new Memo<>(u -> UnitText.of(u).orElse(""));
  private final Set<String> schemes = new TreeSet<>();
  private final String fileLaboratory;
  private final int property;
  private final boolean clayInFractions;

  public RowParser(Sheet sheet, Columns columns, ReadingRules rules, Notes notes) {
    this.sheet = sheet;
    this.columns = columns;
    this.rules = rules;
    this.notes = notes;
    this.cells = new LineCells(sheet, columns, notes);
    this.ions = new IonCells(sheet, columns, cells, notes);
    this.spots = new SpotCells(sheet, columns, rules, cells, notes);
    this.readings = new ReadingCells(sheet, columns, rules, cells, notes);
    this.fileLaboratory = rules.laboratoryOf(sheet.file());
    this.property = propertyIndex();
    this.clayInFractions = clayInFractions();
  }

  /** A soil of at most 1 % clay at every site is rarer than a column of fractions. */
  private boolean clayInFractions() {
    List<NumberCell> given =
        sheet.lines().stream()
            .map(line -> columns.cell(line, "clay_pct"))
            .filter(text -> !text.isEmpty())
            .map(text -> NumberCell.parse(text, cells.hasDecimalComma()))
            .filter(NumberCell::isPresent)
            .toList();
    boolean small = given.stream().allMatch(c -> c.value() <= 1 && c.unit().isEmpty());
    if (given.size() < FEWEST_CLAYS || !small) {
      return false;
    }
    notes.finding(
        Code.CLAY_FRACTION,
        Place.file(sheet.file()),
        "no clay above 1 %: these look like fractions of 1",
        "clay is left out; write percent, 25 in place of 0.25");
    return true;
  }

  public List<ParsedRow> read() {
    List<ParsedRow> all = new ArrayList<>();
    for (Sheet.Line line : sheet.lines()) {
      if (line.filled() > 0 || line.point().isPresent()) {
        all.add(line(line));
      }
    }
    if (schemes.size() > 1) {
      notes.finding(
          Code.TEXTURE_SCHEMES,
          Place.file(sheet.file()),
          "words of more than one scheme: " + String.join("; ", schemes),
          "each taken at its word; use one scheme in a file");
    }
    return all;
  }

  private int propertyIndex() {
    if (rules.mapsEc()) {
      return -1;
    }
    Optional<Columns.Column> ours = ColumnNames.ofOurs(rules.property()).flatMap(columns::get);
    if (ours.isPresent()) {
      return ours.get().index();
    }
    for (int i = 0; i < sheet.headers().size(); i++) {
      if (SheetLayout.plain(sheet.headers().get(i).raw())
          .equals(SheetLayout.plain(rules.property()))) {
        return i;
      }
    }
    return -1;
  }

  boolean hasProperty() {
    return property >= 0;
  }

  /** Where a line says it was taken. */
  public Optional<Spot> place(Sheet.Line line) {
    return spots.of(line);
  }

  private ParsedRow line(Sheet.Line line) {
    SourceRow source = sheet.source(line);
    Optional<Spot> spot = spots.of(line);
    String laboratory = laboratory(line);
    return new ParsedRow(
        source,
        id(line, spot),
        spot,
        columns.cell(line, "field"),
        depth(line, source),
        date(line, source),
        laboratory,
        soil(line, source),
        ions.read(line),
        extras(line),
        handling(line),
        readings.of(line, laboratory));
  }

  private String id(Sheet.Line line, Optional<Spot> spot) {
    String id = columns.cell(line, "id");
    if (!id.isEmpty()) {
      return id;
    }
    return spot.map(Spot::toString).orElse(sheet.word() + " " + line.number());
  }

  private Optional<DepthText> depth(Sheet.Line line, SourceRow source) {
    String text = columns.cell(line, "depth");
    if (columns.has("depth_bottom_cm") || (columns.has("depth_top_cm") && text.isEmpty())) {
      return edges(line).or(() -> depthText(text, "depth", source));
    }
    return depthText(text, "depth", source);
  }

  private Optional<DepthText> depthText(String text, String column, SourceRow source) {
    if (text.isEmpty()) {
      return Optional.empty();
    }
    Optional<DepthText> depth = depths.of(text);
    if (depth.isEmpty()) {
      boolean date = DateText.of(text).isPresent();
      notes.row(
          Code.BAD_DEPTH,
          source,
          "the depth '"
              + LineCells.shown(text)
              + "'"
              + (date ? " (a date: did a spreadsheet turn 6-12 into one?)" : ""),
          "the row is left out; write it as 0-30 cm or 0-12 in");
      return Optional.of(new DepthText(Optional.of(1.0), 0, "cm"));
    }
    return depth.map(d -> d.unit().isEmpty() ? withUnit(d, headerUnit(column)) : d);
  }

  private static DepthText withUnit(DepthText depth, String unit) {
    return new DepthText(depth.top(), depth.bottom(), unit);
  }

  private String headerUnit(String column) {
    return columns.has(column) ? headerUnits.of(columns.get(column).orElseThrow().unit()) : "";
  }

  private Optional<DepthText> edges(Sheet.Line line) {
    OptionalDouble top = cells.number(line, "depth_top_cm");
    OptionalDouble bottom = cells.number(line, "depth_bottom_cm");
    if (bottom.isEmpty()) {
      return Optional.empty();
    }
    Optional<Double> above = top.isPresent() ? Optional.of(top.getAsDouble()) : Optional.empty();
    DepthText depth = new DepthText(above, bottom.getAsDouble(), headerUnit("depth_bottom_cm"));
    return Optional.of(depth);
  }

  private Optional<DateText> date(Sheet.Line line, SourceRow source) {
    String text = columns.cell(line, "date");
    if (text.isEmpty()) {
      return Optional.empty();
    }
    Optional<DateText> date = dates.of(text);
    if (date.isEmpty() && !LineCells.isNothing(text)) {
      notes.row(
          Code.BAD_DATE,
          source,
          "the date '" + LineCells.shown(text) + "'",
          "the row is kept without a date; write it as 2026-03-10");
    }
    return date;
  }

  private String laboratory(Sheet.Line line) {
    String cell = columns.cell(line, "lab");
    String said = cell.isEmpty() ? fileLaboratory : cell;
    return rules.laboratory(said).map(ReadingRules.LabRule::name).orElse(said);
  }

  private Soil soil(Sheet.Line line, SourceRow source) {
    double density = headerUnit("bulk_density").equals("kg/m3") ? 1e-3 : 1;
    return new Soil(
        texture(columns.cell(line, "texture"), source),
        clayInFractions ? OptionalDouble.empty() : cells.limited(line, "clay_pct", 1),
        cells.limited(line, "sp_pct", 1),
        cells.limited(line, "gypsum_pct", 1),
        lime(line),
        cells.limited(line, "om_pct", 1),
        cells.limited(line, "bulk_density", density),
        cells.limited(line, "cec_cmol_kg", 1),
        cells.limited(line, "ph", 1));
  }

  private OptionalDouble lime(Sheet.Line line) {
    String text = columns.cell(line, "lime_pct");
    return isSign(text) ? OptionalDouble.empty() : cells.limited(line, "lime_pct", 1);
  }

  private static boolean isSign(String text) {
    return !text.isEmpty() && SIGN.matcher(text).matches();
  }

  private Texture texture(String text, SourceRow source) {
    if (text.isEmpty()) {
      return Texture.UNKNOWN;
    }
    Optional<Texture> texture = textures.of(text);
    if (texture.isEmpty()) {
      notes.row(
          Code.TEXTURE_UNKNOWN,
          source,
          "the texture '" + LineCells.shown(text) + "'",
          "taken as unknown; use USDA classes such as clay loam");
    }
    String scheme = texture.map(TextureWords::scheme).orElse("");
    if (!scheme.isEmpty()) {
      schemes.add(scheme);
    }
    return texture.orElse(Texture.UNKNOWN);
  }

  private Extras extras(Sheet.Line line) {
    String lime = columns.cell(line, "lime_pct");
    NumberCell own = cells.cell(line, property);
    return new Extras(
        own.isPresent() ? OptionalDouble.of(own.value()) : OptionalDouble.empty(),
        ions.carbonate(line),
        gypsumRequirement(line),
        isSign(lime) ? lime : "",
        columns.cell(line, "ph_method"),
        cores(line));
  }

  private OptionalInt cores(Sheet.Line line) {
    OptionalDouble said = cells.number(line, "cores");
    if (said.isEmpty()) {
      return OptionalInt.empty();
    }
    double count = said.getAsDouble();
    if (count >= 1 && count <= MOST_CORES && count == Math.rint(count)) {
      return OptionalInt.of((int) count);
    }
    notes.row(
        Code.IMPOSSIBLE,
        sheet.source(line),
        "'" + LineCells.shown(columns.cell(line, "cores")) + "' cores in a composite",
        "taken as unknown; write a whole number from 1 to " + MOST_CORES);
    return OptionalInt.empty();
  }

  private OptionalDouble gypsumRequirement(Sheet.Line line) {
    OptionalDouble said = cells.number(line, "gypsum_requirement");
    String unit = headerUnit("gypsum_requirement");
    if (said.isEmpty() || unit.equals("t/ha")) {
      return said;
    }
    if (unit.equals("t/ac")) {
      return OptionalDouble.of(said.getAsDouble() * TONS_PER_ACRE);
    }
    notes.row(
        Code.UNIT_MISSING,
        sheet.source(line),
        "a gypsum requirement without t/ha or t/ac in its header",
        "not shown beside ours; write the unit into the header");
    return OptionalDouble.empty();
  }

  private ParsedRow.Handling handling(Sheet.Line line) {
    OptionalDouble said = cells.number(line, "temperature_c");
    boolean fahrenheit = headerUnit("temperature_c").equals("f");
    OptionalDouble celsius =
        fahrenheit && said.isPresent() ? OptionalDouble.of((said.getAsDouble() - 32) / 1.8) : said;
    String compensated = columns.cell(line, "temperature_compensated").toLowerCase(Locale.ROOT);
    String pair = columns.cell(line, "pair").toLowerCase(Locale.ROOT);
    String sampled = columns.cell(line, "sampled").toLowerCase(Locale.ROOT);
    return new ParsedRow.Handling(
        celsius,
        !UNCOMPENSATED.contains(compensated),
        cells.limited(line, "rested_h", 1),
        pair.contains("core") ? PairKind.CORE : PairKind.SPLIT,
        sampled.contains("compos") || sampled.contains("bulk"));
  }
}
