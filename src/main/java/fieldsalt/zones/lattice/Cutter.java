package fieldsalt.zones.lattice;

/**
 * Cuts a value, and where there is one a second value, into a combined class: class of the first
 * times the number of second classes plus class of the second.
 *
 * @param breaks of the first value, ascending, on the scale of the values
 * @param secondBreaks of the second value, ascending; empty without one
 */
public record Cutter(double[] breaks, double[] secondBreaks) {
  public int classOf(double value, double second) {
    return index(breaks, value) * seconds() + index(secondBreaks, second);
  }

  private static int index(double[] breaks, double value) {
    int k = 0;
    while (k < breaks.length && value >= breaks[k]) {
      k++;
    }
    return k;
  }

  private int seconds() {
    return secondBreaks.length + 1;
  }

  public int first(int klass) {
    return klass / seconds();
  }

  public int second(int klass) {
    return klass % seconds();
  }

  /**
   * Where between two values the limit between two classes lies, 0 at the first value to 1 at the
   * second: the middle of all limits between the values, of those between the wanted classes if
   * there are any.
   *
   * @return NaN if no limit lies between them
   */
  static double between(double[] breaks, double from, double to, int wantedA, int wantedB) {
    int a = index(breaks, from);
    int b = index(breaks, to);
    int low = Math.min(a, b);
    int high = Math.max(a, b) - 1;
    if (low > high) {
      return Double.NaN;
    }
    int wantedLow = Math.max(low, Math.min(wantedA, wantedB));
    int wantedHigh = Math.min(high, Math.max(wantedA, wantedB) - 1);
    boolean met = wantedLow <= wantedHigh;
    double limit = (breaks[met ? wantedLow : low] + breaks[met ? wantedHigh : high]) / 2;
    return (limit - from) / (to - from);
  }
}
