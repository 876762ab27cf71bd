package fieldsalt.surface;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.basis.site.Scale;
import fieldsalt.geo.PlaceM;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.covariance.Spherical;
import fieldsalt.surface.covariance.Variogram;
import fieldsalt.surface.fit.LeaveOneOut;
import fieldsalt.surface.fit.LeftOut;
import fieldsalt.surface.fit.Likelihood;
import fieldsalt.surface.fit.Linear;
import fieldsalt.surface.fit.NelderMead;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.fit.Reml;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.kernel.Kriging;
import fieldsalt.surface.site.Drift;
import fieldsalt.surface.site.IdwRule;
import fieldsalt.surface.site.Observations;
import fieldsalt.surface.site.Points;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Values of R 4.2.2 with gstat 2.1-0 and nlme 3.1-162 for the Meuse topsoil samples (Rikken and Van
 * Rijn 1993; Burrough and McDonnell 1998; data set {@code meuse} of R package sp): ln zinc,
 * spherical model 0.05066243 + 0.5906078 Sph(897.0209); with drift 0.08 + 0.1486 Sph(700).
 */
class SurfaceReferenceTest {
  private static final CovarianceModel MODEL =
      new CovarianceModel(new Spherical(897.0209), 0.5906078, 0.05066243);
  private static final CovarianceModel RESIDUAL =
      new CovarianceModel(new Spherical(700), 0.1486, 0.08);
  private static final Map<String, double[]> MEUSE = SurfaceCases.table("meuse.csv");
  private static final Map<String, double[]> EXPECTED = SurfaceCases.table("meuse-predictions.csv");

  private static Observations meuse(List<Drift> drifts) {
    double[] z = SurfaceCases.logs(MEUSE.get("zinc"));
    return Observations.of(
        SurfaceCases.exact(Scale.LOG, MEUSE.get("x"), MEUSE.get("y"), z), drifts);
  }

  /** The distance to the river, known at the samples and at the places to predict. */
  private static Drift river() {
    return new Drift() {
      @Override
      public String name() {
        return "root of the distance to the river";
      }

      @Override
      public double at(PlaceM place) {
        for (Map<String, double[]> table : List.of(MEUSE, EXPECTED)) {
          for (int i = 0; i < table.get("x").length; i++) {
            if (table.get("x")[i] == place.xM() && table.get("y")[i] == place.yM()) {
              return table.get("sqrt_dist")[i];
            }
          }
        }
        return Double.NaN;
      }
    };
  }

  private static void equals(Predictor predictor, String estimate, String variance) {
    for (int i = 0; i < EXPECTED.get("x").length; i++) {
      Predictor.Predicted p =
          predictor.predict(
              SurfaceCases.points(
                  predictor.solved().data(), 0, EXPECTED.get("x")[i], EXPECTED.get("y")[i]));
      assertThat(p.mean()[0] / EXPECTED.get(estimate)[i]).isCloseTo(1, within(1e-6));
      if (variance != null) {
        assertThat(p.variance()[0] / EXPECTED.get(variance)[i]).isCloseTo(1, within(1e-6));
      }
    }
  }

  @Test
  void ordinaryKriging() {
    equals(new Kriging(Solved.of(meuse(List.of()), MODEL)), "ok", "ok_var");
  }

  @Test
  void krigingWithExternalDrift() {
    equals(new Kriging(Solved.of(meuse(List.of(river())), RESIDUAL)), "ked", "ked_var");
  }

  @Test
  void inverseDistanceSquared() {
    Observations data = meuse(List.of());
    equals(new Linear(Solved.of(data, MODEL), new IdwRule(data)), "idw2", null);
  }

  /** 40 m blocks, 4 x 4 Gauss-Legendre points (Abramowitz and Stegun 1964, table 25.4, n = 4). */
  @Test
  void blockKriging() {
    Observations data = meuse(List.of());
    Kriging kriging = new Kriging(Solved.of(data, MODEL));
    double[] at = {-0.861136311594053, -0.339981043584856, 0.339981043584856, 0.861136311594053};
    double[] weight = {0.347854845137454, 0.652145154862546, 0.652145154862546, 0.347854845137454};
    for (int b = 0; b < EXPECTED.get("x").length; b++) {
      List<PlaceM> places = new ArrayList<>();
      double[] w = new double[16];
      for (int i = 0; i < 16; i++) {
        double x = EXPECTED.get("x")[b] + 20 * at[i / 4];
        places.add(new PlaceM(x, EXPECTED.get("y")[b] + 20 * at[i % 4]));
        w[i] = weight[i / 4] * weight[i % 4] / 4;
      }
      Predictor.Predicted p = kriging.predict(Points.of(data, 0, places));
      double variance = 0;
      double[][] covariance = p.covariance(p);
      for (int i = 0; i < 16; i++) {
        variance += w[i] * Linear.dot(w, covariance[i]);
      }
      assertThat(Linear.dot(w, p.mean()) / EXPECTED.get("block40")[b]).isCloseTo(1, within(1e-6));
      assertThat(variance / EXPECTED.get("block40_var")[b]).isCloseTo(1, within(1e-6));
    }
  }

  private static void leftOut(List<LeftOut> left, int row, boolean withVariance) {
    Map<String, double[]> expected = SurfaceCases.table("meuse-loocv.csv");
    double n = left.size();
    assertThat(n).isEqualTo(155);
    double squares = left.stream().mapToDouble(l -> l.error() * l.error()).sum();
    double ratio = left.stream().mapToDouble(LeftOut::squaredStandardised).sum() / n;
    double me = left.stream().mapToDouble(LeftOut::error).sum() / n;
    double mae = left.stream().mapToDouble(l -> Math.abs(l.error())).sum() / n;
    assertThat(me).isCloseTo(expected.get("me")[row], within(1e-9));
    assertThat(mae / expected.get("mae")[row]).isCloseTo(1, within(1e-6));
    assertThat(Math.sqrt(squares / n) / expected.get("rmse")[row]).isCloseTo(1, within(1e-6));
    if (withVariance) {
      double msdr = row == 0 ? 0.818545556452586 : 1.01670633299914;
      assertThat(ratio / msdr).isCloseTo(1, within(1e-6));
    }
  }

  @Test
  void leaveOneOut() {
    Observations data = meuse(List.of());
    Solved solved = Solved.of(data, MODEL);
    leftOut(new LeaveOneOut(data, List.of(solved)).kriging(), 0, true);
    leftOut(new LeaveOneOut(data, List.of(solved)).idw(), 1, false);
    Observations drifted = meuse(List.of(river()));
    Solved residual = Solved.of(drifted, RESIDUAL);
    leftOut(new LeaveOneOut(drifted, List.of(residual)).kriging(), 2, true);
  }

  /** nlme's likelihood leaves ½ ln|X'X| out; on the drift as it is, not standardised. */
  private static double asNlme(Observations data, double logLikelihood) {
    double spread = data.drifts().isEmpty() ? 1 : data.drifts().get(0).spread();
    return logLikelihood - 0.5 * (data.logDesign() + 2 * Math.log(spread));
  }

  private static void agrees(Observations data, Reml.Fit fit, int row) {
    Map<String, double[]> expected = SurfaceCases.table("meuse-reml-nlme.csv");
    assertThat(asNlme(data, fit.logLikelihood()))
        .isCloseTo(expected.get("reml_loglik")[row], within(1e-3));
    assertThat(fit.model().correlation().rangeM() / expected.get("range_parameter_m")[row])
        .isCloseTo(1, within(0.01));
    assertThat(fit.model().microScale() / expected.get("nugget")[row]).isCloseTo(1, within(0.01));
    assertThat(fit.model().partialSill() / expected.get("partial_sill")[row])
        .isCloseTo(1, within(0.01));
  }

  @Test
  void remlWithDrift() {
    Observations data = meuse(List.of(river()));
    Reml reml = new Reml(new Likelihood(data));
    agrees(data, reml.fit(new Exponential(1)), 2);
    agrees(data, reml.fit(new Spherical(1)), 3);
  }

  /** nlme stopped at the inner maximum; at the bound of the range the likelihood is higher. */
  @Test
  void remlWithoutDrift() {
    Observations data = meuse(List.of());
    Reml reml = new Reml(new Likelihood(data));
    CovarianceModel start = new CovarianceModel(new Spherical(900), 0.6, 0.03);
    Reml.Fit inner = nearestMaximum(new Likelihood(data), start);
    agrees(data, inner, 1);
    assertThat(reml.fit(new Spherical(1)).logLikelihood()).isGreaterThan(inner.logLikelihood() + 3);
  }

  private static Reml.Fit nearestMaximum(Likelihood likelihood, CovarianceModel start) {
    double sill = start.pointVariance();
    double[] from = {
      Math.log(start.correlation().rangeM()), Math.log(sill), start.microScale() / sill
    };
    double[] low = {Math.log(10), Math.log(1e-3), 0};
    double[] high = {Math.log(1e4), Math.log(1e2), 1};
    NelderMead search = new NelderMead(p -> likelihood.of(model(start, p)), low, high, 250);
    NelderMead.Vertex top = search.climb(from, new double[] {0.05, 0.05, 0.02}, 1e-7);
    return new Reml.Fit(model(start, top.at()), top.value());
  }

  private static CovarianceModel model(CovarianceModel start, double[] p) {
    Variogram shape = start.correlation().withRange(Math.exp(p[0]));
    double sill = Math.exp(p[1]);
    return new CovarianceModel(shape, sill * (1 - p[2]), sill * p[2]);
  }

  /** The trap: without a bound the range runs away to 62,000 km. */
  @Test
  void aRangeThatRunsAwayIsHeldByItsBound() {
    Reml reml = new Reml(new Likelihood(meuse(List.of())));
    Reml.Fit fit = reml.fit(new Exponential(1));
    double diagonal = Math.hypot(2785, 3897);
    assertThat(reml.bounds().highM()).isCloseTo(2 * diagonal, within(1e-6));
    assertThat(fit.model().correlation().rangeM()).isCloseTo(2 * diagonal, within(1e-6));
  }
}
