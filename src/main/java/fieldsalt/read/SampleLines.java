package fieldsalt.read;

import fieldsalt.quantity.Method;
import fieldsalt.quantity.ReadingKind;
import fieldsalt.quantity.Texture;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/** Reads the lines of a samples sheet cell by cell. */
final class SampleLines {
  private static final double TONS_PER_ACRE = 2.241702; // short tons per acre in Mg/ha

  private static final Set<String> UNCOMPENSATED =
      Set.of("no", "n", "false", "0", "uncompensated", "raw");
  private static final Pattern SIGN =
      Pattern.compile("(?i)\\++|-+|yes|no|none|low|medium|high|trace|slight|strong|moderate|[lmh]");

  private final Sheet sheet;
  private final Columns columns;
  private final SampleRules rules;
  private final Notes notes;
  private final LineCells cells;
  private final IonCells ions;
  private final Memo<Optional<Texture>> textures = new Memo<>(TextureWords::of);
  private final Memo<Optional<DepthText>> depths = new Memo<>(DepthText::of);
  private final Memo<Optional<DateText>> dates = new Memo<>(DateText::of);
  private final Memo<MethodWords.Said> methods = new Memo<>(MethodWords::parse);
  private final Memo<ReadingKind> kinds = new Memo<>(MethodWords::reading);
  private final Memo<String> headerUnits = new Memo<>(u -> UnitText.of(u).orElse(""));
  private final Memo<Optional<ReadingUnit>> units = new Memo<>(ReadingUnit::of);
  private final Set<String> schemes = new TreeSet<>();
  private final String fileLaboratory;
  private final int property;

  SampleLines(Sheet sheet, Columns columns, SampleRules rules, Notes notes) {
    this.sheet = sheet;
    this.columns = columns;
    this.rules = rules;
    this.notes = notes;
    this.cells = new LineCells(sheet, columns, notes);
    this.ions = new IonCells(sheet, columns, cells, notes);
    this.fileLaboratory = rules.laboratoryOf(sheet.file());
    this.property = propertyIndex();
  }

  List<SampleLine> read() {
    List<SampleLine> all = new ArrayList<>();
    for (Sheet.Line line : sheet.lines()) {
      if (line.filled() > 0 || line.point().isPresent()) {
        all.add(line(line));
      }
    }
    if (schemes.size() > 1) {
      notes.finding(
          "texture-schemes",
          sheet.file(),
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
  Optional<Spot> place(Sheet.Line line) {
    return spot(line, sheet.source(line));
  }

  private SampleLine line(Sheet.Line line) {
    SourceRow source = sheet.source(line);
    Optional<Spot> spot = spot(line, source);
    return new SampleLine(
        source,
        id(line, spot),
        spot,
        columns.cell(line, "field"),
        depth(line, source),
        date(line, source),
        laboratory(line),
        soil(line, source),
        ions.read(line),
        extras(line),
        handling(line),
        readings(line, source));
  }

  private String id(Sheet.Line line, Optional<Spot> spot) {
    String id = columns.cell(line, "id");
    if (!id.isEmpty()) {
      return id;
    }
    return spot.map(s -> LineCells.plain(s.a()) + " " + LineCells.plain(s.b()))
        .orElse(sheet.word() + " " + line.number());
  }

  private Optional<Spot> spot(Sheet.Line line, SourceRow source) {
    if (line.point().isPresent()) {
      return checked(Spot.lonLat(line.point().get().getX(), line.point().get().getY()), source);
    }
    if (columns.has("lon") && columns.has("lat")) {
      String lon = columns.cell(line, "lon");
      String lat = columns.cell(line, "lat");
      return lon.isEmpty() && lat.isEmpty()
          ? Optional.empty()
          : spot(
              Degrees.of(lon, cells.hasDecimalComma()),
              Degrees.of(lat, cells.hasDecimalComma()),
              lon + ", " + lat,
              true,
              source);
    }
    String x = columns.cell(line, "x");
    String y = columns.cell(line, "y");
    return x.isEmpty() && y.isEmpty()
        ? Optional.empty()
        : spot(cells.number(line, "x"), cells.number(line, "y"), x + ", " + y, false, source);
  }

  private Optional<Spot> spot(
      OptionalDouble a, OptionalDouble b, String text, boolean degrees, SourceRow source) {
    if (a.isEmpty() || b.isEmpty()) {
      notes.row(
          "bad-coordinate",
          source,
          "the coordinate '" + LineCells.shown(text) + "'",
          "the row has no place; write degrees (or metres with crs) as numbers");
      return Optional.empty();
    }
    return checked(new Spot(degrees, a.getAsDouble(), b.getAsDouble()), source);
  }

  private Optional<Spot> checked(Spot spot, SourceRow source) {
    if (!spot.degrees() || rules.isLocal()) {
      return Optional.of(new Spot(spot.degrees() && !rules.isLocal(), spot.a(), spot.b()));
    }
    boolean nowhere = spot.a() == 0 && spot.b() == 0;
    boolean outside = !(Math.abs(spot.a()) <= 180 && Math.abs(spot.b()) <= 90);
    if (nowhere || outside) {
      boolean swapped = Math.abs(spot.a()) <= 90 && Math.abs(spot.b()) <= 180;
      String why =
          nowhere
              ? " (a receiver without a fix)"
              : swapped ? " (latitude and longitude swapped?)" : " (metres? then x, y and crs)";
      notes.row(
          "bad-coordinate",
          source,
          "longitude "
              + LineCells.plain(spot.a())
              + ", latitude "
              + LineCells.plain(spot.b())
              + why,
          "the row has no place");
      return Optional.empty();
    }
    return Optional.of(spot);
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
          "bad-depth",
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
          "bad-date",
          source,
          "the date '" + LineCells.shown(text) + "'",
          "the row is kept without a date; write it as 2026-03-10");
    }
    return date;
  }

  private String laboratory(Sheet.Line line) {
    String cell = columns.cell(line, "lab");
    String said = cell.isEmpty() ? fileLaboratory : cell;
    return rules.laboratory(said).map(SampleRules.LabRule::name).orElse(said);
  }

  private Soil soil(Sheet.Line line, SourceRow source) {
    double density = headerUnit("bulk_density").equals("kg/m3") ? 1e-3 : 1;
    return new Soil(
        texture(columns.cell(line, "texture"), source),
        cells.limited(line, "clay_pct", 1),
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
          "texture-unknown",
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
    boolean acre = headerUnit("gypsum_requirement").equals("t/ac");
    OptionalDouble requirement = cells.number(line, "gypsum_requirement");
    NumberCell own = cells.cell(line, property);
    return new Extras(
        own.isPresent() ? OptionalDouble.of(own.value()) : OptionalDouble.empty(),
        ions.carbonate(line),
        requirement.isPresent()
            ? OptionalDouble.of(requirement.getAsDouble() * (acre ? TONS_PER_ACRE : 1))
            : requirement,
        isSign(lime) ? lime : "",
        columns.cell(line, "ph_method"));
  }

  private SampleLine.Handling handling(Sheet.Line line) {
    OptionalDouble said = cells.number(line, "temperature_c");
    boolean fahrenheit = headerUnit("temperature_c").equals("f");
    OptionalDouble celsius =
        fahrenheit && said.isPresent() ? OptionalDouble.of((said.getAsDouble() - 32) / 1.8) : said;
    String compensated = columns.cell(line, "temperature_compensated").toLowerCase(Locale.ROOT);
    String pair = columns.cell(line, "pair").toLowerCase(Locale.ROOT);
    String sampled = columns.cell(line, "sampled").toLowerCase(Locale.ROOT);
    return new SampleLine.Handling(
        celsius,
        !UNCOMPENSATED.contains(compensated),
        cells.limited(line, "rested_h", 1),
        pair.contains("core") ? PairKind.CORE : PairKind.SPLIT,
        sampled.contains("compos") || sampled.contains("bulk"));
  }

  private List<SampleLine.Reading> readings(Sheet.Line line, SourceRow source) {
    List<SampleLine.Reading> all = new ArrayList<>();
    for (Columns.Column column : columns.readings()) {
      reading(line, column, source).ifPresent(all::add);
    }
    if (rules.mapsEc()
        && !columns.readings().isEmpty()
        && columns.readings().stream().allMatch(c -> line.cell(c.index()).isEmpty())) {
      notes.row("no-reading", source, "no EC in the row", "its other columns are used, if any");
    }
    return all;
  }

  private Optional<SampleLine.Reading> reading(
      Sheet.Line line, Columns.Column column, SourceRow source) {
    String text = line.cell(column.index());
    if (text.isEmpty()) {
      return Optional.empty();
    }
    NumberCell cell = cells.cell(line, column.index());
    if (!cell.isPresent()) {
      notes.row(
          "no-reading",
          source,
          column.header().raw() + " '" + LineCells.shown(text) + "'",
          "this reading is left out");
      return Optional.empty();
    }
    if (isUnknownUnit(line, cell)) {
      notes.row(
          "unit-unknown",
          source,
          "the unit '" + LineCells.shown(columns.cell(line, "unit")) + "'",
          "this reading is left out; units are dS/m, mS/cm, uS/cm, mmhos/cm, umhos/cm, mS/m, S/m");
      return Optional.empty();
    }
    Optional<MethodWords.Said> said = said(line, column, source);
    return said.map(
        s ->
            new SampleLine.Reading(
                s.method(),
                s.reading(),
                censored(cell.kind()),
                cell.value(),
                unit(line, column, cell),
                column.header().raw()));
  }

  private boolean isUnknownUnit(Sheet.Line line, NumberCell cell) {
    String said = columns.cell(line, "unit");
    return !said.isEmpty()
        && cell.unit().isEmpty()
        && units.of(said).isEmpty()
        && rules.unit(laboratory(line)).isEmpty()
        && rules.confirmed(sheet.source(line), columns.cell(line, "id")).isEmpty();
  }

  private Optional<ReadingUnit> unit(Sheet.Line line, Columns.Column column, NumberCell cell) {
    return units
        .of(cell.unit())
        .or(() -> units.of(columns.cell(line, "unit")))
        .or(() -> units.of(column.unit()));
  }

  private static Ec.Censored censored(NumberCell.Kind kind) {
    return switch (kind) {
      case BELOW -> Ec.Censored.BELOW;
      case ABOVE -> Ec.Censored.ABOVE;
      default -> Ec.Censored.NO;
    };
  }

  /**
   * What is known of method and reading; empty, with a finding, where a named method is refused.
   */
  private Optional<MethodWords.Said> said(
      Sheet.Line line, Columns.Column column, SourceRow source) {
    String cell = columns.cell(line, "method");
    String laboratory = laboratory(line);
    MethodWords.Said own =
        column.said().method().isPresent() || cell.isEmpty() ? column.said() : methods.of(cell);
    if (own.method().isEmpty() && !(cell.isEmpty() && own.reason().isEmpty())) {
      notes.row(
          "method-refused",
          source,
          "the method '" + LineCells.shown(cell.isEmpty() ? column.header().raw() : cell) + "'",
          "this reading is left out"
              + (own.reason().isEmpty()
                  ? "; methods are paste, 1:1, 1:2, 1:2.5, 1:5"
                  : ": " + own.reason()));
      return Optional.empty();
    }
    Optional<Method> method = own.method().or(() -> rules.method(laboratory));
    return Optional.of(new MethodWords.Said(method, kind(line, own, method, laboratory), ""));
  }

  private ReadingKind kind(
      Sheet.Line line, MethodWords.Said own, Optional<Method> method, String laboratory) {
    String cell = columns.cell(line, "reading");
    ReadingKind said = cell.isEmpty() ? ReadingKind.UNKNOWN : kinds.of(cell);
    if (said != ReadingKind.UNKNOWN) {
      return said;
    }
    ReadingKind ruled = rules.reading(laboratory);
    if (method.filter(m -> m == Method.PASTE).isPresent()) {
      boolean slurry =
          own.reading() == ReadingKind.SLURRY
              || (own.method().isEmpty() && ruled == ReadingKind.SLURRY);
      return slurry ? ReadingKind.SLURRY : ReadingKind.EXTRACT;
    }
    return own.reading() == ReadingKind.UNKNOWN ? ruled : own.reading();
  }
}
