package fieldsalt.read.table;

import fieldsalt.facts.Plausibility;
import fieldsalt.finding.Code;
import fieldsalt.finding.Place;
import fieldsalt.read.file.Notes;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.file.TableRow;
import fieldsalt.read.word.NumberCell;
import fieldsalt.read.word.PlainText;
import fieldsalt.read.word.UnitText;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** The cells of a sheet under our names: text, or numbers within their limits, with findings. */
public final class SheetCells {
  // unusual values of the other columns are named where they are used, after conversion
  private static final Set<String> NAMED_HERE =
      Set.of(
          "k_meq_l",
          "cl_meq_l",
          "so4_meq_l",
          "hco3_meq_l",
          "co3_meq_l",
          "na_exchangeable_cmol_kg",
          "lime_pct",
          "om_pct",
          "rested_h");

  private final Sheet sheet;
  private final Columns columns;
  private final Notes notes;
  private final Map<String, String> units = new HashMap<>();
  private final boolean decimalComma;

  public SheetCells(Sheet sheet, Columns columns, Notes notes) {
    this.sheet = sheet;
    this.columns = columns;
    this.notes = notes;
    this.decimalComma = decimalComma();
  }

  private boolean decimalComma() {
    boolean point = false;
    String open = "";
    for (TableRow row : sheet.rows()) {
      for (String cell : row.cells()) {
        if (NumberCell.provesDecimalComma(cell)) {
          return true;
        }
        point = point || NumberCell.provesDecimalPoint(cell);
        open = open.isEmpty() && NumberCell.isGrouped(cell) ? cell : open;
      }
    }
    boolean comma = !point && sheet.semicolons();
    if (!point && !open.isEmpty()) {
      notes.finding(
          Code.COMMA_OPEN,
          Place.file(sheet.file()),
          "numbers such as " + open + ", and no other number that shows what the comma means",
          comma ? "read as a decimal comma" : "read as a comma between thousands");
    }
    return comma;
  }

  public String file() {
    return sheet.file();
  }

  public List<TableRow> rows() {
    return sheet.rows();
  }

  public Columns columns() {
    return columns;
  }

  /** Where a row stands, for messages. */
  public SourceRow source(TableRow row) {
    return new SourceRow(sheet.file(), row.number(), sheet.word());
  }

  public boolean has(String ours) {
    return columns.has(ours);
  }

  /** Whether the sheet gives places: points, longitude and latitude, or x and y. */
  public boolean hasPlaces() {
    return sheet.rows().stream().anyMatch(row -> row.point().isPresent())
        || (has("lon") && has("lat"))
        || (has("x") && has("y"));
  }

  /** The text under one of our names; empty text if there is no such column. */
  public String text(TableRow row, String ours) {
    return columns.get(ours).map(column -> row.cell(column.index())).orElse("");
  }

  /** The unit that a column's header names, in its one spelling; empty text if it names none. */
  public String unit(String ours) {
    return units.computeIfAbsent(
        ours, o -> columns.get(o).flatMap(column -> UnitText.of(column.unit())).orElse(""));
  }

  /** The header of one of our columns as it stands in the file. */
  public String header(String ours) {
    return columns.get(ours).map(column -> column.header().raw().strip()).orElse(ours);
  }

  /** The place of a column by our name for it or by its header; -1 if the sheet has neither. */
  public int index(String name) {
    Optional<Columns.Column> ours = ColumnNames.ofOurs(name).flatMap(columns::get);
    List<String> headers =
        sheet.headers().stream().map(header -> SheetLayout.plain(header.raw())).toList();
    return ours.isPresent() ? ours.get().index() : headers.indexOf(SheetLayout.plain(name));
  }

  /** A text of this sheet as a number. */
  public NumberCell parsed(String text) {
    return NumberCell.parse(text, decimalComma);
  }

  public boolean hasDecimalComma() {
    return decimalComma;
  }

  /** A number under one of our names, without limits; words are a finding. */
  public OptionalDouble number(TableRow row, String ours) {
    String text = text(row, ours);
    NumberCell cell = parsed(text);
    if (cell.kind() == NumberCell.Kind.WORDS && !isNothing(text)) {
      notes.row(
          Code.NOT_A_NUMBER,
          source(row),
          header(ours) + " '" + PlainText.cut(text) + "'",
          "the cell is left out");
    }
    return cell.isPresent() ? OptionalDouble.of(cell.value()) : OptionalDouble.empty();
  }

  /** Whether words stand for a measurement that was not made. */
  public static boolean isNothing(String text) {
    return text.matches(
        "(?i)n\\.?[/.]?[ads]\\.?|nan|null|none|not"
            + " (determined|detected|analy[sz]ed|tested|available)|nr|no"
            + " data|missing|-+|\\?|\\.|insufficient.*|#n/a|#value!|#div/0!|#ref!|bdl|<lod|<loq|<dl|trace|tr");
  }

  /** A number within the limits of its column; what is impossible is left out. */
  public OptionalDouble limited(TableRow row, String ours) {
    return limited(row, ours, ours, 1);
  }

  /** A number times a factor, within the limits of a quantity; what is impossible is left out. */
  public OptionalDouble limited(TableRow row, String ours, String quantity, double factor) {
    OptionalDouble raw = number(row, ours);
    if (raw.isEmpty()) {
      return raw;
    }
    Plausibility limits = Plausibility.of(quantity);
    double value = raw.getAsDouble() * factor;
    if (limits.refuses(value)) {
      notes.row(
          Code.IMPOSSIBLE,
          source(row),
          found(ours, value, limits) + hint(limits, value),
          "the cell is left out; possible is " + Limits.possible(limits));
      return OptionalDouble.empty();
    }
    if (limits.doubts(value) && NAMED_HERE.contains(quantity)) {
      notes.row(
          Code.UNUSUAL,
          source(row),
          found(ours, value, limits),
          "kept; usual is " + Limits.usual(limits));
    }
    return OptionalDouble.of(value);
  }

  private String found(String ours, double value, Plausibility limits) {
    return header(ours) + " " + (PlainText.number(value) + " " + limits.unit()).strip();
  }

  private static String hint(Plausibility limits, double value) {
    OptionalDouble slip = Limits.slip(limits, value);
    if (slip.isEmpty()) {
      return "";
    }
    double factor = slip.getAsDouble();
    String by =
        factor < 1
            ? PlainText.number(1 / factor) + " times too large"
            : PlainText.number(factor) + " times too small";
    return " (" + by + "? " + PlainText.number(value * factor) + " would be usual; check its unit)";
  }
}
