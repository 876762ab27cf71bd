package fieldsalt.surface;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class CovariancesTest {
  static Stream<Variogram> models() {
    return Stream.of(new Spherical(250), new Exponential(80), new Matern32(40), new Exponential(1));
  }

  @ParameterizedTest
  @MethodSource("models")
  void equalsTheModel(Variogram correlation) {
    CovarianceModel model = new CovarianceModel(correlation, 2.5, 0.3);
    int n = 4000;
    double[] x = new double[n];
    double[] y = new double[n];
    for (int i = 0; i < n; i++) {
      x[i] = 5 + 0.6 * i * 0.3;
      y[i] = 7 + 0.8 * i * 0.3;
    }
    double[] out = new double[n + 3];
    new Covariances(model).fill(5, 7, x, y, 1, n, out, 4);
    for (int i = 1; i < n; i++) {
      double expected = model.covariance(Math.hypot(x[i] - 5, y[i] - 7));
      assertThat(out[3 + i]).isCloseTo(expected, within(2.5 * 2e-15));
    }
    assertThat(out[3]).as("nothing before its place is touched").isZero();
  }

  @Test
  void exponentialIsExactToRounding() {
    for (double u = 1e-12; u < 37; u *= 1.01) {
      assertThat(Covariances.expMinus(u)).isCloseTo(Math.exp(-u), within(1e-15));
    }
  }
}
