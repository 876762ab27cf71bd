package fieldsalt.read.word;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A depth as text: a range or a single number, with or without a unit.
 *
 * @param top empty where there is only one number
 * @param unit {@code cm}, {@code in}, {@code ft}, {@code m}, {@code mm}, or empty text
 */
public record DepthText(Optional<Double> top, double bottom, String unit) {
  /** Stands for a depth that cannot be read: it is no layer. */
  public static final DepthText UNREADABLE = new DepthText(Optional.of(1.0), 0, "cm");

  private static final String NUMBER = "(\\d+(?:[.,]\\d+)?)";
  private static final String UNIT =
      "(cm|centimet(?:er|re)s?|in\\.?|inch(?:es)?|\"|''|\u2033|ft\\.?|feet|foot|'|\u2032|mm|m)?";
  private static final Pattern RANGE =
      Pattern.compile(
          "(?:depth|layer)?[ :]*(?:from )?"
              + NUMBER
              + " *"
              + UNIT
              + " *(?:-|\u2013|\u2014|\u2212|to|thru|through|/|:|_|\\.\\.+) *"
              + NUMBER
              + " *"
              + UNIT
              + "\\.?");
  private static final Pattern SINGLE =
      Pattern.compile("(?:top |surface to |surface ?- ?)?" + NUMBER + " *" + UNIT + "\\.?");

  /** The depth that a cell gives; empty if it gives none. */
  public static Optional<DepthText> of(String cell) {
    String plain = cell.toLowerCase(Locale.ROOT).replace('\u00a0', ' ').strip();
    Matcher range = RANGE.matcher(plain);
    if (range.matches()) {
      String unit = range.group(4) == null ? range.group(2) : range.group(4);
      return Optional.of(
          new DepthText(
              Optional.of(number(range.group(1))), number(range.group(3)), canonical(unit)));
    }
    Matcher single = SINGLE.matcher(plain);
    if (single.matches()) {
      boolean fromTop = plain.startsWith("top") || plain.startsWith("surface");
      return Optional.of(
          new DepthText(
              fromTop ? Optional.of(0.0) : Optional.empty(),
              number(single.group(1)),
              canonical(single.group(2))));
    }
    return Optional.empty();
  }

  /** This depth, in another unit where its text names none. */
  public DepthText orIn(String other) {
    return unit.isEmpty() ? new DepthText(top, bottom, other) : this;
  }

  /** Whether two texts give the same numbers, whatever their units. */
  public boolean isSameRange(DepthText other) {
    return bottom == other.bottom && top.equals(other.top);
  }

  private static double number(String text) {
    return Double.parseDouble(text.replace(',', '.'));
  }

  private static String canonical(String unit) {
    return unit == null ? "" : UnitText.of(unit).orElse("");
  }

  /** The depth in cm; in a unit of the file where its text names none. */
  public DepthText inCm(String otherUnit) {
    double cm =
        switch (orIn(otherUnit).unit) {
          case "in" -> 2.54;
          case "ft" -> 30.48;
          case "m" -> 100;
          case "mm" -> 0.1;
          default -> 1;
        };
    return new DepthText(top.map(t -> t * cm), bottom * cm, "cm");
  }
}
