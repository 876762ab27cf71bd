package fieldsalt.read.word;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number as laboratories write it.
 *
 * @param kind what the cell holds
 * @param value the number, or the limit; NaN for words and nothing
 * @param unit what follows the number, or empty text
 */
public record NumberCell(Kind kind, double value, String unit) {
  /** Nothing; a number; below or above a limit; words. */
  public enum Kind {
    EMPTY,
    NUMBER,
    BELOW,
    ABOVE,
    WORDS
  }

  private static final Pattern SHAPE =
      Pattern.compile(
          "(<|>|\u2264|\u2265|<=|>=|less than|below|above|over|greater"
              + " than)?\\s*([-+\u2212]?(?:\\d[\\d.,'\u2019"
              + " ]*|[.,]\\d+)(?:[eE][-+]?\\d{1,3})?)\\s*(\\*{0,3})\\s*(.*)",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern GROUPED = Pattern.compile("[-+]?[1-9]\\d{0,2},\\d{3}");
  private static final Pattern DECIMAL_COMMA =
      Pattern.compile("[<>]?\\s*-?(\\d+,(\\d{1,2}|\\d{4,})|0,\\d+|\\d{4,},\\d+)");
  private static final Pattern DECIMAL_POINT =
      Pattern.compile("[<>]?\\s*-?\\d+\\.(\\d{1,2}|\\d{4,})");
  private static final NumberCell NOTHING = new NumberCell(Kind.EMPTY, Double.NaN, "");
  private static final NumberCell SPEECH = new NumberCell(Kind.WORDS, Double.NaN, "");

  /**
   * A cell's number.
   *
   * @param decimalComma whether a single comma in this file is a decimal comma
   */
  public static NumberCell parse(String cell, boolean decimalComma) {
    if (cell.isEmpty()) {
      return NOTHING;
    }
    char last = cell.charAt(cell.length() - 1);
    if (last >= '0' && last <= '9' && cell.length() < 20 && isPlain(cell)) {
      return number(cell);
    }
    return shaped(cell.replace('\u00a0', ' ').replace('\u202f', ' ').strip(), decimalComma);
  }

  private static boolean isPlain(String cell) {
    int points = 0;
    for (int i = cell.charAt(0) == '-' ? 1 : 0; i < cell.length(); i++) {
      char c = cell.charAt(i);
      points += c == '.' ? 1 : 0;
      if (c != '.' && (c < '0' || c > '9')) {
        return false;
      }
    }
    return points < 2 && cell.length() > (cell.charAt(0) == '-' ? 1 : 0);
  }

  private static NumberCell number(String digits) {
    return new NumberCell(Kind.NUMBER, Double.parseDouble(digits), "");
  }

  private static NumberCell shaped(String cell, boolean decimalComma) {
    if (cell.isEmpty() || cell.matches("[-\u2013\u2014.]+")) {
      return NOTHING;
    }
    Matcher m = SHAPE.matcher(cell);
    if (!m.matches()) {
      return SPEECH;
    }
    double value = value(m.group(2).strip(), decimalComma);
    String rest = m.group(4).strip();
    boolean usable = Double.isFinite(value) && (rest.isEmpty() || UnitText.isUnit(rest));
    return usable ? new NumberCell(kind(m.group(1)), value, rest) : SPEECH;
  }

  private static Kind kind(String sign) {
    if (sign == null) {
      return Kind.NUMBER;
    }
    return sign.matches("(?i)<.*|\u2264|less than|below") ? Kind.BELOW : Kind.ABOVE;
  }

  private static double value(String text, boolean decimalComma) {
    String digits =
        text.replace('\u2212', '-').replaceAll("(?<=\\d)['\u2019 ](?=\\d{3}(\\D|$))", "");
    int comma = digits.lastIndexOf(',');
    int point = digits.lastIndexOf('.');
    String plain;
    if (comma >= 0 && point >= 0) {
      plain = comma > point ? digits.replace(".", "").replace(',', '.') : digits.replace(",", "");
    } else if (comma >= 0) {
      boolean thousands = digits.indexOf(',') != comma || (!decimalComma && isGrouped(digits));
      plain = thousands ? digits.replace(",", "") : digits.replace(',', '.');
    } else {
      plain = digits.indexOf('.') != point ? digits.replace(".", "") : digits;
    }
    try {
      return Double.parseDouble(plain);
    } catch (NumberFormatException e) {
      return Double.NaN;
    }
  }

  /** Whether a comma in a number may be one between thousands as well as a decimal comma. */
  public static boolean isGrouped(String digits) {
    return digits.indexOf(',') > 0 && GROUPED.matcher(digits).matches();
  }

  /** Whether a cell can only be read with a decimal comma. */
  public static boolean provesDecimalComma(String cell) {
    return cell.indexOf(',') > 0 && cell.indexOf('.') < 0 && DECIMAL_COMMA.matcher(cell).matches();
  }

  /** Whether a cell has a decimal point. */
  public static boolean provesDecimalPoint(String cell) {
    return cell.indexOf('.') > 0 && DECIMAL_POINT.matcher(cell).matches();
  }

  public boolean isPresent() {
    return kind == Kind.NUMBER || kind == Kind.BELOW || kind == Kind.ABOVE;
  }
}
