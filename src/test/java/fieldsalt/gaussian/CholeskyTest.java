package fieldsalt.gaussian;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CholeskyTest {
  /** The oracle: Gauss-Jordan elimination with row pivoting, from the textbook. */
  private static double[][] inverseByElimination(double[][] a) {
    int n = a.length;
    double[][] m = new double[n][2 * n];
    for (int i = 0; i < n; i++) {
      System.arraycopy(a[i], 0, m[i], 0, n);
      m[i][n + i] = 1;
    }
    for (int c = 0; c < n; c++) {
      int best = c;
      for (int r = c + 1; r < n; r++) {
        best = Math.abs(m[r][c]) > Math.abs(m[best][c]) ? r : best;
      }
      double[] swap = m[c];
      m[c] = m[best];
      m[best] = swap;
      double pivot = m[c][c];
      for (int j = 0; j < 2 * n; j++) {
        m[c][j] /= pivot;
      }
      for (int r = 0; r < n; r++) {
        double f = m[r][c];
        for (int j = 0; r != c && j < 2 * n; j++) {
          m[r][j] -= f * m[c][j];
        }
      }
    }
    double[][] inverse = new double[n][n];
    for (int i = 0; i < n; i++) {
      System.arraycopy(m[i], n, inverse[i], 0, n);
    }
    return inverse;
  }

  /** Exponential covariance of random places: what the product factors. */
  private static double[][] covariance(int n, long seed) {
    Random random = new Random(seed);
    double[] x = random.doubles(n, 0, 1000).toArray();
    double[] y = random.doubles(n, 0, 1000).toArray();
    double[][] a = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        a[i][j] = Math.exp(-Math.hypot(x[i] - x[j], y[i] - y[j]) / 200) + (i == j ? 0.1 : 0);
      }
    }
    return a;
  }

  private static double[][] copy(double[][] a) {
    double[][] b = new double[a.length][];
    for (int i = 0; i < a.length; i++) {
      b[i] = a[i].clone();
    }
    return b;
  }

  @Test
  void threeByThreeByHand() {
    // L = [[2, 0, 0], [1, 3, 0], [-1, 2, 1]] was chosen; A = LL'; det A = (2 * 3 * 1)^2 = 36
    double[][] a = {{4, 2, -2}, {2, 10, 5}, {-2, 5, 6}};
    Cholesky factor = Cholesky.factor(a);
    assertThat(factor.logDeterminant()).isCloseTo(Math.log(36), within(1e-15));
    assertThat(factor.solve(new double[] {4, 17, 9}))
        .containsExactly(new double[] {1, 1, 1}, within(1e-14));
    assertThat(factor.forward(new double[] {2, 4, 2}))
        .containsExactly(new double[] {1, 1, 1}, within(1e-15));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 4, 5, 31, 32, 33, 64, 70, 129})
  void equalsEliminationWhateverTheSize(int n) {
    double[][] a = covariance(n, 7);
    double[][] expected = inverseByElimination(a);
    Cholesky factor = Cholesky.factor(copy(a));
    double[][] inverse = factor.inverse();
    double[] b = new Random(n).doubles(n).toArray();
    double[] x = factor.solve(b);
    for (int i = 0; i < n; i++) {
      assertThat(inverse[i]).containsExactly(expected[i], within(1e-11));
      double sum = 0;
      for (int j = 0; j < n; j++) {
        sum += expected[i][j] * b[j];
      }
      assertThat(x[i]).isCloseTo(sum, within(1e-11));
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 5, 33, 70})
  void manyRightHandSidesEqualOneByOne(int n) {
    int columns = 600;
    Cholesky factor = Cholesky.factor(covariance(n, 3));
    double[][] b = new double[n][columns];
    Random random = new Random(1);
    for (double[] row : b) {
      java.util.Arrays.setAll(row, j -> random.nextGaussian());
    }
    double[][] solved = copy(b);
    factor.forwardRows(solved);
    for (int j : new int[] {0, 1, 511, 512, 599}) {
      double[] one = new double[n];
      for (int i = 0; i < n; i++) {
        one[i] = b[i][j];
      }
      double[] expected = factor.forward(one);
      for (int i = 0; i < n; i++) {
        assertThat(solved[i][j]).isCloseTo(expected[i], within(1e-11));
      }
    }
  }

  @Test
  void readsTheUpperTriangleOnly() {
    double[][] a = {{4, 2, -2}, {Double.NaN, 10, 5}, {Double.NaN, Double.NaN, 6}};
    assertThat(Cholesky.factor(a).logDeterminant()).isCloseTo(Math.log(36), within(1e-15));
  }

  @Test
  void twoEqualRowsAreNamed() {
    double[][] a = {{1, 0.5, 0.5}, {0.5, 1, 1}, {0.5, 1, 1}};
    assertThatThrownBy(() -> Cholesky.factor(a))
        .isInstanceOfSatisfying(NotPositiveDefinite.class, e -> assertThat(e.row()).isEqualTo(2));
    assertThatThrownBy(() -> Cholesky.factor(new double[][] {{Double.NaN}}))
        .isInstanceOf(NotPositiveDefinite.class);
    double[][] c = covariance(60, 5);
    c[59] = c[3].clone();
    for (int i = 0; i < 60; i++) {
      c[i][59] = c[i][3];
    }
    c[59][59] = c[3][3];
    c[3][59] = c[3][3];
    assertThatThrownBy(() -> Cholesky.factor(c))
        .isInstanceOfSatisfying(NotPositiveDefinite.class, e -> assertThat(e.row()).isEqualTo(59));
  }
}
