package fieldsalt.read.table;

import fieldsalt.finding.Code;
import fieldsalt.finding.Place;
import fieldsalt.read.file.Notes;
import fieldsalt.read.word.NumberCell;
import java.util.OptionalDouble;
import java.util.Set;

/** Takes numbers out of the cells of a sheet's lines, with their limits and findings. */
public final class LineCells {
  // unusual values of the others are told where they are used, after conversion
  private static final Set<String> TOLD_HERE =
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
  private final boolean decimalComma;

  public LineCells(Sheet sheet, Columns columns, Notes notes) {
    this.sheet = sheet;
    this.columns = columns;
    this.notes = notes;
    this.decimalComma = decimalComma();
  }

  private boolean decimalComma() {
    boolean point = false;
    String open = "";
    for (Sheet.Line line : sheet.lines()) {
      for (String cell : line.cells()) {
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
          "numbers such as " + open + ", and no other that tells what the comma means",
          comma ? "the comma is taken before decimals" : "the comma is taken before thousands");
    }
    return comma;
  }

  public boolean hasDecimalComma() {
    return decimalComma;
  }

  public NumberCell cell(Sheet.Line line, int index) {
    return NumberCell.parse(line.cell(index), decimalComma);
  }

  /** A number under one of our names, without limits; words are a finding. */
  public OptionalDouble number(Sheet.Line line, String ours) {
    String text = columns.cell(line, ours);
    if (text.isEmpty()) {
      return OptionalDouble.empty();
    }
    NumberCell cell = NumberCell.parse(text, decimalComma);
    if (cell.kind() == NumberCell.Kind.WORDS && !isNothing(text)) {
      notes.row(
          Code.NOT_A_NUMBER,
          sheet.source(line),
          name(ours) + " '" + shown(text) + "'",
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

  /** A number times a factor, within the limits of its column; what is impossible is left out. */
  public OptionalDouble limited(Sheet.Line line, String ours, double factor) {
    return limited(line, ours, ours, factor);
  }

  /** The same within the limits of another quantity. */
  public OptionalDouble limited(Sheet.Line line, String ours, String quantity, double factor) {
    OptionalDouble raw = number(line, ours);
    if (raw.isEmpty()) {
      return raw;
    }
    Limit limit = Limit.of(quantity);
    double value = raw.getAsDouble() * factor;
    if (!limit.isPossible(value)) {
      notes.row(
          Code.IMPOSSIBLE,
          sheet.source(line),
          found(ours, value, limit) + hint(limit, value),
          "the cell is left out; possible is " + limit.possible());
      return OptionalDouble.empty();
    }
    if (!limit.isUsual(value) && TOLD_HERE.contains(quantity)) {
      notes.row(
          Code.UNUSUAL,
          sheet.source(line),
          found(ours, value, limit),
          "kept; usual is " + limit.usual());
    }
    return OptionalDouble.of(value);
  }

  private String found(String ours, double value, Limit limit) {
    return name(ours) + " " + (plain(value) + " " + limit.unit()).strip();
  }

  private static String hint(Limit limit, double value) {
    OptionalDouble slip = limit.slip(value);
    if (slip.isEmpty()) {
      return "";
    }
    double factor = slip.getAsDouble();
    String by =
        factor < 1 ? plain(1 / factor) + " times too large" : plain(factor) + " times too small";
    return " (" + by + "? " + plain(value * factor) + " would be usual; check its unit)";
  }

  private String name(String ours) {
    return columns.get(ours).map(c -> c.header().raw().strip()).orElse(ours);
  }

  public static String shown(String text) {
    return text.length() > 60 ? text.substring(0, 60) + "..." : text;
  }

  /** A number without needless digits. */
  public static String plain(double value) {
    String text =
        new java.math.BigDecimal(value)
            .round(new java.math.MathContext(6))
            .stripTrailingZeros()
            .toPlainString();
    return text;
  }
}
