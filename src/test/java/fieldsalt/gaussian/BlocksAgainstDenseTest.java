package fieldsalt.gaussian;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Blocks with a few shared effects give what whole matrices over all fields give: with 0, 1 and 8
 * shared offsets, with and without drifts, with paired rows and a field of 3 sites.
 */
class BlocksAgainstDenseTest {
  private static final double SAME = 1e-10;
  private static final int[] SITES = {3, 9, 14};

  /** A place of a field to be predicted, or a row of a field's data. */
  private record Unknown(int field, double x, double[] flat, double[] offsets) {}

  private static DenseRanch ranch(int flat, int offsets) {
    return new DenseRanch(SITES, flat, offsets);
  }

  private static List<Unknown> unknowns(DenseRanch ranch) {
    List<Unknown> all = new ArrayList<>();
    for (int f = 0; f < SITES.length; f++) {
      for (double x : new double[] {40, 310, 555}) {
        double[] flat = new double[ranch.flat];
        java.util.Arrays.setAll(flat, k -> Math.sin(x + k));
        double[] offsets = new double[ranch.offsets];
        java.util.Arrays.fill(offsets, x > 500 ? 0.2 : 0);
        all.add(new Unknown(f, x, flat, offsets));
      }
    }
    return all;
  }

  private static Prediction predict(DenseRanch ranch, MixedModel model, Unknown u) {
    double[] x = ranch.x[u.field];
    int[] siteOf = ranch.siteOf[u.field];
    double[][] c = new double[siteOf.length][1];
    for (int r = 0; r < c.length; r++) {
      c[r][0] = DenseRanch.covariance(x[siteOf[r]], u.x);
    }
    double[][] shared = new double[ranch.flat + ranch.offsets][1];
    for (int k = 0; k < ranch.flat; k++) {
      shared[k][0] = u.flat[k];
    }
    for (int k = 0; k < ranch.offsets; k++) {
      shared[ranch.flat + k][0] = u.offsets[k];
    }
    return model.predict(u.field, c, new double[][] {{1}}, shared);
  }

  /** Covariance of an unknown with each row, shared offsets in it. */
  private static double[] covariances(DenseRanch ranch, Unknown u) {
    double[] c = new double[ranch.rows()];
    for (int r = 0; r < c.length; r++) {
      int f = ranch.rowField[r];
      int site = ranch.siteOf[f][r - ranch.first(f)];
      c[r] = f == u.field ? DenseRanch.covariance(ranch.x[f][site], u.x) : 0;
      for (int k = 0; k < ranch.offsets; k++) {
        c[r] += ranch.effect(r, ranch.flat + k) * u.offsets[k];
      }
    }
    return c;
  }

  private static double[] fixedOf(DenseRanch ranch, Unknown u) {
    double[] fixed = new double[SITES.length + ranch.flat];
    fixed[u.field] = 1;
    System.arraycopy(u.flat, 0, fixed, SITES.length, ranch.flat);
    return fixed;
  }

  private static double prior(Unknown a, Unknown b) {
    double own = a.field == b.field ? DenseRanch.covariance(a.x, b.x) : 0;
    return own + DenseRanch.dot(a.offsets, b.offsets);
  }

  @ParameterizedTest
  @CsvSource({"0,0", "0,1", "0,8", "1,0", "2,8"})
  void likelihoodIsThatOfTheWhole(int flat, int offsets) {
    DenseRanch ranch = ranch(flat, offsets);
    double[][] fixed = ranch.fixed();
    double[][] xvx =
        DenseRanch.times(
            DenseRanch.transposed(fixed), DenseRanch.times(DenseRanch.inverse(ranch.v()), fixed));
    double quadratic =
        DenseRanch.dot(ranch.allValues(), DenseRanch.times(ranch.p(), ranch.allValues()));
    double logs = DenseRanch.logDeterminant(ranch.v()) + DenseRanch.logDeterminant(xvx);
    MixedModel model = ranch.solve();
    assertThat(model.quadratic()).isCloseTo(quadratic, within(SAME * quadratic));
    assertThat(model.logDeterminants()).isCloseTo(logs, within(SAME * Math.abs(logs)));
    double freedom = ranch.rows() - SITES.length - flat;
    assertThat(model.restrictedLogLikelihood())
        .isCloseTo(-0.5 * (freedom * Math.log(2 * Math.PI) + logs + quadratic), within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"0,0", "0,1", "0,8", "1,0", "2,8"})
  void predictionsAndTheirJointErrorsAreThoseOfTheWhole(int flat, int offsets) {
    DenseRanch ranch = ranch(flat, offsets);
    MixedModel model = ranch.solve();
    double[][] v = ranch.v();
    List<Unknown> all = unknowns(ranch);
    for (Unknown a : all) {
      double[] ca = covariances(ranch, a);
      double[] la = ranch.weights(ca, fixedOf(ranch, a));
      Prediction pa = predict(ranch, model, a);
      assertThat(pa.mean()[0]).isCloseTo(DenseRanch.dot(la, ranch.allValues()), within(SAME));
      for (Unknown b : all) {
        double[] cb = covariances(ranch, b);
        double[] lb = ranch.weights(cb, fixedOf(ranch, b));
        double dense =
            prior(a, b)
                - DenseRanch.dot(la, cb)
                - DenseRanch.dot(lb, ca)
                + DenseRanch.dot(la, DenseRanch.times(v, lb));
        double own = a.field == b.field ? DenseRanch.covariance(a.x, b.x) : 0;
        double change = pa.covarianceChange(predict(ranch, model, b))[0][0];
        assertThat(own + change).isCloseTo(dense, within(SAME));
        if (a.equals(b)) {
          assertThat(own + pa.varianceChange()[0]).isCloseTo(dense, within(SAME));
        }
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"0,0", "0,1", "0,8", "1,1", "2,8"})
  void whatIsLeftOutIsPredictedAsByTheWhole(int flat, int offsets) {
    DenseRanch ranch = ranch(flat, offsets);
    MixedModel model = ranch.solve();
    LeaveOut leave = new LeaveOut(model, SITES.length);
    double[][] p = ranch.p();
    double[] py = DenseRanch.times(p, ranch.allValues());
    for (int f = 0; f < SITES.length; f++) {
      int first = ranch.first(f);
      int[] members = {0, 1};
      double[][] pbb = {
        {p[first][first], p[first][first + 1]}, {p[first + 1][first], p[first + 1][first + 1]}
      };
      double[][] covariance = DenseRanch.inverse(pbb);
      double[] error = DenseRanch.times(covariance, new double[] {py[first], py[first + 1]});
      LeaveOut.Errors errors = leave.errors(f, members);
      for (int i = 0; i < 2; i++) {
        assertThat(errors.error()[i]).isCloseTo(error[i], within(SAME));
        assertThat(errors.covariance()[i][i]).isCloseTo(covariance[i][i], within(SAME));
        double[] own = leave.rule(f, members, i);
        double[] others = leave.sharedWeights(f, members, i);
        double sum = DenseRanch.dot(own, ranch.values[f]);
        for (int g = 0; g < SITES.length; g++) {
          double[][] carried = model.sharedDual(g);
          for (int k = 0; k < others.length && g != f; k++) {
            sum += others[k] * DenseRanch.dot(carried[k], ranch.values[g]);
          }
        }
        assertThat(sum).isCloseTo(error[i], within(SAME));
      }
      assertThat(errors.covariance()[0][1]).isCloseTo(covariance[0][1], within(SAME));
    }
  }

  @ParameterizedTest
  @CsvSource({"0,0", "0,1", "0,8", "1,8"})
  void effectsAreThoseOfTheWhole(int flat, int offsets) {
    DenseRanch ranch = ranch(flat, offsets);
    MixedModel model = ranch.solve();
    double[][] fixed = ranch.fixed();
    double[][] vx = DenseRanch.times(DenseRanch.inverse(ranch.v()), fixed);
    double[][] covariance = DenseRanch.inverse(DenseRanch.times(DenseRanch.transposed(fixed), vx));
    double[] b =
        DenseRanch.times(
            covariance, DenseRanch.times(DenseRanch.transposed(vx), ranch.allValues()));
    for (int f = 0; f < SITES.length; f++) {
      assertThat(model.ownEffects(f)[0]).isCloseTo(b[f], within(SAME));
    }
    for (int k = 0; k < flat; k++) {
      assertThat(model.sharedEffects()[k]).isCloseTo(b[SITES.length + k], within(SAME));
      assertThat(model.sharedCovariance()[k][k])
          .isCloseTo(covariance[SITES.length + k][SITES.length + k], within(SAME));
    }
  }
}
