package fieldsalt.surface;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.geo.PlaceM;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.choice.FieldWarnings;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.site.Observations;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Sites in a patch, and a sharp edge: each with a case that raises it and one that does not. */
class FieldWarningsTest {
  private static final FieldBoundary FIELD = SurfaceCases.rectangle("a", 0, 0, 600, 400);

  private static List<Finding> warnings(List<PlaceM> places, ToDoubleFunction<PlaceM> ln) {
    List<SiteReadings.Site> sites = new ArrayList<>();
    List<SiteReadings.Row> rows = new ArrayList<>();
    for (int s = 0; s < places.size(); s++) {
      sites.add(SurfaceCases.site("s" + (100 + s), "a", places.get(s).xM(), places.get(s).yM()));
      rows.add(SurfaceCases.paste(s, ln.applyAsDouble(places.get(s)), 0.01));
    }
    SiteReadings readings = SurfaceCases.readings(Scale.LOG, sites, rows);
    return new FieldWarnings(Observations.of(readings, List.of()), readings).of(FIELD);
  }

  private static List<PlaceM> random(int n, double wide, double high, long seed) {
    Random random = new Random(seed);
    List<PlaceM> places = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      places.add(new PlaceM(wide * random.nextDouble(), high * random.nextDouble()));
    }
    return places;
  }

  private static double trend(PlaceM p) {
    return 1 + p.xM() / 400 + 0.2 * Math.sin(p.yM() / 60);
  }

  /** 18 of 24 sites in a corner of 90 m by 60 m, where the trend is low. */
  @Test
  void mostSitesInOnePatch() {
    List<PlaceM> places = new ArrayList<>(random(18, 90, 60, 1));
    places.addAll(random(6, 600, 400, 2));
    assertThat(warnings(places, FieldWarningsTest::trend))
        .singleElement()
        .satisfies(
            f -> {
              assertThat(f.code()).isEqualTo(Code.SITES_IN_PATCH);
              assertThat(f.found()).contains("half of its 24 sites");
              assertThat(f.done()).containsPattern("about as well as ([4-9]|1[0-2]) sites evenly");
            });
    for (long seed = 3; seed < 23; seed++) {
      assertThat(warnings(random(24, 600, 400, seed), FieldWarningsTest::trend))
          .noneMatch(f -> f.code() == Code.SITES_IN_PATCH);
    }
  }

  /** ECe about 2 in the west and 14 in the east of a line. */
  @Test
  void aSharpEdge() {
    Random noise = new Random(4);
    List<PlaceM> places = random(24, 600, 400, 5);
    assertThat(warnings(places, p -> Math.log(p.xM() < 330 ? 2 : 14) + 0.15 * noise.nextGaussian()))
        .singleElement()
        .satisfies(
            f -> {
              assertThat(f.code()).isEqualTo(Code.TWO_POPULATIONS);
              assertThat(f.found()).contains("sharp edge", "none between");
            });
    // the same values without order are no edge
    assertThat(
            warnings(
                places, p -> Math.log(noise.nextBoolean() ? 2 : 14) + 0.15 * noise.nextGaussian()))
        .isEmpty();
  }

  /** Smooth fields of every range seldom look like an edge: at most 2 in 100. */
  @Test
  void aSmoothFieldHasNoEdge() {
    int told = 0;
    for (int seed = 0; seed < 100; seed++) {
      CovarianceModel model = new CovarianceModel(new Exponential(40 + 6 * seed), 0.5, 0.03);
      RanchCase ranch =
          RanchCase.simulated(new RanchCase.Plan(1, 24, 0, 500, model, 0.1, 24, 0), 100 + seed);
      SiteReadings readings = ranch.readings();
      told +=
          (int)
              new FieldWarnings(Observations.of(readings, List.of()), readings)
                  .of(ranch.fields().get(0)).stream()
                      .filter(f -> f.code() == Code.TWO_POPULATIONS)
                      .count();
    }
    assertThat(told).isLessThanOrEqualTo(2);
  }
}
