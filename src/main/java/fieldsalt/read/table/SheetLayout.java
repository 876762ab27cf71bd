package fieldsalt.read.table;

import fieldsalt.finding.Code;
import fieldsalt.finding.InputProblem;
import fieldsalt.finding.Place;
import fieldsalt.read.file.GeoJson;
import fieldsalt.read.file.InputFile;
import fieldsalt.read.file.Notes;
import fieldsalt.read.file.RawTable;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.file.TableRow;
import fieldsalt.read.word.HeaderText;
import fieldsalt.read.word.PlainText;
import fieldsalt.read.word.UnitText;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Finds the header of a table: the line among the first ones with most names that we know. The
 * lines above it are titles; a line of units below it, and up to two lines of group names above it,
 * are joined to it.
 */
public final class SheetLayout {
  private static final int LOOKED_AT = 60;
  private static final int MOST_SHEETS = 30;

  /** Names that we know in a line that is a header without doubt. */
  private static final int HEADER = 3;

  private static final Pattern TOTALS =
      Pattern.compile(
          "(?i)(grand"
              + " )?(total|totals|mean|average|avg\\.?|median|minimum|maximum|min\\.?|max\\.?|sum|std\\.?"
              + " ?dev\\.?.*|standard deviation|s\\.?d\\.?|cv ?%?|count|n ?= ?\\d+|range)\\s*:?");

  private final RawTable table;
  private final Set<String> mapped;
  private final Notes notes;
  private final List<Integer> known;

  private SheetLayout(RawTable table, Set<String> mapped, Notes notes) {
    this.table = table;
    this.mapped = mapped;
    this.notes = notes;
    this.known = table.rows().stream().limit(LOOKED_AT).map(this::known).toList();
  }

  /** A file as a table: features of GeoJSON, or rows. */
  public static Sheet read(InputFile file, Set<String> mapped, Notes notes) {
    return GeoJson.isOne(file)
        ? FeatureSheet.of(GeoJson.read(file), notes)
        : ofTable(file, plain(mapped), notes);
  }

  /** The first sheet of a workbook, or the first one with a header if that has none. */
  private static Sheet ofTable(InputFile file, Set<String> mapped, Notes notes) {
    SheetLayout first = new SheetLayout(TableFile.read(file, 0).orElseThrow(), mapped, notes);
    if (first.mostKnown() >= HEADER) {
      return first.sheet();
    }
    for (int i = 1; i < MOST_SHEETS; i++) {
      Optional<RawTable> table = TableFile.read(file, i);
      if (table.isEmpty()) {
        break;
      }
      SheetLayout other = new SheetLayout(table.get(), mapped, notes);
      if (other.mostKnown() >= HEADER) {
        notes.finding(
            Code.OTHER_SHEET,
            Place.file(file.name()),
            "no header of samples on the first sheet",
            "sheet " + (i + 1) + " is used, the first that has one");
        return other.sheet();
      }
    }
    return first.sheet();
  }

  private int mostKnown() {
    return known.stream().reduce(0, Math::max);
  }

  /** A header in lower case, with single spaces: as headers are compared. */
  public static String plain(String header) {
    return header.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
  }

  private static Set<String> plain(Set<String> headers) {
    return headers.stream().map(SheetLayout::plain).collect(Collectors.toSet());
  }

  private Sheet sheet() {
    if (mostKnown() == 0) {
      throw noHeader();
    }
    int header = known.indexOf(mostKnown());
    TableRow row = table.rows().get(header);
    String[] names = new GroupNames(table, header, this::isKnown).joined();
    int first = header + 1;
    if (first < table.rows().size() && isUnits(table.rows().get(first))) {
      names = joinedWithUnits(names, table.rows().get(first));
      first++;
    }
    List<HeaderText> headers = Arrays.stream(names).map(HeaderText::of).toList();
    List<TableRow> rows = new ArrayList<>();
    for (TableRow data : table.rows().subList(first, table.rows().size())) {
      if (isData(data, row)) {
        rows.add(data);
      }
    }
    return new Sheet(table.file(), "row", headers, rows, table.semicolons());
  }

  /** How many different names that are known a row holds. */
  private int known(TableRow row) {
    return (int)
        Arrays.stream(row.cells())
            .filter(cell -> !cell.isEmpty() && cell.length() < 80 && isKnown(cell))
            .map(SheetLayout::plain)
            .distinct()
            .count();
  }

  private boolean isKnown(String cell) {
    boolean word = Character.isLetter(cell.codePointAt(0)) || cell.startsWith("%");
    return mapped.contains(plain(cell))
        || (word && ColumnGuess.of(HeaderText.of(cell)).isPresent());
  }

  private InputProblem noHeader() {
    String seen =
        table.rows().isEmpty()
            ? "no cell with text"
            : "a table whose first line is '"
                + PlainText.cut(String.join(", ", table.rows().get(0).cells()))
                + "'";
    return new InputProblem(
        table.file(),
        seen + " and no line with column names that are known",
        "a header line with names such as id, lon, lat, depth, method, ec",
        "Name your columns in the job: columns: {ec: \"your header\"}.");
  }

  private static boolean isUnits(TableRow row) {
    return !row.isBlank()
        && Arrays.stream(row.cells())
            .map(SheetLayout::unit)
            .allMatch(u -> u.isEmpty() || UnitText.isUnit(u));
  }

  private static String unit(String cell) {
    return cell.replaceAll("^[(\\[](.*)[)\\]]$", "$1");
  }

  private static String[] joinedWithUnits(String[] names, TableRow units) {
    String[] joined = names.clone();
    for (int i = 0; i < joined.length; i++) {
      String unit = unit(units.cell(i));
      joined[i] = unit.isEmpty() ? names[i] : names[i] + " (" + unit + ")";
    }
    return joined;
  }

  private boolean isData(TableRow row, TableRow header) {
    SourceRow at = new SourceRow(table.file(), row.number());
    String first = row.first();
    if (Arrays.equals(row.cells(), header.cells())) {
      return false;
    }
    if (TOTALS.matcher(first).matches()) {
      notes.row(Code.TOTALS_LINE, at, "a totals line ('" + PlainText.cut(first) + "')", "left out");
      return false;
    }
    long filled = Arrays.stream(row.cells()).filter(c -> !c.isEmpty()).count();
    boolean speech = filled == 1 && first.length() > 12 && first.contains(" ");
    if (speech && header.cells().length > 2) {
      notes.row(Code.TEXT_LINE, at, "a line of text", "left out");
      return false;
    }
    return true;
  }
}
