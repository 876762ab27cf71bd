package fieldsalt.report.markup;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.quantity.UnitSystem;
import fieldsalt.quantity.UnitSystem.Amount;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Numbers as people read them: with their unit, and with no more digits than they deserve. Two
 * figures for what carries an error of some tenths; a no-break space before the unit.
 */
public final class Figures {
  private static final Pattern LONG_NUMBER = Pattern.compile("(?<![\\d.,])\\d{5,15}(?!\\d)");
  private static final Pattern RANGE = Pattern.compile("\\((\\d[\\d.]*)-(\\d[\\d.]*)\\)");
  public static final String GAP = "\u00a0";
  private final UnitSystem system;
  private final String property;
  private final String unit;

  /**
   * @param property what is mapped, e.g. {@code ECe}
   * @param unit of it, e.g. {@code dS/m}
   */
  public Figures(UnitSystem system, String property, String unit) {
    this.system = system;
    this.property = property;
    this.unit = unit;
  }

  /** What is mapped. */
  public String property() {
    return property;
  }

  public boolean isEce() {
    return property.equals(SiteReadings.ECE);
  }

  /** {@code 4.2 dS/m}. */
  public String value(double value) {
    return twoFigures(value) + (unit.isEmpty() ? "" : GAP + unit);
  }

  /** {@code 4.2 (3.1 to 5.6) dS/m}. */
  public String value(double low, double mid, double high) {
    return interval(low, mid, high) + (unit.isEmpty() ? "" : GAP + unit);
  }

  public UnitSystem system() {
    return system;
  }

  /** {@code 34 ha}, {@code 84 acres}. */
  public String amount(double inside, Amount amount) {
    return twoFigures(system.of(inside, amount)) + GAP + unit(amount);
  }

  /** {@code 34 (28 to 41) ha}. */
  public String amount(double low, double mid, double high, Amount amount) {
    return interval(system.of(low, amount), system.of(mid, amount), system.of(high, amount))
        + GAP
        + unit(amount);
  }

  /** An area, whose figure is exact: one decimal below 10. */
  public String area(double ha) {
    double shown = system.of(ha, Amount.AREA);
    return decimals(shown, shown < 10 ? 1 : 0) + GAP + unit(Amount.AREA);
  }

  public String unit(Amount amount) {
    return system.unit(amount);
  }

  /** {@code 4.2 (3.1 to 5.6)}: all three to the place of the middle one's second figure. */
  public static String interval(double low, double mid, double high) {
    int places = places(mid != 0 ? mid : high);
    return decimals(mid, places)
        + " ("
        + decimals(low, places)
        + " to "
        + decimals(high, places)
        + ")";
  }

  /** Whole per cent of a share that was counted or computed. */
  public static String percent(double share) {
    return Math.round(100 * share) + GAP + "%";
  }

  /** A chance in whole per cent; never told as certain. */
  public static String chance(double chance) {
    if (chance > 0.99) {
      return "over" + GAP + "99" + GAP + "%";
    }
    return chance < 0.01 ? "under" + GAP + "1" + GAP + "%" : percent(chance);
  }

  /** A text in which long numbers are set in threes and ranges in brackets are spelt out. */
  public static String grouped(String text) {
    return LONG_NUMBER
        .matcher(RANGE.matcher(text).replaceAll("($1 to $2)"))
        .replaceAll(m -> String.format(Locale.ROOT, "%,d", Long.parseLong(m.group())));
  }

  /** Two significant figures, thousands apart. */
  public static String twoFigures(double value) {
    return decimals(value, places(value));
  }

  private static int places(double value) {
    double size = Math.abs(value);
    if (!(size > 0) || Double.isInfinite(size)) {
      return 0;
    }
    BigDecimal two = new BigDecimal(size).round(new MathContext(2, RoundingMode.HALF_UP));
    return 2 - (two.precision() - two.scale());
  }

  /** A number at so many decimals; fewer than none rounds to tens, hundreds. */
  public static String decimals(double value, int places) {
    if (!Double.isFinite(value)) {
      return "unknown";
    }
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP);
    String text = String.format(Locale.ROOT, "%,." + Math.max(0, places) + "f", rounded);
    return text.replace("-", "\u2212").replaceFirst("^\u2212(0(\\.0*)?)$", "$1");
  }

  /** {@code 1 site}, {@code 3 sites}. */
  public static String count(long n, String one) {
    return count(n, one, one + "s");
  }

  public static String count(long n, String one, String many) {
    return String.format(Locale.ROOT, "%,d", n) + " " + (n == 1 ? one : many);
  }
}
