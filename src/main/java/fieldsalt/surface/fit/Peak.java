package fieldsalt.surface.fit;

import java.util.function.DoubleUnaryOperator;

/**
 * The highest point of a smooth function of one variable that has one top.
 *
 * @param at where
 * @param value the function there
 */
record Peak(double at, double value) {
  private static final double FIRST_STEP = 0.5;
  private static final double GROWTH = 1.8;
  private static final double CLOSE = 0.01;
  private static final int MOST = 40;

  /**
   * Steps uphill from a start until the top lies between two points, then takes the top of the
   * parabola through three points until it moves by less than 0.01.
   *
   * @param low the least that may be tried
   * @param high the most
   */
  static Peak of(DoubleUnaryOperator function, double start, double low, double high) {
    Peak middle = at(function, Math.min(high, Math.max(low, start)));
    Peak left = at(function, Math.max(low, middle.at - FIRST_STEP));
    Peak right = at(function, Math.min(high, middle.at + FIRST_STEP));
    double step = FIRST_STEP;
    while (right.value > middle.value && right.at < high) {
      step *= GROWTH;
      left = middle;
      middle = right;
      right = at(function, Math.min(high, middle.at + step));
    }
    while (left.value > middle.value && left.at > low) {
      step *= GROWTH;
      right = middle;
      middle = left;
      left = at(function, Math.max(low, middle.at - step));
    }
    return narrowed(function, left, middle, right);
  }

  private static Peak at(DoubleUnaryOperator function, double x) {
    return new Peak(x, function.applyAsDouble(x));
  }

  private static Peak narrowed(DoubleUnaryOperator function, Peak left, Peak middle, Peak right) {
    for (int i = 0; i < MOST; i++) {
      Peak next = at(function, next(left, middle, right));
      boolean arrived = Math.abs(next.at - middle.at) < CLOSE;
      Peak best = next.value > middle.value ? next : middle;
      Peak other = next.value > middle.value ? middle : next;
      if (arrived) {
        return best;
      }
      left = other.at < best.at ? other : left;
      right = other.at > best.at ? other : right;
      middle = best;
    }
    return middle;
  }

  /** Top of the parabola, or the middle of the wider side where there is none inside. */
  private static double next(Peak left, Peak middle, Peak right) {
    double a = (middle.at - left.at) * (middle.value - right.value);
    double b = (middle.at - right.at) * (middle.value - left.value);
    double top =
        middle.at - 0.5 * ((middle.at - left.at) * a - (middle.at - right.at) * b) / (a - b);
    if (top > left.at && top < right.at) {
      return top;
    }
    boolean wideRight = right.at - middle.at > middle.at - left.at;
    return (middle.at + (wideRight ? right.at : left.at)) / 2;
  }
}
