package fieldsalt.surface;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.geo.PlaceM;
import fieldsalt.surface.choice.SurfaceSettings;
import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.covariance.Matern32;
import fieldsalt.surface.covariance.Spherical;
import fieldsalt.surface.covariance.Variogram;
import fieldsalt.surface.fit.Likelihood;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.fit.Reml;
import fieldsalt.surface.fit.SurfaceMethod;
import fieldsalt.surface.kernel.Kriging;
import fieldsalt.surface.site.Observations;
import fieldsalt.surface.site.Points;
import fieldsalt.surface.site.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Spatial Interpolation Comparison 97 (Dubois 1998): 100 rainfall gauges predict 367 others, 0.1
 * mm.
 */
class Sic97Test {
  private static final Map<String, double[]> SEEN = SurfaceCases.table("sic97-observed.csv");
  private static final Map<String, double[]> HELD = SurfaceCases.table("sic97-held-out.csv");

  private static double rmse(Predictor predictor) {
    List<PlaceM> places = new ArrayList<>();
    for (int i = 0; i < HELD.get("x").length; i++) {
      places.add(new PlaceM(HELD.get("x")[i], HELD.get("y")[i]));
    }
    double[] mean = predictor.predict(Points.of(predictor.solved().data(), 0, places)).mean();
    double sum = 0;
    for (int i = 0; i < mean.length; i++) {
      sum += Math.pow(mean[i] - HELD.get("rainfall")[i], 2);
    }
    return Math.sqrt(sum / mean.length);
  }

  private static void model(Variogram shape, double isotropic, double anisotropic) {
    Likelihood likelihood = new Likelihood(gauges());
    Reml reml = new Reml(likelihood);
    Reml.Fit fit = reml.fit(shape);
    Reml.Fit stretched = reml.fitAnisotropic(shape, fit);
    assertThat(rmse(new Kriging(likelihood.solve(fit.model())))).isCloseTo(isotropic, within(0.05));
    assertThat(rmse(new Kriging(likelihood.solve(stretched.model()))))
        .isCloseTo(anisotropic, within(0.05));
  }

  private static Observations gauges() {
    return Observations.of(readings(), List.of());
  }

  private static SiteReadings readings() {
    return SurfaceCases.exact(Scale.NATURAL, SEEN.get("x"), SEEN.get("y"), SEEN.get("rainfall"));
  }

  /** The figures that the methods' page lists: a change must be seen. */
  @Test
  void eachModelWithAndWithoutAnisotropy() {
    model(new Exponential(1), 56.28, 54.61);
    model(new Spherical(1), 55.82, 54.20);
    model(new Matern32(1), 63.88, 61.95);
  }

  /** 1.05 x 55.08, the figure of a weighted-least-squares spherical fit. */
  @Test
  void everythingAutomatic() {
    double wide = 400_000;
    Surface surface =
        SurfaceFitter.fit(
            readings(),
            List.of(SurfaceCases.rectangle("one", -wide, -wide, wide, wide)),
            ChangedSurface.withMaxCellM(SurfaceSettings.defaults().withCellM(5000), 5000));
    assertThat(surface.report().chosen()).isEqualTo(SurfaceMethod.KRIGING);
    assertThat(surface.report().details().anisotropy().ratio()).isBetween(3.0, 6.0);
    assertThat(surface.report().details().anisotropy().azimuthDeg()).isBetween(25.0, 50.0);
    double sum = 0;
    for (int i = 0; i < HELD.get("x").length; i++) {
      PlaceM place = new PlaceM(HELD.get("x")[i], HELD.get("y")[i]);
      double median = surface.at(new Target("one", place)).median();
      sum += Math.pow(median - HELD.get("rainfall")[i], 2);
    }
    assertThat(HELD.get("x")).hasSize(367);
    assertThat(Math.sqrt(sum / 367)).isLessThanOrEqualTo(57.8);
  }
}
