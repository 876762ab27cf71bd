package fieldsalt.surface;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.basis.site.Scale;
import fieldsalt.gaussian.MixedModel;
import fieldsalt.geo.PlaceM;
import fieldsalt.surface.choice.Tried;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.fit.LeaveOneOut;
import fieldsalt.surface.fit.LeftOut;
import fieldsalt.surface.fit.Likelihood;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.fit.Reml;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.kernel.Kriging;
import fieldsalt.surface.site.Drift;
import fieldsalt.surface.site.Observations;
import fieldsalt.surface.site.Points;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * A salinity survey of 114 places on an 80-ha farm: Brus 2022, Spatial Sampling with R, CRC,
 * chapters 22-24 (R package sswr 0.2.1, CC BY 4.0). Published REML: table 23.1. The other figures:
 * an established library and independent code that agree to 7 digits.
 */
class RealSurveyTest {
  private static final Path FOLDER = Path.of("..", "shared", "real");
  private static final double GRID_X = 307835.420736008;
  private static final double GRID_Y = 4600248.86446957;
  private Map<String, double[]> all;
  private Map<String, double[]> grid;

  @BeforeEach
  void read() throws IOException {
    Assumptions.assumeTrue(
        Files.exists(FOLDER.resolve("crf.csv")), "the real survey is not at hand: skipped");
    all = SurfaceCases.columns(Files.readAllLines(FOLDER.resolve("crf.csv")));
    grid = SurfaceCases.columns(Files.readAllLines(FOLDER.resolve("crf-grid.csv")));
  }

  private int[] firstVisits() {
    Map<List<Double>, Integer> first = new LinkedHashMap<>();
    for (int i = 0; i < all.get("x").length; i++) {
      first.putIfAbsent(List.of(all.get("x")[i], all.get("y")[i]), i);
    }
    return first.values().stream().mapToInt(i -> i).toArray();
  }

  private double[] column(String name, int[] rows) {
    return Arrays.stream(rows).mapToDouble(i -> all.get(name)[i]).toArray();
  }

  /** Later visits stand micrometres beside the first one, each with its own conductivity. */
  private double easting(int row) {
    double x = all.get("x")[row];
    for (int i = 0; i < row; i++) {
      if (all.get("x")[i] == x && all.get("y")[i] == all.get("y")[row]) {
        return x + 1e-6 * row;
      }
    }
    return x;
  }

  private double[] eastings(int[] rows) {
    return Arrays.stream(rows).mapToDouble(this::easting).toArray();
  }

  private Observations observations(int[] rows, boolean drift) {
    double[] y = SurfaceCases.logs(column("ECe150", rows));
    return Observations.of(
        SurfaceCases.exact(Scale.LOG, eastings(rows), column("y", rows), y),
        drift ? List.of(conductivity()) : List.of());
  }

  /** ln of apparent conductivity at the samples and at the nodes. */
  private Drift conductivity() {
    Map<PlaceM, Double> known = new LinkedHashMap<>();
    for (int i = 0; i < all.get("x").length; i++) {
      known.put(new PlaceM(easting(i), all.get("y")[i]), Math.log(all.get("EMv1m")[i]));
    }
    for (int i = 0; i < grid.get("x").length; i++) {
      known.put(new PlaceM(grid.get("x")[i], grid.get("y")[i]), grid.get("lnEM100cm")[i]);
    }
    return new Drift() {
      @Override
      public String name() {
        return "ECa";
      }

      @Override
      public double at(PlaceM place) {
        return known.get(place);
      }
    };
  }

  private Predictor.Predicted nodes(Solved solved) {
    List<PlaceM> places = new java.util.ArrayList<>();
    for (int i = 0; i < grid.get("x").length; i++) {
      places.add(new PlaceM(grid.get("x")[i], grid.get("y")[i]));
    }
    assertThat(places.get(0)).isEqualTo(new PlaceM(GRID_X, GRID_Y));
    assertThat(places).hasSize(1551);
    return new Kriging(solved).predict(Points.of(solved.data(), 0, places));
  }

  private static double mean(double[] x) {
    return Arrays.stream(x).average().orElseThrow();
  }

  @Test
  void ordinaryKriging() {
    CovarianceModel model = new CovarianceModel(new Exponential(192), 0.336, 0.116);
    Observations data = observations(firstVisits(), false);
    assertThat(data.siteCount()).isEqualTo(114);
    Predictor.Predicted p = nodes(Solved.of(data, model));
    assertThat(p.mean()[0]).isCloseTo(0.839598, within(5e-7));
    assertThat(p.variance()[0]).isCloseTo(0.327052, within(5e-7));
    assertThat(p.variance()[0] - 0.116).isCloseTo(0.211052, within(5e-7));
    assertThat(mean(p.mean())).isCloseTo(0.963662, within(5e-7));
    assertThat(mean(p.variance())).isCloseTo(0.246079, within(5e-7));
  }

  @Test
  void leaveOneOut() {
    CovarianceModel model = new CovarianceModel(new Exponential(192), 0.336, 0.116);
    Observations data = observations(firstVisits(), false);
    List<LeftOut> left = new LeaveOneOut(data, List.of(Solved.of(data, model))).kriging();
    double[] theta = left.stream().mapToDouble(LeftOut::squaredStandardised).sorted().toArray();
    double squares = left.stream().mapToDouble(l -> l.error() * l.error()).sum();
    assertThat(Math.sqrt(squares / 114)).isCloseTo(0.536971, within(5e-7));
    assertThat(mean(theta)).isCloseTo(1.214627, within(5e-7));
    assertThat(Tried.median(theta)).isCloseTo(0.605871, within(5e-7));
  }

  @Test
  void externalDrift() {
    CovarianceModel model = new CovarianceModel(new Exponential(230), 0.083, 0.126);
    Predictor.Predicted p = nodes(Solved.of(observations(firstVisits(), true), model));
    assertThat(p.mean()[0]).isCloseTo(0.643929, within(5e-7));
    assertThat(p.variance()[0]).isCloseTo(0.184872, within(5e-7));
    assertThat(mean(p.mean())).isCloseTo(0.796526, within(5e-7));
    assertThat(mean(p.variance())).isCloseTo(0.166212, within(5e-7));
  }

  private int[] everyRow() {
    int[] rows = new int[all.get("x").length];
    Arrays.setAll(rows, i -> i);
    return rows;
  }

  /**
   * Table 23.1: nugget 0.126, partial sill 0.083, distance 230 m; 28 places have two visits. The
   * fit is rounded to 0.001 of a logarithm, which moves the intercept in its fifth decimal: half
   * the last digit is held at the unrounded optimum, see below.
   */
  @Test
  void remlWithDrift() {
    Observations data = observations(everyRow(), true);
    Reml.Fit fit = new Reml(new Likelihood(data)).fit(new Exponential(1));
    assertThat(-fit.logLikelihood()).isCloseTo(73.6231, within(5e-5));
    assertThat(fit.model().microScale()).isCloseTo(0.1260, within(5e-4));
    assertThat(fit.model().partialSill()).isCloseTo(0.0833, within(5e-4));
    assertThat(fit.model().correlation().rangeM()).isCloseTo(229.65, within(2.3));
    MixedModel solution = Solved.of(data, fit.model()).solution();
    Observations.ScaledDrift drift = data.drifts().get(0);
    double slope = solution.sharedEffects()[0] / drift.spread();
    assertThat(slope).isCloseTo(0.7249, within(5e-4));
    assertThat(solution.ownEffects(0)[0] - slope * drift.centre()).isCloseTo(-2.0005, within(1e-4));
  }

  /** At the optimum of independent code (R: chol, optim to 1e-15): coefficients -2.0005, 0.7249. */
  @Test
  void coefficientsOfTheDrift() {
    Observations data = observations(everyRow(), true);
    CovarianceModel model = new CovarianceModel(new Exponential(229.6533), 0.08334972, 0.1259905);
    MixedModel solution = Solved.of(data, model).solution();
    double slope = solution.sharedEffects()[0] / data.drifts().get(0).spread();
    assertThat(slope).isCloseTo(0.7249, within(5e-5));
    assertThat(solution.ownEffects(0)[0] - slope * data.drifts().get(0).centre())
        .isCloseTo(-2.0005, within(5e-5));
    assertThat(-new Likelihood(data).of(model)).isCloseTo(73.6231, within(5e-5));
  }

  @Test
  void remlWithoutDrift() {
    Observations data = observations(everyRow(), false);
    Reml.Fit fit = new Reml(new Likelihood(data)).fit(new Exponential(1));
    assertThat(-fit.logLikelihood()).isCloseTo(103.2657, within(5e-5));
    assertThat(fit.model().microScale()).isCloseTo(0.0744, within(5e-4));
    assertThat(fit.model().partialSill()).isCloseTo(0.3272, within(1e-3));
    assertThat(fit.model().correlation().rangeM()).isCloseTo(84.34, within(0.4));
  }
}
