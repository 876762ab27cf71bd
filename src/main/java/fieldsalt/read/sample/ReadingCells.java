package fieldsalt.read.sample;

import fieldsalt.finding.Code;
import fieldsalt.quantity.Method;
import fieldsalt.quantity.ReadingKind;
import fieldsalt.read.file.Notes;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.table.Columns;
import fieldsalt.read.table.LineCells;
import fieldsalt.read.table.Sheet;
import fieldsalt.read.word.Memo;
import fieldsalt.read.word.MethodWords;
import fieldsalt.read.word.NumberCell;
import fieldsalt.read.word.ReadingUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Takes readings of EC out of the lines of a sheet, with the method and unit that it names. */
final class ReadingCells {
  private final Memo<MethodWords.Said> methods = new Memo<>(MethodWords::parse);
  private final Memo<ReadingKind> kinds = new Memo<>(MethodWords::reading);
  private final Memo<Optional<ReadingUnit>> units = new Memo<>(ReadingUnit::of);
  private final Sheet sheet;
  private final Columns columns;
  private final ReadingRules rules;
  private final LineCells cells;
  private final Notes notes;

  ReadingCells(Sheet sheet, Columns columns, ReadingRules rules, LineCells cells, Notes notes) {
    this.sheet = sheet;
    this.columns = columns;
    this.rules = rules;
    this.cells = cells;
    this.notes = notes;
  }

  /** The readings of a line, one for each column that holds a number. */
  List<ParsedRow.Reading> of(Sheet.Line line, String laboratory) {
    SourceRow source = sheet.source(line);
    List<ParsedRow.Reading> all = new ArrayList<>();
    for (Columns.Column column : columns.readings()) {
      reading(line, column, source, laboratory).ifPresent(all::add);
    }
    if (rules.mapsEc()
        && !columns.readings().isEmpty()
        && columns.readings().stream().allMatch(c -> line.cell(c.index()).isEmpty())) {
      notes.row(Code.NO_READING, source, "no EC in the row", "its other columns are used, if any");
    }
    return all;
  }

  private Optional<ParsedRow.Reading> reading(
      Sheet.Line line, Columns.Column column, SourceRow source, String laboratory) {
    String text = line.cell(column.index());
    if (text.isEmpty()) {
      return Optional.empty();
    }
    NumberCell cell = cells.cell(line, column.index());
    if (!cell.isPresent()) {
      notes.row(
          Code.NO_READING,
          source,
          column.header().raw() + " '" + LineCells.shown(text) + "'",
          "this reading is left out");
      return Optional.empty();
    }
    if (isUnknownUnit(line, cell, laboratory)) {
      notes.row(
          Code.UNIT_UNKNOWN,
          source,
          "the unit '" + LineCells.shown(columns.cell(line, "unit")) + "'",
          "this reading is left out; units are dS/m, mS/cm, uS/cm, mmhos/cm, umhos/cm, mS/m, S/m");
      return Optional.empty();
    }
    Optional<MethodWords.Said> said = said(line, column, source, laboratory);
    return said.map(
        s ->
            new ParsedRow.Reading(
                s.method(),
                s.reading(),
                censored(cell.kind()),
                cell.value(),
                unit(line, column, cell),
                column.header().raw()));
  }

  private boolean isUnknownUnit(Sheet.Line line, NumberCell cell, String laboratory) {
    String said = columns.cell(line, "unit");
    return !said.isEmpty()
        && cell.unit().isEmpty()
        && units.of(said).isEmpty()
        && rules.unit(laboratory).isEmpty()
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
      Sheet.Line line, Columns.Column column, SourceRow source, String laboratory) {
    String cell = columns.cell(line, "method");
    MethodWords.Said own =
        column.said().method().isPresent() || cell.isEmpty() ? column.said() : methods.of(cell);
    if (own.method().isEmpty() && !(cell.isEmpty() && own.reason().isEmpty())) {
      notes.row(
          Code.METHOD_REFUSED,
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
