package fieldsalt.read.table;

import fieldsalt.facts.Plausibility;
import fieldsalt.quantity.Method;
import java.util.OptionalDouble;

/** The limits of belief of one quantity, in the words that reading needs. */
public record Limit(Plausibility of) {

  /** The limits of one of our columns. */
  public static Limit of(String ours) {
    return new Limit(Plausibility.of(ours));
  }

  public static Limit ofEc(Method method) {
    return of("ec_" + method.label());
  }

  public boolean isUsual(double value) {
    return isPossible(value) && !of.doubts(value);
  }

  public boolean isPossible(double value) {
    return !of.refuses(value);
  }

  /** The usual range in words. */
  public String usual() {
    return words(of.warnBelow(), "", of.warnAbove());
  }

  /** The possible range in words. */
  public String possible() {
    return words(of.refuseBelow(), of.refuseAt() ? "above " : "", of.refuseAbove());
  }

  private String words(OptionalDouble low, String open, OptionalDouble high) {
    String from = open + (low.isPresent() ? LineCells.plain(low.getAsDouble()) : "0");
    String to = high.isPresent() ? " to " + LineCells.plain(high.getAsDouble()) : " or more";
    return from + to + (unit().isEmpty() ? "" : " " + unit());
  }

  String unit() {
    return of.unit();
  }

  /** The factor of ten, hundred or thousand that would make a value usual; empty if none does. */
  OptionalDouble slip(double value) {
    for (double factor : new double[] {0.1, 10, 0.01, 100, 0.001, 1000}) {
      double mended = value * factor;
      if (isUsual(mended) && mended > 1.01 * of.warnBelow().orElse(0)) {
        return OptionalDouble.of(factor);
      }
    }
    return OptionalDouble.empty();
  }
}
