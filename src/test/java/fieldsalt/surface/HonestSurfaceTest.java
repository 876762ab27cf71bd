package fieldsalt.surface;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.geo.PlaceM;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.read.site.SurveyReading;
import fieldsalt.surface.choice.SurfaceSettings;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.fit.SurfaceDetails;
import fieldsalt.surface.fit.SurfaceMethod;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.next.Proposal;
import fieldsalt.surface.next.Proposals;
import fieldsalt.surface.site.Target;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Input in another order or split, degenerate input, drift, and what to measure next. */
class HonestSurfaceTest {
  private static final CovarianceModel TRUE_MODEL =
      new CovarianceModel(new Exponential(250), 0.45, 0.05);
  private static final SurfaceSettings COARSE = SurfaceSettings.defaults().withCellM(25);

  private static RanchCase ranch() {
    return RanchCase.simulated(new RanchCase.Plan(2, 25, 50, 1000, TRUE_MODEL, 0.2, 4, 4), 11);
  }

  private static float[] median(SiteReadings readings, List<FieldBoundary> fields) {
    List<float[]> medians =
        SurfaceFitter.fit(readings, fields, COARSE).maps(Map.of()).stream()
            .map(SurfaceMap::median)
            .toList();
    float[] all = new float[medians.stream().mapToInt(m -> m.length).sum()];
    int at = 0;
    for (float[] median : medians) {
      System.arraycopy(median, 0, all, at, median.length);
      at += median.length;
    }
    return all;
  }

  private static void same(float[] a, float[] b) {
    assertThat(a).hasSameSizeAs(b);
    int compared = 0;
    for (int i = 0; i < a.length; i++) {
      if (!Float.isNaN(a[i])) {
        assertThat((double) b[i] / a[i]).isCloseTo(1, within(2e-7));
        compared++;
      }
    }
    assertThat(compared).isGreaterThan(1000);
  }

  @Test
  void shuffledSplitOrShiftedReadingsGiveTheSameMap() {
    RanchCase ranch = ranch();
    float[] map = median(ranch.readings(), ranch.fields());
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < ranch.readings().sites().size(); i++) {
      order.add(i);
    }
    Collections.shuffle(order, new Random(1));
    List<SiteReadings.Row> rows = new ArrayList<>();
    for (SiteReadings.Row r : ranch.readings().rows()) {
      rows.add(SurfaceCases.row(r, order.indexOf(r.site()), r.ownVariance()));
    }
    Collections.shuffle(rows, new Random(2));
    List<SiteReadings.Site> sites =
        order.stream().map(i -> ranch.readings().sites().get(i)).toList();
    assertThat(median(SurfaceCases.with(ranch.readings(), sites, rows), ranch.fields()))
        .isEqualTo(map);

    List<SiteReadings.Row> split = new ArrayList<>(ranch.readings().rows());
    SiteReadings.Row first = split.get(7);
    split.set(7, SurfaceCases.row(first, first.site(), 2 * first.ownVariance()));
    split.add(7, SurfaceCases.row(first, first.site(), 2 * first.ownVariance()));
    same(
        map,
        median(
            SurfaceCases.with(ranch.readings(), ranch.readings().sites(), split), ranch.fields()));

    List<SiteReadings.Site> moved =
        ranch.readings().sites().stream()
            .map(
                s ->
                    SurfaceCases.site(
                        s.id(), s.field(), s.place().xM() + 1e6, s.place().yM() + 1e6))
            .toList();
    List<FieldBoundary> fields =
        List.of(
            SurfaceCases.rectangle("field 0", 1e6, 1e6, 1e6 + 1000, 1e6 + 500),
            SurfaceCases.rectangle("field 1", 1e6 + 1500, 1e6, 1e6 + 2500, 1e6 + 500));
    same(map, median(SurfaceCases.with(ranch.readings(), moved, ranch.readings().rows()), fields));
  }

  private static Surface degenerate(double[] x, double[] y, double[] z, Scale scale) {
    Surface surface =
        SurfaceFitter.fit(
            SurfaceCases.exact(scale, x, y, z),
            List.of(SurfaceCases.rectangle("one", 0, 0, 500, 500)),
            COARSE);
    SurfaceMap map = surface.maps(Map.of("one", 4.0)).get(0);
    for (int i = 0; i < map.median().length; i++) {
      assertThat(map.median()[i]).isFinite();
      assertThat(map.error()[i]).isFinite().isGreaterThanOrEqualTo(0);
      assertThat(map.chance()[i]).isBetween(0f, 1f);
    }
    return surface;
  }

  private static double[] filled(int n, java.util.function.IntToDoubleFunction f) {
    double[] out = new double[n];
    java.util.Arrays.setAll(out, f);
    return out;
  }

  @Test
  void degenerateInputNeverFails() {
    Random random = new Random(3);
    for (Scale scale : Scale.values()) {
      double[] x = random.doubles(20, 0, 500).toArray();
      double[] y = random.doubles(20, 0, 500).toArray();
      double[] z = filled(20, i -> 1 + 0.4 * random.nextGaussian());
      Surface equal = degenerate(x, y, filled(20, i -> 1.25), scale);
      Target middle = new Target("one", new PlaceM(250, 250));
      double expected = scale == Scale.LOG ? Math.exp(1.25) : 1.25;
      assertThat(equal.at(middle).median()).isCloseTo(expected, within(1e-3));
      degenerate(x, filled(20, i -> 100), z, scale);
      double[] x2 = x.clone();
      double[] y2 = y.clone();
      x2[1] = x2[0];
      y2[1] = y2[0];
      degenerate(x2, y2, z, scale);
      double[] outlier = z.clone();
      outlier[5] = 9;
      degenerate(x, y, outlier, scale);
      degenerate(filled(20, i -> 250), filled(20, i -> 250), z, scale);
      for (int n = 3; n < 10; n++) {
        int few = n;
        degenerate(filled(few, i -> x[i]), filled(few, i -> y[i]), filled(few, i -> z[i]), scale);
      }
    }
  }

  private static double wave(double x, double y) {
    return Math.sin(x / 120) * Math.cos(y / 90);
  }

  private static Surface steered(double effect) {
    Random random = new Random(8);
    List<SurveyReading> survey = new ArrayList<>();
    for (int i = 0; i < 2500; i++) {
      double x = 20 * (i % 50);
      double y = 20 * (i / 50);
      survey.add(new SurveyReading(new PlaceM(x, y), Math.exp(3 + 0.5 * wave(x, y))));
    }
    double[] x = random.doubles(60, 0, 1000).toArray();
    double[] y = random.doubles(60, 0, 1000).toArray();
    double[] z = filled(60, i -> 1 + effect * wave(x[i], y[i]) + 0.2 * random.nextGaussian());
    return SurfaceFitter.fit(
        SurfaceCases.exact(Scale.LOG, x, y, z),
        List.of(SurfaceCases.rectangle("one", 0, 0, 1000, 1000)),
        survey,
        List.of(),
        COARSE);
  }

  @Test
  void aSurveySteersTheMapOnlyWhereItHelps() {
    Surface helps = steered(0.8);
    assertThat(helps.report().chosen()).isEqualTo(SurfaceMethod.DRIFT);
    SurfaceDetails.DriftCheck check = helps.report().details().drift().orElseThrow();
    assertThat(check.keepsSign()).isTrue();
    assertThat(check.coefficients()[0]).isCloseTo(1.6, within(0.3));
    assertThat(steered(0).report().chosen()).isNotEqualTo("drift");
  }

  @Test
  void whatToMeasureNextLowersTheErrorsItPromises() {
    RanchCase ranch = ranch();
    Surface surface = SurfaceFitter.fit(ranch.readings(), ranch.fields(), COARSE);
    Proposals proposals =
        surface.measureNext(List.of(ranch.targets(0), ranch.targets(1)), List.of(10.0, 10.0), 10);
    assertThat(proposals.best()).hasSize(10);
    double error = proposals.ranchErrorNow();
    double gain = Double.POSITIVE_INFINITY;
    for (Proposal p : proposals.best()) {
      assertThat(p.ranchErrorAfter()).isLessThanOrEqualTo(error + 1e-12);
      assertThat(p.gain()).isPositive().isLessThanOrEqualTo(gain * 1.5);
      error = p.ranchErrorAfter();
      gain = p.gain();
    }
    assertThat(error).isLessThan(proposals.ranchErrorNow() * 0.95);
  }
}
