package fieldsalt.zones.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.read.field.FieldBoundary;
import fieldsalt.zones.ChangedZones;
import fieldsalt.zones.Given;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class OptimalGroupsTest {
  private static double within2(double[] values, int from, int to) {
    double mean = Arrays.stream(values, from, to).average().orElse(0);
    return Arrays.stream(values, from, to).map(v -> (v - mean) * (v - mean)).sum();
  }

  /** Least sum of squares over every way to cut sorted values into groups. */
  private static double bruteForce(double[] values, int from, int groups) {
    if (groups == 1) {
      return within2(values, from, values.length);
    }
    double least = Double.POSITIVE_INFINITY;
    for (int end = from + 1; end <= values.length - groups + 1; end++) {
      least = Math.min(least, within2(values, from, end) + bruteForce(values, end, groups - 1));
    }
    return least;
  }

  private static double cost(double[] values, double[] limits) {
    double sum = 0;
    int from = 0;
    for (int k = 0; k <= limits.length; k++) {
      int to = from;
      while (to < values.length && (k == limits.length || values[to] < limits[k])) {
        to++;
      }
      sum += within2(values, from, to);
      from = to;
    }
    return sum;
  }

  @Test
  void limitsCostNoMoreThanAnyOtherCut() {
    Random random = new Random(11);
    for (int trial = 0; trial < 60; trial++) {
      double[] values = new double[6 + random.nextInt(9)];
      Arrays.setAll(values, i -> 5 + random.nextGaussian() + (random.nextBoolean() ? 3 : 0));
      Arrays.sort(values);
      for (int groups = 2; groups <= 5; groups++) {
        double[] limits = OptimalGroups.limits(values, groups);
        assertThat(limits).hasSize(groups - 1);
        assertThat(cost(values, limits)).isCloseTo(bruteForce(values, 0, groups), within(1e-9));
      }
    }
  }

  @Test
  void threeClumpsAreCutHalfwayBetweenThem() {
    assertThat(OptimalGroups.limits(new double[] {1, 1.2, 5, 5.4, 9, 9.2}, 3))
        .containsExactly(new double[] {3.1, 7.2}, within(1e-12));
  }

  @Test
  void fewerDistinctValuesThanGroupsGiveFewerLimits() {
    assertThat(OptimalGroups.limits(new double[] {2, 2, 2, 3, 3}, 4)).containsExactly(2.5);
    assertThat(OptimalGroups.limits(new double[] {2, 2, 2}, 3)).isEmpty();
  }

  @Test
  void aNumberOfZonesCutsTheLogarithm() {
    FieldBoundary field =
        Given.field("north", Given.wkt("POLYGON ((0 0, 600 0, 600 200, 0 200, 0 0))"));
    ZoneMap zones =
        Given.zones(
            field,
            5,
            (x, y) -> x < 200 ? 1 : x < 400 ? 4 : 16,
            Given.scheme(2.0),
            ChangedZones.withCount(ZoneSettings.defaults(), 3).withBy(ZoneSettings.By.COUNT));
    List<Double> breaks = zones.schemeByField().get("north").breaks();
    assertThat(breaks).hasSize(2);
    assertThat(breaks.get(0)).isCloseTo(2, within(1e-6));
    assertThat(breaks.get(1)).isCloseTo(8, within(1e-6));
    assertThat(zones.zones()).extracting(Zone::klass).containsExactly(0, 1, 2);
    assertThat(zones.varianceExplainedByField().get("north")).isCloseTo(1, within(1e-9));
  }
}
