package fieldsalt.surface.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.basis.site.Scale;
import fieldsalt.geo.PlaceM;
import fieldsalt.surface.SurfaceCases;
import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.covariance.Spherical;
import fieldsalt.surface.covariance.Variogram;
import fieldsalt.surface.site.Drift;
import fieldsalt.surface.site.Observations;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Profile likelihood interval of the range of ln zinc of the Meuse samples. Expected: independent
 * code in R 4.2.2 (base only: chol for the likelihood, the sill in closed form, optimize over the
 * nugget's share, uniroot where the profile is half of chi-squared's 95 % quantile, 1.9207, below
 * its top). Tolerance 0.4 %: half the last step of the halving.
 */
class RangeProfileTest {
  private static final double LAST_STEP = 0.004;
  private static final Map<String, double[]> MEUSE = SurfaceCases.table("meuse.csv");

  private static Drift river() {
    Map<PlaceM, Double> known = new LinkedHashMap<>();
    for (int i = 0; i < MEUSE.get("x").length; i++) {
      known.put(new PlaceM(MEUSE.get("x")[i], MEUSE.get("y")[i]), MEUSE.get("sqrt_dist")[i]);
    }
    return new Drift() {
      @Override
      public String name() {
        return "distance to the river";
      }

      @Override
      public double at(PlaceM place) {
        return known.get(place);
      }
    };
  }

  private static Reml reml(List<Drift> drifts) {
    double[] z = SurfaceCases.logs(MEUSE.get("zinc"));
    return new Reml(
        new Likelihood(
            Observations.of(
                SurfaceCases.exact(Scale.LOG, MEUSE.get("x"), MEUSE.get("y"), z), drifts)));
  }

  private static void interval(Variogram shape, double range, double low, double high) {
    Reml reml = reml(List.of(river()));
    Reml.Fit fit = reml.fit(shape);
    assertThat(fit.model().correlation().rangeM() / range).isCloseTo(1, within(0.01));
    double[] interval = new RangeProfile(reml, fit).interval();
    assertThat(interval[0] / low).as("low").isCloseTo(1, within(LAST_STEP));
    assertThat(interval[1] / high).as("high").isCloseTo(1, within(LAST_STEP));
  }

  @Test
  void exponential() {
    interval(new Exponential(1), 192.51, 95.54, 573.19);
  }

  @Test
  void spherical() {
    interval(new Spherical(1), 429.24, 293.53, 981.53);
  }

  /** Without the drift the likelihood has no inner maximum: no upper end can be told. */
  @Test
  void aTrendHasNoUpperEnd() {
    Reml reml = reml(List.of());
    Reml.Fit fit = reml.fit(new Exponential(1));
    double[] interval = new RangeProfile(reml, fit).interval();
    assertThat(interval[1]).isCloseTo(reml.bounds().highM(), within(1e-6));
    assertThat(interval[0] / 850.48).isCloseTo(1, within(LAST_STEP));
  }
}
