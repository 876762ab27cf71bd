package fieldsalt.surface;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.basis.site.Scale;
import fieldsalt.surface.area.AreaMoments;
import fieldsalt.surface.area.JointMeans;
import fieldsalt.surface.choice.Judge;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.fit.Crps;
import fieldsalt.surface.fit.LeftOut;
import fieldsalt.surface.fit.Mixture;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.fit.Validation;
import fieldsalt.surface.site.Observations;
import fieldsalt.surface.site.Points;
import fieldsalt.surface.site.Target;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Scores and moments against closed forms and simulated figures worked out independently. */
class ScoresTest {
  private static Mixture normal(double mean, double sd) {
    return new Mixture(new double[] {1}, new double[] {mean}, new double[] {sd});
  }

  /** Gneiting and Raftery 2007, JASA 102:359-378, equation 21, evaluated. */
  @Test
  void crpsOfNormals() {
    assertThat(Crps.of(normal(0, 1), 0)).isCloseTo(0.233695, within(5e-7));
    assertThat(Crps.of(normal(0, 1), 1)).isCloseTo(0.602441, within(5e-7));
    assertThat(Crps.of(normal(0, 1), -2)).isCloseTo(1.452792, within(5e-7));
    assertThat(Crps.of(normal(3, 0), 5)).isEqualTo(2);
  }

  @Test
  void crpsOfLognormals() {
    assertThat(Crps.ofExp(normal(0, 1), 1)).isCloseTo(0.267405, within(5e-7));
    assertThat(Crps.ofExp(normal(0, 1), Math.exp(0.5))).isCloseTo(0.404514, within(5e-7));
    assertThat(Crps.ofExp(normal(Math.log(4), 0.4), 6)).isCloseTo(1.174852, within(5e-7));
  }

  /** CRPS is the integral of (F(x) - 1(x >= y))². */
  @Test
  void crpsOfAMixtureIsTheIntegral() {
    Mixture z =
        new Mixture(new double[] {0.3, 0.7}, new double[] {-0.5, 1.2}, new double[] {0.4, 0.9});
    double sum = 0;
    double step = 1e-3;
    for (double x = -12 + step / 2; x < 12; x += step) {
      double d = z.below(x) - (x >= 0.4 ? 1 : 0);
      sum += d * d * step;
    }
    assertThat(Crps.of(z, 0.4)).isCloseTo(sum, within(1e-5));
  }

  @Test
  void quantilesOfAMixtureUndoItsChances() {
    Mixture z =
        new Mixture(
            new double[] {0.3, 0.5, 0.2},
            new double[] {-0.5, 1.2, 8},
            new double[] {0.4, 0.9, 0.01});
    for (double p : new double[] {1e-6, 0.01, 0.05, 0.3, 0.5, 0.79, 0.81, 0.95, 0.999999}) {
      assertThat(z.below(z.quantile(p))).isCloseTo(p, within(1e-10));
    }
    assertThat(normal(2, 0).quantile(0.3)).isEqualTo(2);
  }

  private static Validation withShares(java.util.function.DoubleUnaryOperator share) {
    List<Validation.Coverage> coverage = new ArrayList<>();
    for (int percent = 5; percent <= 95; percent += 5) {
      coverage.add(new Validation.Coverage(percent / 100.0, share.applyAsDouble(percent / 100.0)));
    }
    return new Validation("ln", 1, 0, 0, 0, 0, 0, null, coverage);
  }

  /** Deutsch 1997: 1 perfect, 0.5 if every interval holds all data, 0 if none holds any. */
  @Test
  void goodness() {
    assertThat(withShares(p -> p).goodness()).isCloseTo(1, within(1e-12));
    assertThat(withShares(p -> 1).goodness()).isCloseTo(0.5, within(1e-12));
    assertThat(withShares(p -> 0).goodness()).isCloseTo(0, within(1e-12));
  }

  /** Chi-squared with 1 degree of freedom has median 0.4549; bands .07-.84, .19-.72, .26-.65. */
  @Test
  void bandsOfTheMedianSquaredError() {
    double[][] expected = {{30, 0.07, 0.84}, {60, 0.19, 0.72}, {120, 0.26, 0.65}};
    for (double[] row : expected) {
      List<LeftOut> left = new ArrayList<>();
      for (int i = 0; i < row[0]; i++) {
        left.add(new LeftOut(0, i, 0.1 * i, normal(0.1 * i + 0.5, 1)));
      }
      Validation.StandardisedErrors errors = Judge.onFitScale(left, left, "ln").errors();
      assertThat(errors.medianLow()).isCloseTo(row[1], within(0.006));
      assertThat(errors.medianHigh()).isCloseTo(row[2], within(0.006));
      assertThat(errors.mean()).isCloseTo(0.25, within(1e-12));
      assertThat(errors.median()).isCloseTo(0.25, within(1e-12));
    }
  }

  /** A predictor of three points with a given joint distribution. */
  private static Predictor given(double[] mean, double[][] covariance) {
    Observations data =
        Observations.of(
            SurfaceCases.exact(
                Scale.LOG, new double[] {0, 50, 100}, new double[3], new double[] {1, 2, 3}),
            List.of());
    Solved solved = Solved.of(data, new CovarianceModel(new Exponential(10), 1, 0));
    Predictor.Predicted predicted =
        new Predictor.Predicted() {
          @Override
          public double[] mean() {
            return mean;
          }

          @Override
          public double[] variance() {
            return new double[] {covariance[0][0], covariance[1][1], covariance[2][2]};
          }

          @Override
          public double[][] covariance(Predictor.Predicted other) {
            return covariance;
          }

          @Override
          public double[][] shared() {
            return new double[0][];
          }
        };
    return new Predictor() {
      @Override
      public Solved solved() {
        return solved;
      }

      @Override
      public Predictor.Predicted readings(Points points, double[] loadings) {
        return predicted;
      }
    };
  }

  /** Lognormal zone mean of three points. */
  @Test
  void meanOfAZone() {
    double[] mean = {Math.log(2), Math.log(4), Math.log(8)};
    double[][] p = {{.10, .06, .02}, {.06, .12, .05}, {.02, .05, .15}};
    Predictor predictor = given(mean, p);
    Target target = new Target("one", new fieldsalt.geo.PlaceM(5, 5));
    List<List<Target>> areas = List.of(List.of(target, target, target));
    AreaMoments moments = new AreaMoments(Scale.LOG);
    AreaMoments.Moments m = moments.under(predictor, predictor.solved().data(), areas);
    assertThat(m.mean()[0]).isCloseTo(4.99099, within(5e-6));
    assertThat(Math.sqrt(m.covariance()[0][0])).isCloseTo(1.50522, within(5e-6));
    JointMeans means = moments.together(List.of(m), new double[] {1});
    assertThat(means.low()[0]).isCloseTo(2.9411, within(5e-5));
    assertThat(means.high()[0]).isCloseTo(7.7634, within(5e-5));
    AreaMoments.Moments natural =
        new AreaMoments(Scale.NATURAL).under(predictor, predictor.solved().data(), areas);
    assertThat(natural.mean()[0]).isCloseTo(Math.log(64) / 3, within(1e-12));
    assertThat(natural.covariance()[0][0]).isCloseTo((0.37 + 0.26) / 9, within(1e-12));
  }
}
