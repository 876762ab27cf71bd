package fieldsalt.report.draw;

import java.util.ArrayList;
import java.util.List;

/**
 * One axis of a chart.
 *
 * @param label with its unit
 */
public record Axis(String label, double from, double to, boolean log) {
  public Axis {
    if (!(to > from) || (log && !(from > 0))) {
      throw new IllegalArgumentException("an axis must rise, was " + from + " to " + to);
    }
  }

  /** From 0 to somewhat beyond the largest value. */
  public static Axis fromZero(String label, double largest) {
    return new Axis(label, 0, largest > 0 ? 1.08 * largest : 1, false);
  }

  /** Logarithmic, somewhat wider than the values. */
  public static Axis logarithmic(String label, double smallest, double largest) {
    return new Axis(label, smallest / 1.3, largest * 1.3, true);
  }

  /** Where a value lies, 0 at the start and 1 at the end; what lies outside stays at the end. */
  double at(double value) {
    double share =
        log ? Math.log(value / from) / Math.log(to / from) : (value - from) / (to - from);
    return Math.min(1, Math.max(0, share));
  }

  /** Round numbers along it, three to seven. */
  List<Double> ticks() {
    return log ? logTicks() : linearTicks();
  }

  private List<Double> linearTicks() {
    double step = niceStep((to - from) / 5);
    List<Double> ticks = new ArrayList<>();
    for (long k = (long) Math.ceil(from / step - 1e-9); k * step <= to * (1 + 1e-12); k++) {
      ticks.add(k * step);
    }
    return ticks;
  }

  private List<Double> logTicks() {
    List<Double> ticks = new ArrayList<>();
    for (int power = (int) Math.floor(Math.log10(from)); Math.pow(10, power) <= to; power++) {
      for (int digit : digits()) {
        double tick = digit * Math.pow(10, power);
        if (tick >= from && tick <= to) {
          ticks.add(tick);
        }
      }
    }
    return ticks;
  }

  private int[] digits() {
    double decades = to / from;
    if (decades > 300) {
      return new int[] {1};
    }
    return decades > 5 ? new int[] {1, 2, 5} : new int[] {1, 2, 3, 4, 6, 8};
  }

  /** The smallest of 1, 2, 5 x 10^k that is not below a size. */
  static double niceStep(double size) {
    double power = Math.pow(10, Math.floor(Math.log10(size)));
    for (double digit : new double[] {1, 2, 5}) {
      if (digit * power >= size * (1 - 1e-9)) {
        return digit * power;
      }
    }
    return 10 * power;
  }
}
