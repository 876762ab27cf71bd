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
  private final Sheet sheet;
  private final Notes notes;
  private final Map<String, Column> byName = new LinkedHashMap<>();
  private final List<Column> ec = new ArrayList<>();
  private final Set<Integer> taken = new HashSet<>();
  private final Set<String> mappedHeaders = new HashSet<>();

  private Columns(Sheet sheet, Notes notes) {
    this.sheet = sheet;
    this.notes = notes;
  }

  /**
   * One column.
   *
   * @param stated the method and reading that its header names
   */
  public record Column(int index, HeaderText header, MethodWords.Stated stated) {
    /** The unit that the header names, as written; empty text if it names none. */
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
    Columns columns = new Columns(sheet, notes);
    mapping.forEach((ours, headers) -> headers.forEach(h -> columns.map(ours, h)));
    columns.guess(!columns.ec.isEmpty());
    return columns;
  }

  private void map(String ours, String header) {
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
    Column column = new Column(index, text, stated(ours, text));
    if (ours.equals("ec") || ours.startsWith("ec_")) {
      ec.add(column);
    } else {
      byName.put(ours, column);
    }
  }

  private static MethodWords.Stated stated(String ours, HeaderText text) {
    return ours.startsWith("ec_")
        ? MethodWords.parse(ours.substring(3))
        : ColumnGuess.of(text).map(ColumnGuess::stated).orElse(MethodWords.parse(text.raw()));
  }

  private record Candidate(ColumnGuess guess, Column column) {}

  private void guess(boolean ecMapped) {
    Map<String, List<Candidate>> found = new LinkedHashMap<>();
    for (int i = 0; i < sheet.headers().size(); i++) {
      if (!taken.contains(i)) {
        HeaderText text = sheet.headers().get(i);
        Optional<ColumnGuess> guess = ColumnGuess.of(text);
        if (guess.isPresent()) {
          Column column = new Column(i, text, guess.get().stated());
          found
              .computeIfAbsent(guess.get().ours(), k -> new ArrayList<>())
              .add(new Candidate(guess.get(), column));
        } else {
          noteMisspelt(text);
        }
      }
    }
    List<Candidate> readings = found.remove("ec");
    if (readings != null && !ecMapped) {
      addReadings(readings.stream().map(Candidate::column).toList());
    }
    found.forEach(this::choose);
  }

  private void noteMisspelt(HeaderText text) {
    String name = text.name().replace(' ', '_');
    Optional<String> near = NearestWord.of(name, ColumnNames.ours());
    if (name.length() > 3 && near.filter(n -> NearestWord.distance(name, n) == 1).isPresent()) {
      notes.finding(
          Code.COLUMN_UNKNOWN,
          new Place.Column(sheet.file(), text.raw()),
          "a header that is nearly " + near.get(),
          "not used; rename it or name it in the job under columns");
    }
  }

  private void choose(String ours, List<Candidate> candidates) {
    candidates.sort(Comparator.comparingInt(c -> c.guess().rank()));
    Candidate best = candidates.get(0);
    if (byName.putIfAbsent(ours, best.column()) == null) {
      candidates.stream()
          .skip(1)
          .filter(c -> c.guess().rank() == best.guess().rank())
          .forEach(c -> noteSecond(ours, best.column(), c.column()));
    }
  }

  private void noteSecond(String ours, Column used, Column other) {
    notes.finding(
        Code.COLUMN_TWICE,
        new Place.Column(sheet.file(), other.header().raw()),
        "a second column for " + ours,
        "not used; '" + used.header().raw() + "' is used. Choose with columns in the job");
  }

  private void addReadings(List<Column> columns) {
    boolean conductivity = !columns.stream().allMatch(Columns::isSolids);
    for (Column column : columns) {
      if (column.header().calculated()) {
        notes.finding(
            Code.CALCULATED_COLUMN,
            new Place.Column(sheet.file(), column.header().raw()),
            "values that were calculated from another reading, as the header says",
            "not used: they are not measurements");
      } else if (!(conductivity && isSolids(column))) {
        addReading(column);
      }
    }
  }

  private static boolean isSolids(Column column) {
    return ReadingUnit.of(column.unit()).filter(ReadingUnit::isDissolvedSolids).isPresent()
        || column.header().name().matches("(tds|total dissolved solids).*");
  }

  private void addReading(Column column) {
    MethodWords.Stated stated = column.stated();
    Optional<Column> same =
        ec.stream()
            .filter(other -> other.stated().method().equals(stated.method()))
            .filter(other -> other.stated().reading() == stated.reading())
            .findFirst();
    same.ifPresentOrElse(
        first -> noteSecond("the same reading", first, column), () -> ec.add(column));
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
