package fieldsalt.plan.setting;

import fieldsalt.finding.InputProblem.Problem;
import java.util.List;
import java.util.OptionalDouble;

/** Checks of numbers that a job may set. */
final class Range {
  private Range() {}

  /** At least {@code least}, at most {@code most}. */
  static void check(
      List<Problem> problems,
      String key,
      OptionalDouble value,
      double least,
      double most,
      String unit) {
    if (value.isPresent() && !(value.getAsDouble() >= least && value.getAsDouble() <= most)) {
      problems.add(problem(key, value.getAsDouble(), number(least) + " to " + number(most), unit));
    }
  }

  /** Above 0, at most {@code most}. */
  static void above(
      List<Problem> problems, String key, OptionalDouble value, double most, String unit) {
    if (value.isPresent() && !(value.getAsDouble() > 0 && value.getAsDouble() <= most)) {
      problems.add(problem(key, value.getAsDouble(), "above 0, at most " + number(most), unit));
    }
  }

  private static Problem problem(String key, double found, String expected, String unit) {
    String sign = unit.isEmpty() ? "" : " " + unit;
    return new Problem(
        "job key " + key,
        number(found) + sign,
        expected + sign,
        "Correct it, or leave the key out to use the default.");
  }

  private static String number(double x) {
    return x == Math.rint(x) ? String.valueOf((long) x) : String.valueOf(x);
  }
}
