package fieldsalt.read.word;

import java.text.Normalizer;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Units other than those of EC, in one spelling each. */
public final class UnitText {
  private static final Map<String, Pattern> SPELLINGS = new LinkedHashMap<>();
  private static final Pattern TRAILING_EC =
      Pattern.compile(
          "(?i)[ ,;:_-]((d|m|u|\u03bc|deci|milli|micro)?(s|siemens)[ /]?(m|cm)( ?-?"
              + " ?1)?|(m|u|\u03bc|milli|micro)mhos?[ /]?cm( ?-? ?1)?)$");
  private static final Pattern TRAILING =
      Pattern.compile(
          "(?i)[ ,;:-](meq[ /]l|me[ /]l|mmol(?:c|\\(c\\)|\\+|\\(\\+\\))?[ /]l|mg[ /]l|mg["
              + " /]kg|ppm|pct|percent|%|cm|in|inch|inches|ft|feet|(?:deg|\u00b0)?"
              + " ?c|h|hrs?|hours?|meq[ /]100 ?g|cmol(?:c|\\(c\\)|\\+|\\(\\+\\))?[ /]kg|g["
              + " /](?:cm3|cc)|mg[ /]m3|t[ /]m3|kg[ /]m3|t[ /]ha|tons?[ /]acre|t[ /]ac|tons?["
              + " /]ac|lbs?[ /]ac(?:re)?)$");

  static {
    put(
        "meq/l",
        "meq/?l|me/l|mmolc?/l|mmol\\(?[c+]\\)?/l|mmol\\(\\+\\)/l|meql-?1|mmolcl-?1|meq/liter|meq/litre");
    put("mg/l", "mg/?l|mgl-?1");
    put("mg/kg", "mg/?kg|mgkg-?1");
    put("ppm", "ppm");
    put("%", "%|pct|percent|perc|wt%|%w/w");
    put("cm", "cm|centimet(er|re)s?");
    put("in", "in|inch|inches|in\\.|\"|''|\u2033");
    put("ft", "ft|feet|foot|'|\u2032");
    put("m", "m|met(er|re)s?");
    put("mm", "mm");
    put("c", "\u00b0?c|degc|deg\\.?c|celsius");
    put("f", "\u00b0?f|degf|fahrenheit");
    put("h", "h|hr|hrs|hours?");
    put(
        "meq/100g",
        "meq/?100g(rams)?|me/100g|cmol\\(?[c+]?\\)?/?kg|cmol\\(\\+\\)/?kg|cmolkg-?1|cmolckg-?1");
    put("g/cm3", "g/?cm3|g/?cc|gcm-?3|mg/m3|mgm-?3|t/m3");
    put("kg/m3", "kg/?m3|kgm-?3");
    put("t/ha", "t/ha|mg/ha|tonnes/ha");
    put(
        "t/ac",
        "t/ac(re)?|tons?/ac(re)?(-?6in(ch)?)?|t/a|t/ac(re)?-?6in(ch)?|tons?/acre-?6in(ch)?");
    put("lb/ac", "lbs?/ac(re)?");
    put("deg", "deg|degrees|\u00b0|dd|decimaldegrees");
  }

  private UnitText() {}

  private static void put(String unit, String pattern) {
    SPELLINGS.put(unit, Pattern.compile(pattern));
  }

  /** The one spelling of a unit that is not EC's; empty if the text is none. */
  public static Optional<String> of(String text) {
    String plain =
        Normalizer.normalize(text, Normalizer.Form.NFKC)
            .toLowerCase(Locale.ROOT)
            .replace('\u2212', '-')
            .replaceAll("\\s+", "");
    return SPELLINGS.entrySet().stream()
        .filter(e -> e.getValue().matcher(plain).matches())
        .map(Map.Entry::getKey)
        .findFirst();
  }

  /** Whether a text is a unit of anything that we read. */
  public static boolean isUnit(String text) {
    return of(text).isPresent() || ReadingUnit.of(text).isPresent();
  }

  /** Where a unit begins at the end of a header (blanks for underscores); -1 if none does. */
  static int trailing(String header) {
    Matcher ec = TRAILING_EC.matcher(header);
    if (ec.find()) {
      return ec.start();
    }
    Matcher other = TRAILING.matcher(header);
    return other.find() ? other.start() : -1;
  }
}
