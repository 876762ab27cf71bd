package fieldsalt.read.sample;

import fieldsalt.finding.Code;
import fieldsalt.finding.Place;
import fieldsalt.quantity.Texture;
import fieldsalt.read.file.Notes;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.file.TableRow;
import fieldsalt.read.table.SheetCells;
import fieldsalt.read.word.DateText;
import fieldsalt.read.word.DepthText;
import fieldsalt.read.word.NumberCell;
import fieldsalt.read.word.PlainText;
import fieldsalt.read.word.TextureWords;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/** Reads the rows of a samples sheet cell by cell. */
final class RowParser {
  private static final int MOST_CORES = 1000;
  private static final double TONS_PER_ACRE = 2.241702; // short tons per acre in Mg/ha

  private static final Set<String> UNCOMPENSATED =
      Set.of("no", "n", "false", "0", "uncompensated", "raw");
  private static final Pattern SIGN =
      Pattern.compile("(?i)\\++|-+|yes|no|none|low|medium|high|trace|slight|strong|moderate|[lmh]");

  private static final int FEWEST_CLAYS = 3;

  private final SheetCells cells;
  private final ReadingRules rules;
  private final Notes notes;
  private final IonCells ions;
  private final SpotCells spots;
  private final ReadingCells readings;
  private final Map<String, Optional<Texture>> textures = new HashMap<>();
  private final Map<String, Optional<DepthText>> depths = new HashMap<>();
  private final Map<String, Optional<DateText>> dates = new HashMap<>();
  private final Set<String> schemes = new TreeSet<>();
  private final String fileLaboratory;
  private final int property;
  private final boolean clayInFractions;

  RowParser(SheetCells cells, ReadingRules rules, Notes notes) {
    this.cells = cells;
    this.rules = rules;
    this.notes = notes;
    this.ions = new IonCells(cells, notes);
    this.spots = new SpotCells(cells, rules.isLocal(), notes);
    this.readings = new ReadingCells(cells, rules, notes);
    this.fileLaboratory = rules.laboratoryOf(cells.file());
    this.property = rules.mapsEc() ? -1 : cells.index(rules.property());
    this.clayInFractions = clayInFractions();
  }

  /** A soil of at most 1 % clay at every site is rarer than a column of fractions. */
  private boolean clayInFractions() {
    List<NumberCell> given =
        cells.rows().stream()
            .map(row -> cells.parsed(cells.text(row, "clay_pct")))
            .filter(NumberCell::isPresent)
            .toList();
    boolean small = given.stream().allMatch(c -> c.value() <= 1 && c.unit().isEmpty());
    if (given.size() < FEWEST_CLAYS || !small) {
      return false;
    }
    notes.finding(
        Code.CLAY_FRACTION,
        Place.file(cells.file()),
        "no clay above 1 %, which looks like fractions of 1",
        "clay is left out; write percent: 25, not 0.25");
    return true;
  }

  /** What the cells of each row say, in the sheet's order. */
  List<ParsedRow> read() {
    List<ParsedRow> all = new ArrayList<>();
    for (TableRow row : cells.rows()) {
      if (!row.isBlank() || row.point().isPresent()) {
        all.add(parsed(row));
      }
    }
    if (schemes.size() > 1) {
      notes.finding(
          Code.TEXTURE_SCHEMES,
          Place.file(cells.file()),
          "texture words of more than one scheme: " + String.join("; ", schemes),
          "each is used as it is; use one scheme in a file");
    }
    return all;
  }

  boolean hasProperty() {
    return property >= 0;
  }

  private ParsedRow parsed(TableRow row) {
    SourceRow source = cells.source(row);
    Optional<Spot> spot = spots.of(row);
    String laboratory = laboratory(row);
    return new ParsedRow(
        source,
        spots.id(row, spot),
        spot,
        cells.text(row, "field"),
        depth(row, source),
        date(row, source),
        laboratory,
        soil(row, source),
        ions.read(row),
        extras(row),
        handling(row),
        readings.of(row, laboratory));
  }

  private Optional<DepthText> depth(TableRow row, SourceRow source) {
    String text = cells.text(row, "depth");
    if (cells.has("depth_bottom_cm") || (cells.has("depth_top_cm") && text.isEmpty())) {
      return edges(row).or(() -> depthText(text, source));
    }
    return depthText(text, source);
  }

  private Optional<DepthText> depthText(String text, SourceRow source) {
    if (text.isEmpty()) {
      return Optional.empty();
    }
    Optional<DepthText> depth = depths.computeIfAbsent(text, DepthText::of);
    if (depth.isEmpty()) {
      boolean date = DateText.of(text).isPresent();
      notes.row(
          Code.BAD_DEPTH,
          source,
          "the depth '"
              + PlainText.cut(text)
              + "'"
              + (date ? " (a date: did a spreadsheet turn 6-12 into one?)" : ""),
          "the row is left out; write it as 0-30 cm or 0-12 in");
      return Optional.of(DepthText.UNREADABLE);
    }
    return depth.map(d -> d.orIn(cells.unit("depth")));
  }

  private Optional<DepthText> edges(TableRow row) {
    OptionalDouble top = cells.number(row, "depth_top_cm");
    OptionalDouble bottom = cells.number(row, "depth_bottom_cm");
    if (bottom.isEmpty()) {
      return Optional.empty();
    }
    Optional<Double> above = top.stream().boxed().findFirst();
    return Optional.of(new DepthText(above, bottom.getAsDouble(), cells.unit("depth_bottom_cm")));
  }

  private Optional<DateText> date(TableRow row, SourceRow source) {
    String text = cells.text(row, "date");
    if (text.isEmpty()) {
      return Optional.empty();
    }
    Optional<DateText> date = dates.computeIfAbsent(text, DateText::of);
    if (date.isEmpty() && !SheetCells.isNothing(text)) {
      notes.row(
          Code.BAD_DATE,
          source,
          "the date '" + PlainText.cut(text) + "', which cannot be read",
          "the row is kept without a date; write it as 2026-03-10");
    }
    return date;
  }

  private String laboratory(TableRow row) {
    String cell = cells.text(row, "lab");
    return rules.laboratory(cell.isEmpty() ? fileLaboratory : cell);
  }

  private Soil soil(TableRow row, SourceRow source) {
    double density = cells.unit("bulk_density").equals("kg/m3") ? 1e-3 : 1;
    return new Soil(
        texture(cells.text(row, "texture"), source),
        clayInFractions ? OptionalDouble.empty() : cells.limited(row, "clay_pct"),
        cells.limited(row, "sp_pct"),
        cells.limited(row, "gypsum_pct"),
        lime(row),
        cells.limited(row, "om_pct"),
        cells.limited(row, "bulk_density", "bulk_density", density),
        cells.limited(row, "cec_cmol_kg"),
        cells.limited(row, "ph"));
  }

  private OptionalDouble lime(TableRow row) {
    String text = cells.text(row, "lime_pct");
    return isSign(text) ? OptionalDouble.empty() : cells.limited(row, "lime_pct");
  }

  private static boolean isSign(String text) {
    return !text.isEmpty() && SIGN.matcher(text).matches();
  }

  private Texture texture(String text, SourceRow source) {
    if (text.isEmpty()) {
      return Texture.UNKNOWN;
    }
    Optional<Texture> texture = textures.computeIfAbsent(text, TextureWords::of);
    if (texture.isEmpty()) {
      notes.row(
          Code.TEXTURE_UNKNOWN,
          source,
          "the texture '" + PlainText.cut(text) + "', which is not known",
          "taken as unknown; use USDA classes such as clay loam");
    }
    String scheme = texture.map(TextureWords::scheme).orElse("");
    if (!scheme.isEmpty()) {
      schemes.add(scheme);
    }
    return texture.orElse(Texture.UNKNOWN);
  }

  private Extras extras(TableRow row) {
    String lime = cells.text(row, "lime_pct");
    NumberCell own = cells.parsed(row.cell(property));
    return new Extras(
        own.isPresent() ? OptionalDouble.of(own.value()) : OptionalDouble.empty(),
        gypsumRequirement(row),
        isSign(lime) ? lime : "",
        cores(row));
  }

  private OptionalInt cores(TableRow row) {
    OptionalDouble given = cells.number(row, "cores");
    if (given.isEmpty()) {
      return OptionalInt.empty();
    }
    double count = given.getAsDouble();
    if (count >= 1 && count <= MOST_CORES && count == Math.rint(count)) {
      return OptionalInt.of((int) count);
    }
    notes.row(
        Code.IMPOSSIBLE,
        cells.source(row),
        "'" + PlainText.cut(cells.text(row, "cores")) + "' cores in a composite",
        "taken as unknown; write a whole number from 1 to " + MOST_CORES);
    return OptionalInt.empty();
  }

  private OptionalDouble gypsumRequirement(TableRow row) {
    OptionalDouble given = cells.number(row, "gypsum_requirement");
    String unit = cells.unit("gypsum_requirement");
    if (given.isEmpty() || unit.equals("t/ha")) {
      return given;
    }
    if (unit.equals("t/ac")) {
      return OptionalDouble.of(given.getAsDouble() * TONS_PER_ACRE);
    }
    notes.row(
        Code.UNIT_MISSING,
        cells.source(row),
        "a gypsum requirement without t/ha or t/ac in its header",
        "not shown beside the plan's; write the unit into the header");
    return OptionalDouble.empty();
  }

  private ParsedRow.Handling handling(TableRow row) {
    OptionalDouble given = cells.number(row, "temperature_c");
    boolean fahrenheit = cells.unit("temperature_c").equals("f");
    OptionalDouble celsius =
        fahrenheit && given.isPresent()
            ? OptionalDouble.of((given.getAsDouble() - 32) / 1.8)
            : given;
    String compensated = cells.text(row, "temperature_compensated").toLowerCase(Locale.ROOT);
    String pair = cells.text(row, "pair").toLowerCase(Locale.ROOT);
    String sampled = cells.text(row, "sampled").toLowerCase(Locale.ROOT);
    return new ParsedRow.Handling(
        celsius,
        !UNCOMPENSATED.contains(compensated),
        cells.limited(row, "rested_h"),
        pair.contains("core") ? PairKind.CORE : PairKind.SPLIT,
        sampled.contains("compos") || sampled.contains("bulk"));
  }
}
