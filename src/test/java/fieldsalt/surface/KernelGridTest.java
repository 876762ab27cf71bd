package fieldsalt.surface;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class KernelGridTest {
  private static final Grid GRID = new Grid(-20, 430, 3.7, 113, 97);

  static Stream<PredictionKernel> kernels() {
    KernelData data = KernelCases.withEverything(700, 400, 31);
    KernelSites sites = new KernelSites(KernelCases.EXPONENTIAL, data, true);
    return Stream.of(
        new SharedKernel(sites, 60),
        new NearestKernel(sites, 16),
        GlobalKernel.of(new KernelSites(KernelCases.SPHERICAL, small(), true), true),
        new InverseDistance(data, 2, 12));
  }

  private static KernelData small() {
    return KernelCases.withEverything(80, 400, 32);
  }

  private static double[] run(PredictionKernel kernel, int threads, int rowsAtATime) {
    double[] out = new double[2 * GRID.cells()];
    Arrays.fill(out, Double.NaN);
    KernelGrid.Drift drift =
        (cell, q) ->
            KernelCases.drift(
                GRID.centreX(cell % GRID.columns()), GRID.centreY(cell / GRID.columns()));
    KernelGrid cells = new KernelGrid(GRID, cell -> cell % 7 != 3, drift, threads);
    for (int row = 0; row < GRID.rows(); row += rowsAtATime) {
      cells.predictRows(
          kernel,
          2,
          row,
          Math.min(GRID.rows(), row + rowsAtATime),
          share -> {},
          (cell, estimate, variance) -> {
            out[2 * cell] = estimate;
            out[2 * cell + 1] = variance;
          });
    }
    return out;
  }

  @ParameterizedTest
  @MethodSource("kernels")
  void theSameBitsWhateverTheThreadsAndStrips(PredictionKernel kernel) {
    double[] one = run(kernel, 1, GRID.rows());
    assertThat(run(kernel, 2, GRID.rows())).isEqualTo(one);
    assertThat(run(kernel, 5, 48)).isEqualTo(one);
    for (int cell = 0; cell < GRID.cells(); cell++) {
      assertThat(Double.isNaN(one[2 * cell])).isEqualTo(cell % 7 == 3);
      assertThat(Double.isNaN(one[2 * cell + 1])).isEqualTo(cell % 7 == 3);
    }
  }

  @Test
  void progressNeverFallsAndEndsAtOne() {
    List<Double> shares = new ArrayList<>();
    KernelGrid.of(GRID)
        .predict(new InverseDistance(small(), 2, 3), 1, shares::add, (cell, e, v) -> {});
    assertThat(shares).isSorted().hasSizeBetween(50, 201);
    assertThat(shares.get(shares.size() - 1)).isEqualTo(1);
  }

  @Test
  void aFaultInAnyThreadIsTheCallersFault() {
    KernelGrid.Sink faulty =
        (cell, e, v) -> {
          throw new UnsupportedOperationException("no");
        };
    for (int threads = 1; threads < 4; threads++) {
      KernelGrid cells = new KernelGrid(GRID, cell -> true, KernelGrid.Drift.NONE, threads);
      assertThatThrownBy(
              () -> cells.predict(new InverseDistance(small(), 2, 3), 1, s -> {}, faulty))
          .hasStackTraceContaining("UnsupportedOperationException");
    }
  }

  @Test
  void stripsBeginAtAGroupsBorder() {
    KernelSites sites = new KernelSites(KernelCases.SPHERICAL, small(), true);
    assertThatThrownBy(
            () ->
                KernelGrid.of(GRID)
                    .predictRows(
                        new SharedKernel(sites, 8), 1, 12, 20, s -> {}, (cell, e, v) -> {}))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
