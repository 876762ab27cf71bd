package fieldsalt.zones.field;

import fieldsalt.classes.ClassScheme;
import fieldsalt.classes.ClassSchemes;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Limits that cut values into a number of groups with the least sum of squares within groups: exact
 * optimal grouping in one dimension by dynamic programming (Fisher 1958, Journal of the American
 * Statistical Association 53:789-798).
 */
public final class OptimalGroups {
  /** More values than this are first put into so many bins of equal count. */
  private static final int MOST_VALUES = 100_000;

  private final double[] weight;
  private final double[] sum;
  private final double[] squares;
  private double[] before;
  private double[] now;
  private int[] cut;

  private OptimalGroups(double[] values) {
    int n = values.length;
    weight = new double[n + 1];
    sum = new double[n + 1];
    squares = new double[n + 1];
    double centre = values[n / 2];
    for (int i = 0; i < n; i++) {
      double v = values[i] - centre;
      weight[i + 1] = weight[i] + 1;
      sum[i + 1] = sum[i] + v;
      squares[i + 1] = squares[i] + v * v;
    }
    before = new double[n + 1];
    now = new double[n + 1];
    cut = new int[n + 1];
  }

  /**
   * Limits between groups, each halfway between the values it separates.
   *
   * @param sorted ascending, finite
   * @return at most {@code groups - 1} limits, fewer if there are fewer distinct values
   */
  static double[] limits(double[] sorted, int groups) {
    double[] values = thinned(sorted);
    long distinct = Arrays.stream(values).distinct().count();
    int wanted = (int) Math.min(groups, distinct);
    if (wanted < 2) {
      return new double[0];
    }
    int[] starts = new OptimalGroups(values).starts(wanted);
    return Arrays.stream(starts).mapToDouble(s -> (values[s - 1] + values[s]) / 2).toArray();
  }

  private static double[] thinned(double[] sorted) {
    if (sorted.length <= MOST_VALUES) {
      return sorted;
    }
    double[] some = new double[MOST_VALUES];
    for (int k = 0; k < MOST_VALUES; k++) {
      some[k] = sorted[(int) ((k + 0.5) * sorted.length / MOST_VALUES)];
    }
    return some;
  }

  /** First index of each group but the first. */
  private int[] starts(int groups) {
    int n = before.length - 1;
    int[][] cuts = new int[groups + 1][];
    for (int end = 0; end <= n; end++) {
      before[end] = within(0, end);
    }
    for (int g = 2; g <= groups; g++) {
      cut = new int[n + 1];
      Arrays.fill(now, Double.POSITIVE_INFINITY);
      solve(g, n, g - 1, n);
      cuts[g] = cut;
      double[] swap = before;
      before = now;
      now = swap;
    }
    int[] starts = new int[groups - 1];
    int end = n;
    for (int g = groups; g >= 2; g--) {
      end = cuts[g][end];
      starts[g - 2] = end;
    }
    return starts;
  }

  /** Best last cut for each end in a range; cuts rise with the end, so halves bound each other. */
  private void solve(int firstEnd, int lastEnd, int lowCut, int highCut) {
    if (firstEnd > lastEnd) {
      return;
    }
    int end = (firstEnd + lastEnd) >>> 1;
    int best = -1;
    for (int c = lowCut; c <= Math.min(end - 1, highCut); c++) {
      double cost = before[c] + within(c, end);
      if (best < 0 || cost < now[end]) {
        now[end] = cost;
        best = c;
      }
    }
    cut[end] = best;
    solve(firstEnd, end - 1, lowCut, best);
    solve(end + 1, lastEnd, best, highCut);
  }

  private double within(int from, int to) {
    double w = weight[to] - weight[from];
    double s = sum[to] - sum[from];
    return w == 0 ? 0 : Math.max(0, squares[to] - squares[from] - s * s / w);
  }

  /** Classes for a number of zones; without values one class. */
  public static ClassScheme scheme(FieldMap map, ClassScheme given, ZoneSettings settings) {
    ValueScale scale = ValueScale.of(map.map());
    double[] values = map.values(scale);
    Arrays.sort(values);
    List<Double> breaks = new ArrayList<>();
    if (values.length > 0) {
      Arrays.stream(limits(values, settings.count())).forEach(l -> breaks.add(scale.back(l)));
    }
    return new ClassScheme(
        (breaks.size() + 1) + " classes of least spread",
        breaks,
        labels(breaks, settings.unit()),
        !settings.unit().isEmpty(),
        given.limitDsPerM());
  }

  private static List<String> labels(List<Double> breaks, String unit) {
    return breaks.isEmpty()
        ? List.of("all values")
        : ClassSchemes.between(limitTexts(breaks), unit);
  }

  /** As few decimals as tell the limits apart, at least one. */
  private static List<String> limitTexts(List<Double> breaks) {
    for (int decimals = 1; decimals < 9; decimals++) {
      String format = "%." + decimals + "f";
      List<String> texts = breaks.stream().map(b -> String.format(Locale.ROOT, format, b)).toList();
      boolean zero = breaks.get(0) != 0 && Double.parseDouble(texts.get(0)) == 0;
      if (!zero && texts.stream().distinct().count() == texts.size()) {
        return texts;
      }
    }
    return breaks.stream().map(String::valueOf).toList();
  }
}
