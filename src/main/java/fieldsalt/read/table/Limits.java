package fieldsalt.read.table;

import fieldsalt.facts.Plausibility;
import fieldsalt.read.word.PlainText;
import java.util.OptionalDouble;

/** Plausible ranges in words, and the slip of the decimal point that explains a value outside. */
public final class Limits {
  private static final double[] SLIPS = {0.1, 10, 0.01, 100, 0.001, 1000};

  private Limits() {}

  /** The usual range, with its unit. */
  public static String usual(Plausibility of) {
    return words(of.warnBelow(), "", of.warnAbove(), of.unit());
  }

  /** The possible range, with its unit. */
  public static String possible(Plausibility of) {
    return words(of.refuseBelow(), of.refuseAt() ? "above " : "", of.refuseAbove(), of.unit());
  }

  private static String words(OptionalDouble low, String open, OptionalDouble high, String unit) {
    String to = high.isPresent() ? " to " + PlainText.number(high.getAsDouble()) : " or more";
    return (open + PlainText.number(low.orElse(0)) + to + " " + unit).strip();
  }

  /** The factor of ten, hundred or thousand that would make a value usual; empty if none does. */
  static OptionalDouble slip(Plausibility of, double value) {
    for (double factor : SLIPS) {
      double corrected = value * factor;
      if (of.isUsual(corrected) && corrected > 1.01 * of.warnBelow().orElse(0)) {
        return OptionalDouble.of(factor);
      }
    }
    return OptionalDouble.empty();
  }
}
