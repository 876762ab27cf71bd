package fieldsalt.read.table;

import fieldsalt.finding.Code;
import fieldsalt.finding.Place;
import fieldsalt.read.file.Notes;
import fieldsalt.read.word.HeaderText;
import fieldsalt.read.word.MethodWords;
import fieldsalt.read.word.NearestWord;
import fieldsalt.read.word.ReadingUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Which column of a sheet holds what: the job's {@code columns} first, known headers after. */
public final class Columns {
  private final Map<String, Column> byName = new LinkedHashMap<>();
  private final List<Column> ec = new ArrayList<>();
  private final Set<String> mappedHeaders = new HashSet<>();

  private Columns() {}

  /**
   * One column.
   *
   * @param stated the method and reading that its header names
   */
  public record Column(int index, HeaderText header, MethodWords.Stated stated) {
    public String unit() {
      return header.unit();
    }
  }

  /**
   * Assigns the columns of a sheet.
   *
   * @param mapping our name to the headers that the job gives for it
   */
  public static Columns of(Sheet sheet, Map<String, List<String>> mapping, Notes notes) {
    Columns columns = new Columns();
    Set<Integer> taken = new HashSet<>();
    mapping.forEach((ours, headers) -> headers.forEach(h -> columns.map(sheet, ours, h, taken)));
    columns.guess(sheet, taken, mapping.containsKey("ec"), notes);
    return columns;
  }

  private void map(Sheet sheet, String ours, String header, Set<Integer> taken) {
    for (int i = 0; i < sheet.headers().size(); i++) {
      HeaderText text = sheet.headers().get(i);
      if (SheetLayout.plain(text.raw()).equals(SheetLayout.plain(header)) && taken.add(i)) {
        mappedHeaders.add(header);
        put(ours, i, text);
        return;
      }
    }
  }

  private void put(String ours, int index, HeaderText text) {
    if (ours.startsWith("ec_")) {
      ec.add(new Column(index, text, MethodWords.parse(ours.substring(3))));
    } else if (ours.equals("ec")) {
      ec.add(new Column(index, text, statedIn(text)));
    } else {
      byName.put(ours, new Column(index, text, statedIn(text)));
    }
  }

  private static MethodWords.Stated statedIn(HeaderText text) {
    return ColumnGuess.of(text).map(ColumnGuess::stated).orElse(MethodWords.parse(text.raw()));
  }

  private record Candidate(ColumnGuess guess, Column column) {}

  private void guess(Sheet sheet, Set<Integer> taken, boolean ecMapped, Notes notes) {
    Map<String, List<Candidate>> found = new LinkedHashMap<>();
    for (int i = 0; i < sheet.headers().size(); i++) {
      HeaderText text = sheet.headers().get(i);
      Optional<ColumnGuess> guess = taken.contains(i) ? Optional.empty() : ColumnGuess.of(text);
      int at = i;
      guess.ifPresent(
          g ->
              found
                  .computeIfAbsent(g.ours(), k -> new ArrayList<>())
                  .add(new Candidate(g, new Column(at, text, g.stated()))));
      if (guess.isEmpty() && !taken.contains(i)) {
        hint(sheet, text, notes);
      }
    }
    List<Candidate> readings = found.remove("ec");
    if (readings != null && !ecMapped) {
      readings(sheet, readings, notes);
    }
    found.forEach((ours, candidates) -> choose(sheet, ours, candidates, notes));
  }

  private static void hint(Sheet sheet, HeaderText text, Notes notes) {
    String name = text.name().replace(' ', '_');
    Optional<String> near =
        name.length() < 4 ? Optional.empty() : NearestWord.of(name, ColumnNames.ours());
    if (near.isPresent() && NearestWord.distance(name, near.get()) == 1) {
      notes.finding(
          Code.COLUMN_UNKNOWN,
          new Place.Column(sheet.file(), text.raw()),
          "a header that is nearly " + near.get(),
          "not used; rename it or name it in the job under columns");
    }
  }

  private void choose(Sheet sheet, String ours, List<Candidate> candidates, Notes notes) {
    candidates.sort(Comparator.comparingInt(c -> c.guess().rank()));
    Column best = candidates.get(0).column();
    if (byName.putIfAbsent(ours, best) == null) {
      candidates.stream()
          .skip(1)
          .filter(c -> c.guess().rank() == candidates.get(0).guess().rank())
          .forEach(c -> twice(sheet, ours, best, c.column(), notes));
    }
  }

  private static void twice(Sheet sheet, String ours, Column used, Column other, Notes notes) {
    notes.finding(
        Code.COLUMN_TWICE,
        new Place.Column(sheet.file(), other.header().raw()),
        "a second column for " + ours,
        "not used, '" + used.header().raw() + "' is used; choose with columns in the job");
  }

  private void readings(Sheet sheet, List<Candidate> candidates, Notes notes) {
    boolean conductivity = candidates.stream().anyMatch(c -> !isSolids(c.column()));
    for (Candidate c : candidates) {
      Column column = c.column();
      if (column.header().calculated()) {
        notes.finding(
            Code.CALCULATED_COLUMN,
            new Place.Column(sheet.file(), column.header().raw()),
            "values that were calculated from another reading, says the header",
            "not used: they are not measurements");
      } else if (!(conductivity && isSolids(column))) {
        addReading(sheet, column, notes);
      }
    }
  }

  private static boolean isSolids(Column column) {
    return ReadingUnit.of(column.unit()).map(ReadingUnit::isDissolvedSolids).orElse(false)
        || column.header().name().matches("(tds|total dissolved solids).*");
  }

  private void addReading(Sheet sheet, Column column, Notes notes) {
    Optional<Column> same =
        ec.stream()
            .filter(
                o ->
                    o.stated().method().equals(column.stated().method())
                        && o.stated().reading() == column.stated().reading())
            .findFirst();
    if (same.isPresent()) {
      twice(sheet, "the same reading", same.get(), column, notes);
    } else {
      ec.add(column);
    }
  }

  public Optional<Column> get(String ours) {
    return Optional.ofNullable(byName.get(ours));
  }

  public boolean has(String ours) {
    return byName.containsKey(ours);
  }

  /** Columns of readings, in the sheet's order. */
  public List<Column> readings() {
    return ec;
  }

  /** Headers of the job's mapping that this sheet has. */
  public Set<String> mappedHeaders() {
    return mappedHeaders;
  }
}
