package fieldsalt.read.word;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers and texts of the input as messages show them. */
public final class PlainText {
  private static final int LONGEST = 80;

  private PlainText() {}

  /** A number in at most six digits, without needless ones. */
  public static String number(double value) {
    return new BigDecimal(value).round(new MathContext(6)).stripTrailingZeros().toPlainString();
  }

  /** A text, cut after 80 letters. */
  public static String cut(String text) {
    return text.length() > LONGEST ? text.substring(0, LONGEST) + "..." : text;
  }
}
