package fieldsalt.surface;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.InputProblem;
import fieldsalt.surface.area.JointMeans;
import fieldsalt.surface.choice.SurfaceSettings;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.fit.SurfaceMethod;
import fieldsalt.surface.fit.SurfaceReport;
import fieldsalt.surface.map.PointDistribution;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.site.Grid;
import fieldsalt.surface.site.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class SurfaceFitterTest {
  private static final CovarianceModel TRUE_MODEL =
      new CovarianceModel(new Exponential(250), 0.45, 0);
  private static final SurfaceSettings SETTINGS = SurfaceSettings.defaults();

  private static RanchCase ranch() {
    return RanchCase.simulated(new RanchCase.Plan(2, 30, 50, 1000, TRUE_MODEL, 0.2, 0, 6), 3);
  }

  @Test
  void aRanchIsMappedWithErrorsThatFit() {
    RanchCase ranch = ranch();
    Surface surface = SurfaceFitter.fit(ranch.readings(), ranch.fields(), SETTINGS);
    assertThat(surface.report().chosen()).isEqualTo(SurfaceMethod.KRIGING);
    assertThat(surface.report().candidates())
        .extracting(SurfaceReport.Candidate::method)
        .containsExactly(SurfaceMethod.MEAN, SurfaceMethod.KRIGING, SurfaceMethod.IDW);
    assertThat(surface.report().variogram().averaged()).isTrue();
    int inside = 0;
    double squares = 0;
    for (int f = 0; f < 2; f++) {
      for (int i = 0; i < ranch.places().get(f).size(); i++) {
        PointDistribution point = surface.at(ranch.targets(f).get(i));
        double truth = Math.exp(ranch.truth().get(f)[i]);
        inside += truth > point.quantile(0.05) && truth < point.quantile(0.95) ? 1 : 0;
        squares += Math.pow(Math.log(point.median()) - ranch.truth().get(f)[i], 2);
      }
    }
    assertThat(inside).isBetween(80, 100);
    assertThat(Math.sqrt(squares / 100)).isLessThan(0.5);
  }

  @Test
  void theMapIsTheSameThingAsItsPoints() {
    RanchCase ranch = ranch();
    Surface surface = SurfaceFitter.fit(ranch.readings(), ranch.fields(), SETTINGS.withCellM(20));
    List<SurfaceMap> maps = surface.maps(Map.of("field 0", 4.0, "field 1", 2.0));
    assertThat(maps).hasSize(2);
    assertThat(maps.get(1).fields()).containsExactly("field 1");
    isItsPoints(surface, maps.get(0), 0, 4);
    isItsPoints(surface, maps.get(1), 1, 2);
  }

  private static void isItsPoints(Surface surface, SurfaceMap map, int field, double limit) {
    int checked = 0;
    for (int cell = 0; cell < map.fieldOf().length; cell += 17) {
      if (map.fieldOf()[cell] < 0) {
        assertThat(map.median()[cell]).isNaN();
        continue;
      }
      Grid grid = map.grid();
      Target target =
          new Target(
              "field " + field,
              new fieldsalt.geo.PlaceM(
                  grid.centreX(cell % grid.columns()), grid.centreY(cell / grid.columns())));
      PointDistribution point = surface.at(target);
      assertThat((double) map.median()[cell]).isCloseTo(point.median(), within(1e-5));
      assertThat((double) map.error()[cell]).isCloseTo(point.error(), within(1e-6));
      assertThat((double) map.chance()[cell]).isCloseTo(point.chanceAbove(limit), within(1e-6));
      assertThat(map.chance()[cell] > 0.5).isEqualTo(map.median()[cell] > limit);
      checked++;
    }
    assertThat(checked).isGreaterThan(20);
  }

  @Test
  void jointMomentsAgreeWithPointsAndAreas() {
    RanchCase ranch = ranch();
    Surface surface = SurfaceFitter.fit(ranch.readings(), ranch.fields(), SETTINGS);
    List<Target> some = new ArrayList<>(ranch.targets(0).subList(0, 5));
    some.add(ranch.targets(1).get(0));
    Surface.Marginals marginals = surface.marginals(some);
    for (int i = 0; i < some.size(); i++) {
      assertThat(marginals.sd()[i]).isCloseTo(surface.at(some.get(i)).error(), within(1e-9));
    }
    JointMeans means = surface.areaMeans(List.of(ranch.targets(0), ranch.targets(1)));
    for (int a = 0; a < 2; a++) {
      assertThat(means.low()[a]).isLessThan(means.mean()[a]);
      assertThat(means.high()[a]).isGreaterThan(means.mean()[a]);
      double truth =
          java.util.Arrays.stream(ranch.truth().get(a)).map(Math::exp).average().orElseThrow();
      assertThat(truth).isBetween(means.low()[a] * 0.9, means.high()[a] * 1.1);
    }
    assertThat(means.covariance()[0][1]).isPositive();
  }

  private static List<String> codes(Surface surface) {
    return surface.report().findings().stream().map(f -> f.code().id()).toList();
  }

  private static SiteReadings grown(int sites, String field) {
    List<SiteReadings.Site> at = new ArrayList<>();
    List<SiteReadings.Row> rows = new ArrayList<>();
    for (int i = 0; i < sites; i++) {
      at.add(SurfaceCases.site("s" + i, field, 37 * i % 100, 53 * i % 100));
      rows.add(SurfaceCases.paste(i, 1 + 0.3 * (i % 3), 0.01));
    }
    return SurfaceCases.readings(Scale.LOG, at, rows);
  }

  @Test
  void oneOrTwoSitesAreNotAMap() {
    for (int n : new int[] {1, 2}) {
      assertThatThrownBy(
              () ->
                  SurfaceFitter.fit(
                      grown(n, "one"),
                      List.of(SurfaceCases.rectangle("one", 0, 0, 100, 100)),
                      SETTINGS))
          .isInstanceOf(InputProblem.class)
          .hasMessageContaining("field one")
          .hasMessageContaining("at least 3");
    }
  }

  @Test
  void aFieldWithTooFewIsNamedAndTheOthersAreMapped() {
    SiteReadings three = grown(4, "one");
    List<SiteReadings.Site> sites = new ArrayList<>(three.sites());
    List<SiteReadings.Row> rows = new ArrayList<>(three.rows());
    sites.add(SurfaceCases.site("z1", "two", 300, 0));
    rows.add(SurfaceCases.paste(4, 1, 0.01));
    Surface surface =
        SurfaceFitter.fit(
            SurfaceCases.readings(Scale.LOG, sites, rows),
            List.of(
                SurfaceCases.rectangle("one", 0, 0, 100, 100),
                SurfaceCases.rectangle("three", 600, 0, 700, 100),
                SurfaceCases.rectangle("two", 300, 0, 400, 100)),
            SETTINGS);
    assertThat(surface.report().leftOut()).containsExactly("two");
    assertThat(codes(surface)).contains("field-left-out", "field-without-sites");
    assertThat(codes(surface)).contains("default-variogram");
    assertThat(surface.report().variogram().rangeM()).isEqualTo(200);
    assertThat(surface.report().variogram().isDefault()).isTrue();
    assertThat(surface.maps(Map.of()).get(0).fields()).containsExactly("one");
  }
}
