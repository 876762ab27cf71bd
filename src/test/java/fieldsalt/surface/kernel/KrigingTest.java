package fieldsalt.surface.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.gaussian.MixedModel;
import fieldsalt.gaussian.Prediction;
import fieldsalt.geo.PlaceM;
import fieldsalt.surface.DenseKriging;
import fieldsalt.surface.RanchCase;
import fieldsalt.surface.SurfaceCases;
import fieldsalt.surface.area.TargetGroups;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.covariance.Matern32;
import fieldsalt.surface.fit.Influence;
import fieldsalt.surface.fit.LeaveOneOut;
import fieldsalt.surface.fit.LeftOut;
import fieldsalt.surface.fit.Linear;
import fieldsalt.surface.fit.MeanRule;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.site.IdwRule;
import fieldsalt.surface.site.LinearRule;
import fieldsalt.surface.site.Observations;
import fieldsalt.surface.site.Points;
import fieldsalt.surface.site.Target;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class KrigingTest {
  private static final CovarianceModel UNIT = new CovarianceModel(new Exponential(100), 1, 0);

  /** Two data at 0 and 100 m with own variances, each with an offset of a variance shared. */
  private static SiteReadings two(double first, double second, double shared) {
    List<SiteReadings.Site> sites =
        List.of(SurfaceCases.site("a", "one", 0, 0), SurfaceCases.site("b", "one", 100, 0));
    List<SiteReadings.Row> rows =
        List.of(SurfaceCases.cheap(0, 1, first, 0), SurfaceCases.cheap(1, 2, second, 0));
    return SurfaceCases.readings(Scale.NATURAL, sites, rows, shared);
  }

  private static double[] at(SiteReadings readings, CovarianceModel model, double x) {
    Observations data = Observations.of(readings, List.of());
    Predictor.Predicted p =
        new Kriging(Solved.of(data, model)).predict(SurfaceCases.points(data, 0, x, 0));
    return new double[] {p.mean()[0], p.variance()[0]};
  }

  /** Worked out independently for this project: ordinary kriging half-way, and at the datum. */
  @Test
  void knownErrorsShiftWeightsAndRaiseVariances() {
    assertThat(at(two(0, 0, 0), UNIT, 50)[0]).isCloseTo(1.5, within(1e-12));
    assertThat(at(two(0, 0, 0), UNIT, 50)[1]).isCloseTo(0.470878, within(5e-7));
    double[] noisy = at(two(0.1, 0.4, 0), UNIT, 50);
    assertThat(noisy[0]).isCloseTo(1.414978, within(5e-7));
    assertThat(noisy[1]).isCloseTo(0.583125, within(5e-7));
    double[] datum = at(two(0.1, 0.4, 0), UNIT, 0);
    assertThat(datum[0]).isCloseTo(1.056682, within(5e-7));
    assertThat(datum[1]).isCloseTo(0.094332, within(5e-7));
  }

  /** A shared error without any paste row cannot be told from the mean: variances rise by it. */
  @Test
  void sharedErrorLeavesWeightsAndAddsItsVariance() {
    for (double x : new double[] {0, 30, 50, 170}) {
      double[] alone = at(two(0.1, 0.4, 0), UNIT, x);
      double[] shared = at(two(0.1, 0.4, 0.05), UNIT, x);
      assertThat(shared[0]).isCloseTo(alone[0], within(1e-12));
      assertThat(shared[1]).isCloseTo(alone[1] + 0.05, within(1e-12));
    }
  }

  @Test
  void twoCopiesOfDoubledVarianceAreOneRow() {
    List<SiteReadings.Site> sites = two(0, 0, 0).sites();
    List<SiteReadings.Row> rows =
        List.of(
            SurfaceCases.paste(0, 1, 0.2),
            SurfaceCases.paste(0, 1, 0.2),
            SurfaceCases.paste(1, 2, 0.4));
    double[] split = at(SurfaceCases.readings(Scale.NATURAL, sites, rows), UNIT, 30);
    double[] whole = at(two(0.1, 0.4, 0), UNIT, 30);
    assertThat(split[0]).isCloseTo(whole[0], within(1e-12));
    assertThat(split[1]).isCloseTo(whole[1], within(1e-12));
  }

  @Test
  void aHopelessOffsetLeavesTheLevelToThePasteRow() {
    List<SiteReadings.Site> sites = two(0, 0, 0).sites();
    List<SiteReadings.Row> rows =
        List.of(
            SurfaceCases.cheap(0, 11, 0.01, 0),
            SurfaceCases.cheap(1, 12, 0.01, 0),
            SurfaceCases.paste(0, 1, 1e-6));
    SiteReadings readings = SurfaceCases.readings(Scale.NATURAL, sites, rows, 1e6);
    assertThat(at(readings, UNIT, 0)[0]).isCloseTo(1, within(1e-4));
    assertThat(at(readings, UNIT, 100)[0]).isBetween(1.8, 2.0);
  }

  /** Kitanidis 1997, Introduction to Geostatistics, example 3.2: gamma = 0.1 + 0.006 h. */
  @Test
  void kitanidisTwoPoints() {
    double[] x = {9.7, 43.8};
    double[] y = {47.6, 24.6};
    double[] z = {1.22, 2.822};
    double high = 10;
    double[][] c = new double[2][1];
    double[][] d = new double[2][2];
    for (int i = 0; i < 2; i++) {
      c[i][0] = high - 0.1 - 0.006 * Math.hypot(x[i] - 18.8, y[i] - 67.9);
      for (int j = 0; j < 2; j++) {
        double h = Math.hypot(x[i] - x[j], y[i] - y[j]);
        d[i][j] = i == j ? high : high - 0.1 - 0.006 * h;
      }
    }
    MixedModel.Block block = new MixedModel.Block(d, new double[][] {{1, 1}}, new double[0][], z);
    Prediction p =
        new MixedModel(List.of(block), 0).predict(0, c, new double[][] {{1}}, new double[0][]);
    assertThat(p.mean()[0]).isCloseTo(1.6364, within(5e-5));
    assertThat(high + p.varianceChange()[0]).isCloseTo(0.4201, within(5e-5));
  }

  @Test
  void theTextbookGivesTheSameForARanchOfSharedErrors() {
    CovarianceModel model = new CovarianceModel(new Matern32(150), 0.3, 0.1);
    RanchCase ranch = RanchCase.simulated(new RanchCase.Plan(2, 20, 18, 800, model, 0.2, 4, 3), 5);
    Observations data = Observations.of(ranch.readings(), List.of());
    Kriging kriging = new Kriging(Solved.of(data, model));
    DenseKriging textbook = new DenseKriging(ranch.readings(), model);
    for (int f = 0; f < 2; f++) {
      for (Target target : ranch.targets(f)) {
        double[] expected = textbook.at(target);
        Points points = TargetGroups.of(data, List.of(target)).points().get(0);
        Predictor.Predicted p = kriging.predict(points);
        assertThat(p.mean()[0]).isCloseTo(expected[0], within(1e-9));
        assertThat(p.variance()[0]).isCloseTo(expected[1], within(1e-9));
      }
    }
  }

  /** C00 - 2 l'c0 + l'Vl of the best weights is the kriging variance; of others it is larger. */
  @Test
  void errorsOfAnyLinearRuleAreThoseOfTheModel() {
    CovarianceModel model = new CovarianceModel(new Exponential(150), 0.3, 0.1);
    RanchCase ranch = RanchCase.simulated(new RanchCase.Plan(2, 15, 18, 800, model, 0.2, 3, 3), 6);
    Observations data = Observations.of(ranch.readings(), List.of());
    Solved solved = Solved.of(data, model);
    Solved flat =
        Solved.of(data, new CovarianceModel(new Exponential(1), 0, model.pointVariance()));
    List<Target> targets = new ArrayList<>(ranch.targets(0));
    targets.addAll(ranch.targets(1));
    TargetGroups groups = TargetGroups.of(data, targets);
    for (LinearRule rule : List.of(new MeanRule(flat), new IdwRule(data))) {
      TargetGroups.Joined linear = groups.predict(new Linear(solved, rule));
      TargetGroups.Joined best = groups.predict(new Kriging(solved));
      double[][] p = linear.covariance(linear);
      double[][] q = best.covariance(best);
      for (int i = 0; i < p.length; i++) {
        assertThat(p[i][i]).isGreaterThanOrEqualTo(q[i][i] - 1e-12);
        assertThat(p[i][0]).isCloseTo(p[0][i], within(1e-12));
      }
    }
    Predictor.Predicted mean = new Linear(flat, new MeanRule(flat)).predict(groups.points().get(1));
    Predictor.Predicted same = new Kriging(flat).predict(groups.points().get(1));
    assertThat(mean.mean()[0]).isCloseTo(same.mean()[0], within(1e-10));
    assertThat(mean.variance()[0]).isCloseTo(same.variance()[0], within(1e-10));
  }

  /** Left out by the inverse matrix, or by solving again without the site. */
  @Test
  void leaveOneOutEqualsSolvingAgain() {
    CovarianceModel model = new CovarianceModel(new Exponential(150), 0.3, 0.1);
    RanchCase ranch = RanchCase.simulated(new RanchCase.Plan(2, 12, 8, 800, model, 0.2, 3, 3), 7);
    Observations data = Observations.of(ranch.readings(), List.of());
    Solved flat = Solved.of(data, new CovarianceModel(new Exponential(1), 0, 0.4));
    Solved solved = Solved.of(data, model);
    LeaveOneOut leave = new LeaveOneOut(data, List.of(solved));
    List<LeftOut> kriged = leave.kriging();
    List<LeftOut> mean = leave.mean(flat);
    List<LeftOut> idw = leave.idw();
    assertThat(kriged).hasSize(24);
    for (int i = 0; i < kriged.size(); i++) {
      LeftOut left = kriged.get(i);
      SiteReadings.Site site = data.parts().get(left.part()).sites().get(left.site());
      SiteReadings rest = Influence.withoutSite(ranch.readings(), site);
      Observations without = Observations.of(rest, List.of());
      Solved again = Solved.of(without, model);
      Points at =
          Points.of(
              without, left.part(), List.of(new PlaceM(site.place().xM(), site.place().yM())));
      // these sites have a paste row or a cheap one; the paste row has no offset
      if (ranch.readings().rows().stream()
          .anyMatch(r -> r.paste() && ranch.readings().sites().get(r.site()).equals(site))) {
        double own = RanchCase.OWN_PASTE_SD * RanchCase.OWN_PASTE_SD;
        same(left, new Kriging(again).predict(at), own);
        Solved flatAgain = Solved.of(without, flat.model());
        same(mean.get(i), new Linear(again, new MeanRule(flatAgain)).predict(at), own);
        same(idw.get(i), new Linear(again, new IdwRule(without)).predict(at), own);
      }
    }
  }

  private static void same(LeftOut left, Predictor.Predicted again, double own) {
    assertThat(left.predicted().expectation()).isCloseTo(again.mean()[0], within(1e-9));
    assertThat(left.predicted().variance()).isCloseTo(again.variance()[0] + own, within(1e-9));
  }
}
