package fieldsalt.read.sample;

import fieldsalt.finding.Code;
import fieldsalt.quantity.Method;
import fieldsalt.quantity.ReadingKind;
import fieldsalt.read.file.Notes;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.file.TableRow;
import fieldsalt.read.table.Columns;
import fieldsalt.read.table.SheetCells;
import fieldsalt.read.word.MethodWords;
import fieldsalt.read.word.NumberCell;
import fieldsalt.read.word.PlainText;
import fieldsalt.read.word.ReadingUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Takes readings of EC out of the rows of a sheet, with the method and unit that it names. */
final class ReadingCells {
  private final Map<String, MethodWords.Stated> methods = new HashMap<>();
  private final Map<String, ReadingKind> kinds = new HashMap<>();
  private final Map<String, Optional<ReadingUnit>> units = new HashMap<>();
  private final SheetCells cells;
  private final ReadingRules rules;
  private final Notes notes;

  ReadingCells(SheetCells cells, ReadingRules rules, Notes notes) {
    this.cells = cells;
    this.rules = rules;
    this.notes = notes;
  }

  /** The readings of a row, one for each column that holds a number. */
  List<ParsedRow.Reading> of(TableRow row, String laboratory) {
    SourceRow source = cells.source(row);
    List<ParsedRow.Reading> all = new ArrayList<>();
    List<Columns.Column> columns = cells.columns().readings();
    for (Columns.Column column : columns) {
      reading(row, column, source, laboratory).ifPresent(all::add);
    }
    if (rules.mapsEc()
        && !columns.isEmpty()
        && columns.stream().allMatch(c -> row.cell(c.index()).isEmpty())) {
      notes.row(Code.NO_READING, source, "no EC in the row", "its other columns are used, if any");
    }
    return all;
  }

  private Optional<ParsedRow.Reading> reading(
      TableRow row, Columns.Column column, SourceRow source, String laboratory) {
    String text = row.cell(column.index());
    if (text.isEmpty()) {
      return Optional.empty();
    }
    NumberCell cell = cells.parsed(text);
    if (!cell.isPresent()) {
      notes.row(
          Code.NO_READING,
          source,
          column.header().raw() + " '" + PlainText.cut(text) + "'",
          "this reading is left out");
      return Optional.empty();
    }
    if (isUnknownUnit(row, cell, laboratory)) {
      notes.row(
          Code.UNIT_UNKNOWN,
          source,
          "the unit '" + PlainText.cut(cells.text(row, "unit")) + "'",
          "this reading is left out; units are dS/m, mS/cm, uS/cm, mmhos/cm, umhos/cm, mS/m, S/m");
      return Optional.empty();
    }
    Optional<MethodWords.Stated> stated = stated(row, column, source, laboratory);
    return stated.map(
        s ->
            new ParsedRow.Reading(
                s.method(),
                s.reading(),
                censored(cell.kind()),
                cell.value(),
                unit(row, column, cell),
                column.header().raw()));
  }

  private boolean isUnknownUnit(TableRow row, NumberCell cell, String laboratory) {
    String unit = cells.text(row, "unit");
    return !unit.isEmpty()
        && cell.unit().isEmpty()
        && unit(unit).isEmpty()
        && rules.ruleOf(laboratory).unit().isEmpty()
        && rules.confirmed(cells.source(row), cells.text(row, "id")).isEmpty();
  }

  private Optional<ReadingUnit> unit(TableRow row, Columns.Column column, NumberCell cell) {
    return unit(cell.unit()).or(() -> unit(cells.text(row, "unit"))).or(() -> unit(column.unit()));
  }

  private Optional<ReadingUnit> unit(String text) {
    return units.computeIfAbsent(text, ReadingUnit::of);
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
  private Optional<MethodWords.Stated> stated(
      TableRow row, Columns.Column column, SourceRow source, String laboratory) {
    String cell = cells.text(row, "method");
    MethodWords.Stated own =
        column.stated().method().isPresent() || cell.isEmpty()
            ? column.stated()
            : methods.computeIfAbsent(cell, MethodWords::parse);
    if (own.method().isEmpty() && !(cell.isEmpty() && own.reason().isEmpty())) {
      notes.row(
          Code.METHOD_REFUSED,
          source,
          "the method '" + PlainText.cut(cell.isEmpty() ? column.header().raw() : cell) + "'",
          "this reading is left out"
              + (own.reason().isEmpty()
                  ? "; methods are paste, 1:1, 1:2, 1:2.5, 1:5"
                  : ": " + own.reason()));
      return Optional.empty();
    }
    Optional<Method> method = own.method().or(() -> rules.ruleOf(laboratory).method());
    return Optional.of(new MethodWords.Stated(method, kind(row, own, method, laboratory), ""));
  }

  private ReadingKind kind(
      TableRow row, MethodWords.Stated own, Optional<Method> method, String laboratory) {
    String cell = cells.text(row, "reading");
    ReadingKind inCell =
        cell.isEmpty() ? ReadingKind.UNKNOWN : kinds.computeIfAbsent(cell, MethodWords::reading);
    if (inCell != ReadingKind.UNKNOWN) {
      return inCell;
    }
    ReadingKind ruled = rules.ruleOf(laboratory).reading().orElse(ReadingKind.UNKNOWN);
    if (method.filter(m -> m == Method.PASTE).isPresent()) {
      boolean slurry =
          own.reading() == ReadingKind.SLURRY
              || (own.method().isEmpty() && ruled == ReadingKind.SLURRY);
      return slurry ? ReadingKind.SLURRY : ReadingKind.EXTRACT;
    }
    return own.reading() == ReadingKind.UNKNOWN ? ruled : own.reading();
  }
}
