package fieldsalt.plan.draw;

import java.util.Arrays;

/** The middle of an amount, given that any of it is needed. */
public final class Middle {
  private Middle() {}

  /** Median of the positive draws; 0 if there is none. */
  public static double ofPositive(double[] draws) {
    double[] needed = Arrays.stream(draws).filter(x -> x > 0).sorted().toArray();
    return needed.length == 0 ? 0 : needed[needed.length / 2];
  }
}
