package fieldsalt.surface;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class InverseDistanceTest {
  private static double plain(KernelData data, int[] sites, double x, double y, double power) {
    double sum = 0;
    double weights = 0;
    for (int i : sites) {
      double weight = Math.pow(Math.hypot(data.xM()[i] - x, data.yM()[i] - y), -power);
      weights += weight;
      sum += weight * data.value()[i];
    }
    return sum / weights;
  }

  @ParameterizedTest
  @CsvSource({"1,2,0.3", "12,2,0.3", "12,2,40", "12,3.5,7", "300,2,5", "300,1,5", "500,2,5"})
  void equalsTheFormula(int neighbours, double power, double cell) {
    KernelData data = KernelCases.random(300, 500, 21);
    InverseDistance kernel = new InverseDistance(data, power, neighbours);
    KernelGroup group = KernelCases.group(data, 100, 90, cell, kernel.groupSide());
    kernel.solver().predict(group);
    for (int j = 0; j < group.count(); j++) {
      int[] sites =
          KernelOracle.nearest(KernelCases.SPHERICAL, data, group.x[j], group.y[j], neighbours);
      double expected = plain(data, sites, group.x[j], group.y[j], power);
      assertThat(group.estimate[j]).isCloseTo(expected, within(1e-12));
      assertThat(group.variance[j]).isZero();
    }
  }

  @ParameterizedTest
  @CsvSource({"2,3", "2,2", "3,2", "3,3"})
  void atASiteItIsItsValueAndOfTwoSitesThereTheMean(double power, int neighbours) {
    KernelData data =
        KernelData.of(new double[] {10, 50, 10}, new double[] {10, 10, 10}, new double[] {1, 5, 2});
    KernelGroup group = new KernelGroup(2, 1);
    group.add(0, 10, 10);
    group.add(1, 50, 10);
    new InverseDistance(data, power, neighbours).solver().predict(group);
    assertThat(group.estimate[0]).isEqualTo(1.5);
    assertThat(group.estimate[1]).isEqualTo(5);
  }

  @Test
  void refusesPowerAndNeighboursThatMeanNothing() {
    KernelData data = KernelCases.random(3, 10, 1);
    assertThatThrownBy(() -> new InverseDistance(data, 0, 2))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("0.0 and 2");
    assertThatThrownBy(() -> new InverseDistance(data, 2, 0))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
