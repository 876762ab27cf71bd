package fieldsalt.read.word;

import java.text.Normalizer;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A header taken apart.
 *
 * @param raw as it is written
 * @param name lower case, unit and signs taken out
 * @param unit as written, or empty text
 * @param calculated whether the header says that its values are computed from others
 */
public record HeaderText(String raw, String name, String unit, boolean calculated) {
  private static final Pattern BRACKETS = Pattern.compile("[(\\[{]([^()\\[\\]{}]*)[)\\]}]");
  private static final Pattern CALCULATED =
      Pattern.compile("\\b(calc|calcd|calculated|computed|est|estimated|derived|converted)\\b\\.?");
  private static final Pattern AT_25 =
      Pattern.compile("(@|\\bat)? ?25 ?(\u00b0|deg|degrees)? ?c\\b");

  public static HeaderText of(String header) {
    String text =
        Normalizer.normalize(header, Normalizer.Form.NFKC)
            .replace('\u2236', ':')
            .replace('\u2212', '-')
            .replaceAll("[\\s_]+", " ")
            .strip();
    String unit = "";
    Matcher brackets = BRACKETS.matcher(text);
    while (brackets.find()) {
      if (unit.isEmpty() && UnitText.isUnit(brackets.group(1))) {
        unit = brackets.group(1).strip();
        text = (text.substring(0, brackets.start()) + " " + text.substring(brackets.end())).strip();
        break;
      }
    }
    text = AT_25.matcher(text.toLowerCase(Locale.ROOT)).replaceAll(" ").strip();
    int trailing = unit.isEmpty() ? UnitText.trailing(text) : -1;
    if (trailing > 0) {
      unit = text.substring(trailing + 1).strip();
      unit = unit.endsWith("1") ? unit : unit.replaceFirst("(?<=[a-z]) (?=[a-z0-9])", "/");
      text = text.substring(0, trailing);
    }
    return new HeaderText(header, plain(text), unit, CALCULATED.matcher(text).find());
  }

  private static String plain(String text) {
    return CALCULATED
        .matcher(text)
        .replaceAll(" ")
        .replaceAll("%", " percent ")
        .replaceAll("(?<!\\d)[:.]|[:.](?!\\d)", " ")
        .replaceAll("[^\\p{L}\\p{N}:.]+", " ")
        .replaceAll("^(ec|ece)25\\b", "$1")
        .strip();
  }

  /**
   * The header with its unit left in the name: for names that only look as if they ended in one.
   */
  public String whole() {
    return plain(raw.replaceAll("[\\s_]+", " ").toLowerCase(Locale.ROOT));
  }
}
