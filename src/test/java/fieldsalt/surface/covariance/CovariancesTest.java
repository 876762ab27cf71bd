package fieldsalt.surface.covariance;

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
    double[] out = new double[n];
    new Covariances(model, n).fill(5, 7, x, y, 1, n, out);
    for (int i = 1; i < n; i++) {
      double expected = model.covariance(Math.hypot(x[i] - 5, y[i] - 7));
      assertThat(out[i]).isCloseTo(expected, within(2.5 * 2e-15));
    }
    assertThat(out[0]).as("nothing before the first is touched").isZero();
  }

  @Test
  void exponentialIsExactToRounding() {
    double[] u = new double[6000];
    java.util.Arrays.setAll(u, i -> 1e-12 * Math.exp(i * Math.log(37e12) / 6000));
    double[] exp = u.clone();
    Covariances.expMinus(exp, 0, exp.length);
    for (int i = 0; i < u.length; i++) {
      assertThat(exp[i]).isCloseTo(Math.exp(-u[i]), within(1e-15));
    }
  }
}
