package fieldsalt.read.sample;

import fieldsalt.finding.Code;
import fieldsalt.read.file.Notes;
import fieldsalt.read.word.DateText;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** Settles whether 03/04/2026 is March or April: by the job, else by the file's other dates. */
final class Dates {
  private final Optional<Boolean> dayFirst;
  private final Notes notes;
  private Optional<DateText> example = Optional.empty();

  private Dates(Optional<Boolean> dayFirst, Notes notes) {
    this.dayFirst = dayFirst;
    this.notes = notes;
  }

  static Dates of(List<ParsedRow> rows, ReadingRules rules, Notes notes) {
    if (rules.dayFirst().isPresent()) {
      return new Dates(rules.dayFirst(), notes);
    }
    boolean day =
        rows.stream().anyMatch(l -> l.date().filter(DateText::provesDayFirst).isPresent());
    boolean month =
        rows.stream().anyMatch(l -> l.date().filter(DateText::provesMonthFirst).isPresent());
    return new Dates(day == month ? Optional.empty() : Optional.of(day), notes);
  }

  /** The date of a row; empty, with a finding, if its order of day and month stays open. */
  Optional<LocalDate> date(ParsedRow row) {
    if (row.date().isEmpty()) {
      return Optional.empty();
    }
    DateText text = row.date().get();
    Optional<LocalDate> date = known(text);
    if (date.isEmpty()) {
      DateText shown = example.orElse(text);
      example = Optional.of(shown);
      notes.row(
          Code.DATE_OPEN,
          row.source(),
          "a date such as " + shown.first() + "/" + shown.second() + "/" + shown.year(),
          "the row is kept without a date; set date-order: dmy or mdy in the job");
    }
    return date;
  }

  private Optional<LocalDate> known(DateText text) {
    if (text.date().isPresent() || text.first() == text.second()) {
      return text.by(true);
    }
    if (dayFirst.isPresent()) {
      return text.by(dayFirst.get());
    }
    return text.provesDayFirst() || text.provesMonthFirst()
        ? text.by(text.provesDayFirst())
        : Optional.empty();
  }
}
