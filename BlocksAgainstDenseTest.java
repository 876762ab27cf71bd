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

  private static Ranch ranch(int flat, int offsets) {
    return new Ranch(SITES, flat, offsets);
  }

  private static List<Unknown> unknowns(Ranch ranch) {
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

  private static MixedModel.Prediction predict(Ranch ranch, MixedModel model, Unknown u) {
    double[] x = ranch.x[u.field];
    int[] siteOf = ranch.siteOf[u.field];
    double[][] c = new double[siteOf.length][1];
    for (int r = 0; r < c.length; r++) {
      c[r][0] = Ranch.covariance(x[siteOf[r]], u.x);
    }
    double[][] design = new double[1 + ranch.flat + ranch.offsets][1];
    design[0][0] = 1;
    for (int k = 0; k < ranch.flat; k++) {
      design[1 + k][0] = u.flat[k];
    }
    for (int k = 0; k < ranch.offsets; k++) {
      design[1 + ranch.flat + k][0] = u.offsets[k];
    }
    return model.predict(u.field, c, design);
  }

  /** Covariance of an unknown with each row, shared offsets in it. */
  private static double[] covariances(Ranch ranch, Unknown u) {
    double[] c = new double[ranch.rows()];
    for (int r = 0; r < c.length; r++) {
      int f = ranch.rowField[r];
      int site = ranch.siteOf[f][r - ranch.first(f)];
      c[r] = f == u.field ? Ranch.covariance(ranch.x[f][site], u.x) : 0;
      for (int k = 0; k < ranch.offsets; k++) {
        c[r] += ranch.effect(r, ranch.flat + k) * u.offsets[k];
      }
    }
    return c;
  }

  private static double[] fixedOf(Ranch ranch, Unknown u) {
    double[] fixed = new double[SITES.length + ranch.flat];
    fixed[u.field] = 1;
    System.arraycopy(u.flat, 0, fixed, SITES.length, ranch.flat);
    return fixed;
  }

  private static double prior(Unknown a, Unknown b) {
    double own = a.field == b.field ? Ranch.covariance(a.x, b.x) : 0;
    return own + Ranch.dot(a.offsets, b.offsets);
  }

  @ParameterizedTest
  @CsvSource({"0,0", "0,1", "0,8", "1,0", "2,8"})
  void likelihoodIsThatOfTheWhole(int flat, int offsets) {
    Ranch ranch = ranch(flat, offsets);
    double[][] fixed = ranch.fixed();
    double[][] xvx =
        Ranch.times(Ranch.transposed(fixed), Ranch.times(Ranch.inverse(ranch.v()), fixed));
    double quadratic = Ranch.dot(ranch.allValues(), Ranch.times(ranch.p(), ranch.allValues()));
    double logs = Ranch.logDeterminant(ranch.v()) + Ranch.logDeterminant(xvx);
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
    Ranch ranch = ranch(flat, offsets);
    MixedModel model = ranch.solve();
    double[][] v = ranch.v();
    List<Unknown> all = unknowns(ranch);
    for (Unknown a : all) {
      double[] ca = covariances(ranch, a);
      double[] la = ranch.weights(ca, fixedOf(ranch, a));
      MixedModel.Prediction pa = predict(ranch, model, a);
      assertThat(pa.mean()[0]).isCloseTo(Ranch.dot(la, ranch.allValues()), within(SAME));
      for (Unknown b : all) {
        double[] cb = covariances(ranch, b);
        double[] lb = ranch.weights(cb, fixedOf(ranch, b));
        double dense =
            prior(a, b) - Ranch.dot(la, cb) - Ranch.dot(lb, ca) + Ranch.dot(la, Ranch.times(v, lb));
        double own = a.field == b.field ? Ranch.covariance(a.x, b.x) : 0;
        double change = pa.covarianceChange(predict(ranch, model, b))[0][0];
        assertThat(own + change).isCloseTo(dense, within(SAME));
        if (a == b) {
          assertThat(own + pa.varianceChange()[0]).isCloseTo(dense, within(SAME));
        }
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"0,0", "0,1", "0,8", "1,1", "2,8"})
  void whatIsLeftOutIsPredictedAsByTheWhole(int flat, int offsets) {
    Ranch ranch = ranch(flat, offsets);
    MixedModel model = ranch.solve();
    LeaveOut leave = new LeaveOut(model);
    Contrasts contrasts = new Contrasts(model, leave.sharedRows());
    double[][] p = ranch.p();
    double[] py = Ranch.times(p, ranch.allValues());
    for (int f = 0; f < SITES.length; f++) {
      int first = ranch.first(f);
      int[] members = {0, 1};
      double[][] pbb = {
        {p[first][first], p[first][first + 1]}, {p[first + 1][first], p[first + 1][first + 1]}
      };
      double[][] covariance = Ranch.inverse(pbb);
      double[] error = Ranch.times(covariance, new double[] {py[first], py[first + 1]});
      LeaveOut.Errors errors = leave.errors(f, members);
      for (int i = 0; i < 2; i++) {
        assertThat(errors.error()[i]).isCloseTo(error[i], within(SAME));
        assertThat(errors.covariance()[i][i]).isCloseTo(covariance[i][i], within(SAME));
        Contrast rule = leave.rule(f, members, i);
        assertThat(contrasts.value(rule)).isCloseTo(error[i], within(SAME));
        assertThat(contrasts.known(rule).variance()).isCloseTo(covariance[i][i], within(SAME));
      }
      assertThat(errors.covariance()[0][1]).isCloseTo(covariance[0][1], within(SAME));
    }
  }

  @ParameterizedTest
  @CsvSource({"0,1", "0,8", "1,8"})
  void aFieldsOwnConstantIsTheSameCombinationOfAllData(int flat, int offsets) {
    Ranch ranch = ranch(flat, offsets);
    MixedModel model = ranch.solve();
    Contrasts contrasts = new Contrasts(model, new LeaveOut(model).sharedRows());
    double[][] fixed = ranch.fixed();
    double[][] vx = Ranch.times(Ranch.inverse(ranch.v()), fixed);
    double[][] covariance = Ranch.inverse(Ranch.times(Ranch.transposed(fixed), vx));
    double[] b =
        Ranch.times(covariance, Ranch.times(Ranch.transposed(vx), ranch.allValues()));
    for (int f = 0; f < SITES.length; f++) {
      Contrast estimate = model.ownEstimate(f, 0);
      assertThat(model.ownEffects(f)[0]).isCloseTo(b[f], within(SAME));
      assertThat(contrasts.value(estimate)).isCloseTo(b[f], within(SAME));
      assertThat(contrasts.known(estimate).variance()).isCloseTo(covariance[f][f], within(SAME));
    }
  }

  @ParameterizedTest
  @CsvSource({"1,0", "2,1", "1,8"})
  void sharedEffectsWithoutAFieldAreThoseOfTheOtherFields(int flat, int offsets) {
    MixedModel model = ranch(flat, offsets).solve();
    List<MixedModel.Block> rest = new ArrayList<>();
    Ranch ranch = ranch(flat, offsets);
    for (int f = 1; f < SITES.length; f++) {
      double[] ones = new double[ranch.values[f].length];
      java.util.Arrays.fill(ones, 1);
      rest.add(
          new MixedModel.Block(
              ranch.d(f), new double[][] {ones}, ranch.shared[f], ranch.values[f]));
    }
    double[] expected = new MixedModel(rest, flat, offsets).sharedEffects();
    assertThat(model.sharedEffectsWithout(0)).containsExactly(expected, within(SAME));
  }

  /** Readings of any field are chosen one after the other; each tells of the others' fields too. */
  @ParameterizedTest
  @CsvSource({"0,0", "0,1", "0,8", "1,8"})
  void gainsOfReadingsNotYetMadeAreThoseOfTheWhole(int flat, int offsets) {
    Ranch ranch = ranch(flat, offsets);
    MixedModel model = ranch.solve();
    List<Unknown> all = unknowns(ranch);
    List<MixedModel.Prediction> seen = all.stream().map(u -> predict(ranch, model, u)).toList();
    GaussianState dense = GaussianState.of(new double[all.size()], joint(all, seen));
    SharedState shared = SharedState.of(ones(flat + offsets));
    List<BlockState> blocks = new ArrayList<>();
    for (int f = 0; f < SITES.length; f++) {
      blocks.add(block(all, seen, f));
    }
    double[] weights = {1.5};
    double[][] wanted = {unit(0), unit(3), unit(6)};
    double[] wantedWeights = {1.5, 1.5, 1.5};
    double[] none = new double[flat + offsets];
    for (int pick : new int[] {4, 8, 5, 1}) {
      double[][] everywhere = new double[flat + offsets][flat + offsets];
      blocks.forEach(b -> b.addProducts(weights, everywhere));
      for (int u = 0; u < all.size(); u++) {
        BlockState block = blocks.get(u / 3);
        double gain = block.gain(u % 3, none, 0.07, weights, shared, everywhere);
        assertThat(gain)
            .isCloseTo(dense.gain(unit(u), 0.07, wanted, wantedWeights), within(SAME));
      }
      dense = dense.observe(unit(pick), 0.07, 0);
      blocks.get(pick / 3).observe(pick % 3, column(all, seen, pick), none, 0.07, shared);
      for (int f = 0; f < SITES.length; f++) {
        assertThat(blocks.get(f).variance(0, shared))
            .isCloseTo(dense.variance(unit(3 * f)), within(SAME));
      }
    }
  }

  private static double[] unit(int i) {
    double[] unit = new double[9];
    unit[i] = 1;
    return unit;
  }

  private static double[] ones(int n) {
    double[] ones = new double[n];
    java.util.Arrays.fill(ones, 1);
    return ones;
  }

  private static double[][] joint(List<Unknown> all, List<MixedModel.Prediction> seen) {
    double[][] joint = new double[all.size()][all.size()];
    for (int i = 0; i < joint.length; i++) {
      for (int j = 0; j < joint.length; j++) {
        boolean same = all.get(i).field == all.get(j).field;
        double own = same ? Ranch.covariance(all.get(i).x, all.get(j).x) : 0;
        joint[i][j] = own + seen.get(i).covarianceChange(seen.get(j))[0][0];
      }
    }
    return joint;
  }

  private static double[] column(List<Unknown> all, List<MixedModel.Prediction> seen, int of) {
    double[] column = new double[3];
    int field = all.get(of).field;
    for (int i = 0; i < 3; i++) {
      column[i] =
          Ranch.covariance(all.get(3 * field + i).x, all.get(of).x)
              + seen.get(of).ownCovarianceChange(seen.get(3 * field + i))[0][0];
    }
    return column;
  }

  /** The first unknown of each field is what one wants to know. */
  private static BlockState block(List<Unknown> all, List<MixedModel.Prediction> seen, int f) {
    double[] variances = new double[3];
    double[][] loadings = new double[3][];
    for (int i = 0; i < 3; i++) {
      variances[i] = column(all, seen, 3 * f + i)[i];
      double[][] of = seen.get(3 * f + i).fromShared();
      loadings[i] = new double[of.length];
      for (int k = 0; k < of.length; k++) {
        loadings[i][k] = of[k][0];
      }
    }
    return new BlockState(new double[][] {column(all, seen, 3 * f)}, variances, loadings);
  }
}
