package fieldsalt.read.word;

import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Longitude or latitude as text: decimal degrees, with a letter for the side, or with minutes. */
public final class DegreesText {
  private static final Pattern MINUTES =
      Pattern.compile(
          "([NSEW])? ?(\\d{1,3})(?:\u00b0|d| ) ?(\\d{1,2}(?:\\.\\d+)?)(?:'|\u2032|\u2019|m| )? ?"
              + "(?:(\\d{1,2}(?:\\.\\d+)?)(?:\"|''|\u2033|\u201d|s)?)? ?([NSEW])?");
  private static final Pattern SIDE = Pattern.compile("([NSEW])? ?([0-9.,]+) ?\u00b0? ?([NSEW])?");

  private DegreesText() {}

  /** Degrees; empty if the text is not a coordinate. */
  public static OptionalDouble of(String cell, boolean decimalComma) {
    NumberCell plain = NumberCell.parse(cell, decimalComma);
    if (plain.kind() == NumberCell.Kind.NUMBER) {
      return OptionalDouble.of(plain.value());
    }
    String text = cell.strip().toUpperCase(Locale.ROOT);
    Matcher side = SIDE.matcher(text);
    if (side.matches()) {
      NumberCell number = NumberCell.parse(side.group(2), decimalComma);
      return number.isPresent()
          ? OptionalDouble.of(number.value() * sign(side.group(1), side.group(3)))
          : OptionalDouble.empty();
    }
    Matcher m = MINUTES.matcher(text);
    if (!m.matches()) {
      return OptionalDouble.empty();
    }
    double seconds = m.group(4) == null ? 0 : Double.parseDouble(m.group(4));
    double value =
        Double.parseDouble(m.group(2)) + Double.parseDouble(m.group(3)) / 60 + seconds / 3600;
    return OptionalDouble.of(value * sign(m.group(1), m.group(5)));
  }

  private static int sign(String before, String after) {
    String letter = before == null ? after : before;
    return "S".equals(letter) || "W".equals(letter) ? -1 : 1;
  }
}
