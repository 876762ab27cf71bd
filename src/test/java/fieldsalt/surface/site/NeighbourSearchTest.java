package fieldsalt.surface.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.Comparator;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NeighbourSearchTest {
  private static int[] bySorting(double[] x, double[] y, double px, double py, int k) {
    return IntStream.range(0, x.length)
        .boxed()
        .sorted(
            Comparator.<Integer>comparingDouble(
                    i -> (x[i] - px) * (x[i] - px) + (y[i] - py) * (y[i] - py))
                .thenComparing(i -> i))
        .limit(k)
        .mapToInt(i -> i)
        .toArray();
  }

  private static int[] found(NeighbourSearch search, double px, double py, int k) {
    NeighbourSearch.Found found = new NeighbourSearch.Found(k);
    search.nearest(px, py, found);
    return Arrays.copyOf(found.indices(), found.count());
  }

  private static void equalsSorting(double[] x, double[] y, double reach, Random random) {
    NeighbourSearch search = new NeighbourSearch(x, y);
    for (int trial = 0; trial < 60; trial++) {
      double px = -0.2 * reach + 1.4 * reach * random.nextDouble();
      double py = -0.2 * reach + 1.4 * reach * random.nextDouble();
      int k = 1 + random.nextInt(40);
      assertThat(found(search, px, py, k)).isEqualTo(bySorting(x, y, px, py, k));
      double radius = reach * random.nextDouble() * 0.3;
      int[] near = new int[x.length];
      int count = search.within(px, py, radius, near);
      int[] expected =
          IntStream.range(0, x.length)
              .filter(i -> (x[i] - px) * (x[i] - px) + (y[i] - py) * (y[i] - py) <= radius * radius)
              .toArray();
      assertThat(Arrays.stream(near, 0, count).sorted().toArray()).isEqualTo(expected);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 10, 1000, 5000})
  void equalsSortingAllPoints(int n) {
    Random random = new Random(n);
    equalsSorting(
        random.doubles(n, 0, 700).toArray(), random.doubles(n, 0, 700).toArray(), 700, random);
  }

  @Test
  void equalsSortingWhereManyTie() {
    Random random = new Random(4);
    double[] x = random.ints(2000, 0, 20).asDoubleStream().toArray();
    double[] y = random.ints(2000, 0, 20).asDoubleStream().toArray();
    equalsSorting(x, y, 20, random);
  }

  @Test
  void equalsSortingOnALineAndAroundFarOutliers() {
    Random random = new Random(5);
    double[] x = random.doubles(1500, 0, 500).toArray();
    double[] y = new double[1500];
    equalsSorting(x, y, 500, random);
    for (int i = 0; i < 40; i++) {
      x[i] = 1e6 * random.nextGaussian();
      y[i] = 1e6 * random.nextGaussian();
    }
    equalsSorting(x, y, 500, random);
  }

  @Test
  void ofPointsAtOneDistanceTheEarlierComesFirst() {
    double[] x = {1, 0, -1, 0, 0};
    double[] y = {0, 1, 0, -1, 0};
    NeighbourSearch search = new NeighbourSearch(x, y);
    assertThat(found(search, 0, 0, 3)).containsExactly(4, 0, 1);
    assertThat(found(search, 0, 0, 9)).containsExactly(4, 0, 1, 2, 3);
  }

  @Test
  void saysHowManyThereAreWhenTheyDoNotFit() {
    NeighbourSearch search = new NeighbourSearch(new double[] {0, 1, 2}, new double[3]);
    assertThat(search.within(1, 0, 1, new int[1])).isEqualTo(3);
  }

  @Test
  void refusesNoPoints() {
    assertThatThrownBy(() -> new NeighbourSearch(new double[0], new double[0]))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new NeighbourSearch.Found(0))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
