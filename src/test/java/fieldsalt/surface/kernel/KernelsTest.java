package fieldsalt.surface.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Exponential;
import java.util.Arrays;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Every fast path against the textbook's full system, place by place. */
class KernelsTest {
  private static final double TOLERANCE = 1e-9;

  static Stream<Arguments> cases() {
    return Stream.of(KernelCases.SPHERICAL, KernelCases.EXPONENTIAL, KernelCases.MATERN)
        .flatMap(
            model ->
                Stream.of(
                        KernelCases.random(150, 400, 1),
                        KernelCases.withEverything(150, 400, 2),
                        KernelCases.random(3, 400, 3),
                        KernelCases.random(1, 400, 4))
                    .flatMap(
                        data -> Stream.of(true, false).map(m -> Arguments.of(model, data, m))));
  }

  private interface Neighbours {
    int[] of(double x, double y);
  }

  private static void equalsTextbook(
      PredictionKernel kernel,
      CovarianceModel model,
      KernelData data,
      boolean microScale,
      KernelGroup group,
      Neighbours neighbours) {
    double[] x = group.x.clone();
    double[] y = group.y.clone();
    kernel.solver().predict(group);
    for (int j = 0; j < group.count(); j++) {
      int place = group.id[j];
      double[] trend =
          data.trend().length == 1
              ? new double[] {1}
              : new double[] {1, KernelCases.drift(x[place], y[place])};
      int[] sites = neighbours.of(x[place], y[place]);
      KernelOracle.Result expected =
          KernelOracle.krige(model, data, sites, x[place], y[place], trend, microScale);
      double shared = 0;
      for (double[] column : data.shared()) {
        double s = 0;
        for (int i = 0; i < sites.length; i++) {
          s += expected.weights()[i] * column[sites[i]];
        }
        shared += s * s;
      }
      assertThat(group.estimate[j]).isCloseTo(expected.estimate(), within(TOLERANCE));
      assertThat(group.variance[j]).isCloseTo(expected.variance() + shared, within(TOLERANCE));
    }
  }

  @ParameterizedTest
  @MethodSource("cases")
  void sharedEqualsTextbookWithTheMiddlesNeighbours(
      CovarianceModel model, KernelData data, boolean microScale) {
    KernelSites sites = new KernelSites(model, data, microScale);
    double cell = 0.5;
    double middleX = 111 + 3.5 * cell;
    double middleY = 57 + 3.5 * cell;
    if (model.anisotropy().ratio() == 1) {
      equalsTextbook(
          new SharedKernel(sites, 40),
          model,
          data,
          microScale,
          KernelCases.group(data, 111, 57, cell, 8),
          (x, y) -> KernelOracle.nearest(model, data, middleX, middleY, 40));
    }
  }

  @Test
  void aGroupAsWideAsTheNeighbourhoodIsSplit() {
    KernelData data = KernelCases.random(400, 1000, 9);
    KernelSites sites = new KernelSites(KernelCases.SPHERICAL, data, true);
    KernelGroup group = KernelCases.group(data, 100, 100, 110, 8);
    equalsTextbook(
        new SharedKernel(sites, 48),
        KernelCases.SPHERICAL,
        data,
        true,
        group,
        (x, y) -> KernelOracle.nearest(KernelCases.SPHERICAL, data, x, y, 48));
  }

  @Test
  void twoSitesAtOnePlaceWithoutErrorCountAsTheirMean() {
    KernelData data = KernelCases.random(60, 300, 12);
    double[] x = data.xM().clone();
    double[] y = data.yM().clone();
    x[59] = x[5];
    y[59] = y[5];
    KernelData twice = KernelData.of(x, y, data.value());
    double[] value = Arrays.copyOf(data.value(), 59);
    value[5] = (data.value()[5] + data.value()[59]) / 2;
    KernelData once = KernelData.of(Arrays.copyOf(x, 59), Arrays.copyOf(y, 59), value);
    KernelSites sites = new KernelSites(KernelCases.MATERN, twice, true);
    for (PredictionKernel kernel :
        new PredictionKernel[] {new SharedKernel(sites, 59), new SharedKernel(sites, 60)}) {
      equalsTextbook(
          kernel,
          KernelCases.MATERN,
          once,
          true,
          KernelCases.group(once, x[5] - 2, y[5] - 2, 2.5, 4),
          (px, py) -> KernelOracle.all(once));
    }
  }

  @Test
  void manySitesAtOnePlaceWithErrorsAreData() {
    KernelData data = KernelCases.withEverything(120, 200, 13);
    double[] x = data.xM().clone();
    double[] y = data.yM().clone();
    Arrays.fill(x, 30, 110, 100);
    Arrays.fill(y, 30, 110, 100);
    KernelData heap =
        new KernelData(x, y, data.value(), data.errorVariance(), data.trend(), data.shared());
    KernelSites sites = new KernelSites(KernelCases.SPHERICAL, heap, true);
    equalsTextbook(
        new SharedKernel(sites, 120),
        KernelCases.SPHERICAL,
        heap,
        true,
        KernelCases.group(heap, 97, 98, 1.7, 4),
        (px, py) -> KernelOracle.all(heap));
  }

  @Test
  void anErrorSharedByAllIsAddedToEveryVarianceAndChangesNoEstimate() {
    // an offset common to all rows is confounded with the mean: the weights sum to 1
    KernelData data = KernelCases.random(150, 400, 14);
    double[] all = new double[150];
    Arrays.fill(all, Math.sqrt(0.05));
    KernelGroup without = KernelCases.group(data, 50, 50, 3, 4);
    KernelGroup with = KernelCases.group(data, 50, 50, 3, 4);
    kernel(data).solver().predict(without);
    kernel(data.withShared(all)).solver().predict(with);
    for (int j = 0; j < with.count(); j++) {
      assertThat(with.estimate[j]).isCloseTo(without.estimate[j], within(1e-12));
      assertThat(with.variance[j]).isCloseTo(without.variance[j] + 0.05, within(1e-12));
    }
  }

  private static PredictionKernel kernel(KernelData data) {
    return new SharedKernel(new KernelSites(KernelCases.SPHERICAL, data, true), 40);
  }

  @Test
  void theExamplesOfTwoSitesWithErrors() {
    // Exponential, sill 1, distance parameter 100 m; sites at 0 and 100 m with y = 1, 2. Worked out
    // by hand: without error, weights .5/.5 and variance 0.470878 in the middle; with error
    // variances .1 and .4, 1.414978 and 0.583125.
    CovarianceModel model = new CovarianceModel(new Exponential(100), 1, 0);
    KernelData data = KernelData.of(new double[] {0, 100}, new double[2], new double[] {1, 2});
    KernelGroup group = new KernelGroup(1, 1);
    group.add(0, 50, 0);
    new SharedKernel(new KernelSites(model, data, true), 2).solver().predict(group);
    assertThat(group.estimate[0]).isCloseTo(1.5, within(1e-12));
    assertThat(group.variance[0]).isCloseTo(0.470878, within(5e-7));
    KernelData noisy = data.withErrorVariance(new double[] {0.1, 0.4});
    new SharedKernel(new KernelSites(model, noisy, true), 2).solver().predict(group);
    assertThat(group.estimate[0]).isCloseTo(1.414978, within(5e-7));
    assertThat(group.variance[0]).isCloseTo(0.583125, within(5e-7));
  }

  @Test
  void aDriftThatIsConstantAmongTheNeighboursIsLeftOut() {
    KernelData data = KernelCases.random(100, 300, 15);
    double[] flat = new double[100];
    Arrays.fill(flat, 7);
    KernelGroup with = new KernelGroup(1, 2);
    with.add(0, 150, 150);
    with.trend[1][0] = 9;
    KernelGroup without = new KernelGroup(1, 1);
    without.add(0, 150, 150);
    kernel(data.withDrift(flat)).solver().predict(with);
    kernel(data).solver().predict(without);
    assertThat(with.estimate[0]).isCloseTo(without.estimate[0], within(1e-12));
    assertThat(with.variance[0]).isCloseTo(without.variance[0], within(1e-12));
  }

  @Test
  void placesFarFromAllSitesGetTheMeanAndTheSill() {
    KernelData data = KernelCases.random(200, 300, 16);
    KernelGroup group = KernelCases.group(data, 1e6, 1e6, 5, 4);
    new SharedKernel(new KernelSites(KernelCases.SPHERICAL, data, true), 200)
        .solver()
        .predict(group);
    KernelOracle.Result expected =
        KernelOracle.krige(
            KernelCases.SPHERICAL, data, KernelOracle.all(data), 1e6, 1e6, new double[] {1}, true);
    assertThat(group.estimate[0]).isCloseTo(expected.estimate(), within(1e-10));
    assertThat(group.variance[0]).isCloseTo(expected.variance(), within(1e-10));
    assertThat(IntStream.range(0, 16).mapToDouble(i -> group.estimate[i]).distinct().count())
        .isEqualTo(1);
  }
}
