package fieldsalt.read.word;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A date as it is written in a cell.
 *
 * @param date clear from the cell alone; empty for three numbers whose order is open
 * @param first first of two numbers of which one is the day, one the month; 0 if the date is clear
 * @param second the other
 * @param year of the open date
 */
public record DateText(Optional<LocalDate> date, int first, int second, int year) {
  private static final String YEAR = "(?<year>\\d{4}|\\d{2})";
  private static final String DAY = "(?<day>\\d{1,2})";
  private static final String MONTH = "(?<month>\\d{1,2})";
  private static final String NAME = "(?<month>\\p{L}{3,9})\\.?";
  private static final List<Pattern> CLEAR =
      List.of(
          Pattern.compile("(?<year>\\d{4})[-/.]" + MONTH + "[-/.]" + DAY + "(?:[t ].*)?"),
          Pattern.compile("(?<year>(?:19|20)\\d{2})(?<month>\\d{2})(?<day>\\d{2})"),
          Pattern.compile(DAY + "(?:st|nd|rd|th)?[-/. ]+" + NAME + "[-/., ]+" + YEAR),
          Pattern.compile(NAME + "[-/. ]+" + DAY + "(?:st|nd|rd|th)?[-/., ]+" + YEAR),
          Pattern.compile(DAY + "\\." + MONTH + "\\." + YEAR));
  private static final Pattern OPEN =
      Pattern.compile("(\\d{1,2})[-/](\\d{1,2})[-/](\\d{4}|\\d{2})(?: .*)?");
  private static final Pattern SERIAL = Pattern.compile("[34]\\d{4}");
  private static final List<String> MONTHS =
      List.of("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec");

  /** The date of a cell; empty if it is none. */
  public static Optional<DateText> of(String cell) {
    String plain = cell.strip().toLowerCase(Locale.ROOT);
    try {
      return clear(plain).map(d -> new DateText(Optional.of(d), 0, 0, 0)).or(() -> open(plain));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  private static Optional<LocalDate> clear(String plain) {
    for (Pattern form : CLEAR) {
      Matcher m = form.matcher(plain);
      if (m.matches() && month(m.group("month")) > 0) {
        int day = Integer.parseInt(m.group("day"));
        return Optional.of(LocalDate.of(year(m.group("year")), month(m.group("month")), day));
      }
    }
    return SERIAL.matcher(plain).matches()
        ? Optional.of(LocalDate.of(1899, 12, 30).plusDays(Long.parseLong(plain)))
        : Optional.empty();
  }

  private static Optional<DateText> open(String plain) {
    Matcher m = OPEN.matcher(plain);
    if (!m.matches()) {
      return Optional.empty();
    }
    int first = Integer.parseInt(m.group(1));
    int second = Integer.parseInt(m.group(2));
    boolean possible = Math.min(first, second) >= 1 && Math.min(first, second) <= 12;
    return possible && Math.max(first, second) <= 31
        ? Optional.of(new DateText(Optional.empty(), first, second, year(m.group(3))))
        : Optional.empty();
  }

  private static int year(String text) {
    int year = Integer.parseInt(text);
    return text.length() == 2 ? year + (year < 70 ? 2000 : 1900) : year;
  }

  /** The number of a month that is given by number or name; 0 if no month has the name. */
  private static int month(String text) {
    return Character.isDigit(text.charAt(0))
        ? Integer.parseInt(text)
        : MONTHS.indexOf(text.substring(0, 3)) + 1;
  }

  /** Whether the day can only be the first number. */
  public boolean provesDayFirst() {
    return first > 12;
  }

  /** Whether the day can only be the second number. */
  public boolean provesMonthFirst() {
    return second > 12;
  }

  /** The date by an order of day and month; empty if the calendar has no such day. */
  public Optional<LocalDate> by(boolean dayFirst) {
    if (date.isPresent()) {
      return date;
    }
    try {
      return Optional.of(LocalDate.of(year, dayFirst ? second : first, dayFirst ? first : second));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }
}
