package fieldsalt.gaussian;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Rank-one updates, one full solve, and the mixed model by blocks are the same thing. */
class GaussianAgreementTest {
  private static final int SITES = 9;
  private static final int TARGETS = 3;
  private static final int OFFSETS = 2;
  private static final int ALL = SITES + TARGETS + OFFSETS;
  private final Random random = new Random(7);
  private final double[][] covariance = covariance();
  private final double[][] design = design();
  private final double[][] observations = observations();
  private final double[] noise = random.doubles(SITES, 0.05, 0.3).toArray();
  private final double[] values = random.doubles(SITES, 0, 3).toArray();

  /** Two blocks of places, independent of one another, and two shared offsets. */
  private double[][] covariance() {
    double[] x = random.doubles(SITES + TARGETS, 0, 500).toArray();
    double[][] c = new double[ALL][ALL];
    for (int i = 0; i < SITES + TARGETS; i++) {
      for (int j = 0; j < SITES + TARGETS; j++) {
        if (block(i) == block(j)) {
          c[i][j] = 0.4 * Math.exp(-Math.abs(x[i] - x[j]) / 150) + (i == j ? 0.1 : 0);
        }
      }
    }
    for (int i = SITES + TARGETS; i < ALL; i++) {
      c[i][i] = 1;
    }
    return c;
  }

  private static int block(int i) {
    return i < 5 || i == SITES ? 0 : 1;
  }

  private static double[][] design() {
    double[][] f = new double[ALL][2];
    for (int i = 0; i < SITES + TARGETS; i++) {
      f[i][block(i)] = 1;
    }
    return f;
  }

  private static double[][] observations() {
    double[][] h = new double[SITES][ALL];
    for (int i = 0; i < SITES; i++) {
      h[i][i] = 1;
      if (i % 2 == 0) {
        h[i][SITES + TARGETS + i % 4 / 2] = 0.3;
      }
    }
    return h;
  }

  private static double[] unit(int i) {
    double[] unit = new double[ALL];
    unit[i] = 1;
    return unit;
  }

  private GaussianState prior() {
    return GaussianState.of(new double[ALL], covariance, design);
  }

  private GaussianState oneByOne() {
    GaussianState state = prior();
    for (int i = 0; i < SITES; i++) {
      state = state.observe(observations[i], noise[i], values[i]);
    }
    return state;
  }

  private GaussianState together() {
    double[][] r = new double[SITES][SITES];
    for (int i = 0; i < SITES; i++) {
      r[i][i] = noise[i];
    }
    return prior().observeAll(observations, r, values);
  }

  private static double[][] contrasts() {
    double[][] contrasts = new double[ALL][];
    for (int i = 0; i < ALL; i++) {
      contrasts[i] = unit(i);
    }
    return contrasts;
  }

  @Test
  void rankOneUpdatesEqualOneFullSolve() {
    assertSame(oneByOne(), together());
  }

  private static void assertSame(GaussianState one, GaussianState other) {
    double[][] a = one.covariance(contrasts());
    double[][] b = other.covariance(contrasts());
    for (int i = 0; i < ALL; i++) {
      assertThat(one.mean(unit(i))).isCloseTo(other.mean(unit(i)), within(1e-9));
      for (int j = 0; j < ALL; j++) {
        assertThat(a[i][j]).isCloseTo(b[i][j], within(1e-9));
      }
    }
  }

  private MixedModel mixed() {
    return new MixedModel(List.of(part(0, 5), part(5, SITES)), 0);
  }

  private MixedModel.Block part(int from, int to) {
    int n = to - from;
    double[][] d = new double[n][n];
    double[][] one = new double[1][n];
    double[][] w = new double[2][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        d[i][j] = covariance[from + i][from + j] + (i == j ? noise[from + i] : 0);
      }
      one[0][i] = 1;
      w[0][i] = observations[from + i][SITES + TARGETS];
      w[1][i] = observations[from + i][SITES + TARGETS + 1];
    }
    double[] y = java.util.Arrays.copyOfRange(values, from, to);
    return new MixedModel.Block(d, one, w, y);
  }

  private Prediction target(MixedModel model, int target) {
    int b = block(target);
    int from = b == 0 ? 0 : 5;
    int to = b == 0 ? 5 : SITES;
    double[][] c = new double[to - from][1];
    for (int i = from; i < to; i++) {
      c[i - from][0] = covariance[i][target];
    }
    return model.predict(b, c, new double[][] {{1}}, new double[][] {{0}, {0}});
  }

  @Test
  void theMixedModelGivesTheSamePredictions() {
    GaussianState state = together();
    MixedModel model = mixed();
    for (int t = SITES; t < SITES + TARGETS; t++) {
      Prediction p = target(model, t);
      assertThat(p.mean()[0]).isCloseTo(state.mean(unit(t)), within(1e-9));
      assertThat(covariance[t][t] + p.varianceChange()[0])
          .isCloseTo(state.variance(unit(t)), within(1e-9));
      for (int s = SITES; s < SITES + TARGETS; s++) {
        double joint = covariance[t][s] + p.covarianceChange(target(model, s))[0][0];
        assertThat(joint)
            .isCloseTo(state.covariance(new double[][] {unit(t), unit(s)})[0][1], within(1e-9));
      }
    }
    for (int k = 0; k < OFFSETS; k++) {
      double[] offset = unit(SITES + TARGETS + k);
      assertThat(model.sharedEffects()[k]).isCloseTo(state.mean(offset), within(1e-9));
      assertThat(model.sharedCovariance()[k][k]).isCloseTo(state.variance(offset), within(1e-9));
    }
  }

  @Test
  void gainEqualsTheDifferenceOfTwoFullSolves() {
    GaussianState state = together();
    double[][] wanted = {unit(SITES), unit(SITES + 1), unit(2)};
    double[] weights = {1, 2, 0.5};
    double[] h = unit(4);
    h[SITES + TARGETS] = 0.3;
    GaussianState after = state.observe(h, 0.02, 123);
    double difference = 0;
    for (int i = 0; i < wanted.length; i++) {
      difference += weights[i] * (state.variance(wanted[i]) - after.variance(wanted[i]));
    }
    assertThat(state.gain(h, 0.02, wanted, weights)).isCloseTo(difference, within(1e-12));
    assertThat(difference).isPositive();
  }

  @Test
  void leavingOutEqualsSolvingWithout() {
    LeaveOut leave = new LeaveOut(mixed(), 2);
    LeaveOut.Errors errors = leave.errors(0, new int[] {1, 2});
    GaussianState without = prior();
    for (int i = 0; i < SITES; i++) {
      without = i == 1 || i == 2 ? without : without.observe(observations[i], noise[i], values[i]);
    }
    double[][] both = {observations[1], observations[2]};
    double[][] expected = without.covariance(both);
    for (int i = 0; i < 2; i++) {
      assertThat(errors.error()[i]).isCloseTo(values[1 + i] - without.mean(both[i]), within(1e-9));
      for (int j = 0; j < 2; j++) {
        double own = i == j ? noise[1 + i] : 0;
        assertThat(errors.covariance()[i][j]).isCloseTo(expected[i][j] + own, within(1e-9));
      }
    }
    assertThat(mixed().factor(0).quadratic(new double[] {0, 0, 1, 0, 0}))
        .isCloseTo(covariance[2][2] + noise[2], within(1e-12));
    assertRule(leave, errors.error()[1]);
  }

  private void assertRule(LeaveOut leave, double error) {
    int[] members = {1, 2};
    double[] own = leave.rule(0, members, 1);
    double[] others = leave.sharedWeights(0, members, 1);
    double[][] carried = mixed().sharedDual(1);
    double sum = 0;
    for (int i = 0; i < SITES; i++) {
      double other = i < 5 ? 0 : others[0] * carried[0][i - 5] + others[1] * carried[1][i - 5];
      sum += (i < 5 ? own[i] : other) * values[i];
    }
    assertThat(sum).isCloseTo(error, within(1e-9));
    assertThat(own[2]).isEqualTo(1);
    assertThat(own[1]).isZero();
  }

  /** Flat, not a large variance: nothing is said of a level before a datum of its own. */
  @Test
  void aLevelWithoutDataIsRefusedAndADifferenceIsNot() {
    GaussianState state = prior().observe(observations[1], noise[1], 2);
    assertThat(state.determines(unit(6))).isFalse();
    assertThatThrownBy(() -> state.mean(unit(6))).isInstanceOf(IllegalStateException.class);
    assertThat(state.determines(unit(0))).isTrue();
    assertThat(state.mean(unit(1))).isCloseTo(2, within(1e-12));
    double[] difference = unit(6);
    difference[7] = -1;
    assertThat(prior().mean(difference)).isZero();
  }

  /** The plain definition with the dense V and X. */
  @Test
  void likelihoodEqualsTheDenseDefinition() {
    double[][] v = new double[SITES][SITES];
    for (int i = 0; i < SITES; i++) {
      for (int j = 0; j < SITES; j++) {
        for (int a = 0; a < ALL; a++) {
          for (int b = 0; b < ALL; b++) {
            v[i][j] += observations[i][a] * covariance[a][b] * observations[j][b];
          }
        }
      }
      v[i][i] += noise[i];
    }
    Cholesky factor = Cholesky.factor(v);
    double[] vy = factor.solve(values);
    double[][] xvx = new double[2][2];
    double[] xvy = new double[2];
    double yvy = 0;
    for (int i = 0; i < SITES; i++) {
      double[] unit = new double[SITES];
      unit[i] = 1;
      double[] column = factor.solve(unit);
      for (int j = 0; j < SITES; j++) {
        xvx[block(i)][block(j)] += column[j];
      }
      xvy[block(i)] += vy[i];
      yvy += values[i] * vy[i];
    }
    double determinant = xvx[0][0] * xvx[1][1] - xvx[0][1] * xvx[1][0];
    double[] beta = Cholesky.factor(xvx).solve(xvy);
    double quadratic = yvy - beta[0] * xvy[0] - beta[1] * xvy[1];
    double expected =
        -0.5
            * ((SITES - 2) * Math.log(2 * Math.PI)
                + factor.logDeterminant()
                + Math.log(determinant)
                + quadratic);
    assertThat(mixed().restrictedLogLikelihood()).isCloseTo(expected, within(1e-9));
  }
}
