package fieldsalt.surface;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.geo.PlaceM;
import fieldsalt.surface.area.AreaMoments;
import fieldsalt.surface.area.TargetGroups;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.kernel.Kriging;
import fieldsalt.surface.site.Drift;
import fieldsalt.surface.site.Observations;
import fieldsalt.surface.site.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/**
 * Where a drift has no value, places are known less than if it had its mean there, by the square of
 * its coefficient: singly, and together in the mean of an area of one field.
 */
class UnknownDriftTest {
  private static final CovarianceModel MODEL = new CovarianceModel(new Exponential(200), 0.2, 0.05);
  private static final double LAST_KNOWN_M = 900;
  private static final List<Target> TARGETS =
      List.of(target("a", 500), target("a", 950), target("a", 1100), target("b", 1000));

  private record East(DoubleUnaryOperator of) implements Drift {
    @Override
    public String name() {
      return "east";
    }

    @Override
    public double at(PlaceM place) {
      return of.applyAsDouble(place.xM());
    }
  }

  private static Target target(String field, double x) {
    return new Target(field, new PlaceM(x, field.equals("a") ? 200 : 700));
  }

  private static SiteReadings readings() {
    Random random = new Random(8);
    List<SiteReadings.Site> sites = new ArrayList<>();
    List<SiteReadings.Row> rows = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      String field = i % 2 == 0 ? "a" : "b";
      double x = LAST_KNOWN_M * random.nextDouble();
      sites.add(
          SurfaceCases.site(
              "s" + (10 + i), field, x, 400 * random.nextDouble() + (i % 2 == 0 ? 0 : 500)));
      rows.add(SurfaceCases.paste(i, 1 + x / 300 + 0.2 * random.nextGaussian(), 0.01));
    }
    return SurfaceCases.readings(Scale.NATURAL, sites, rows);
  }

  private static Observations with(Drift drift) {
    return Observations.of(readings(), List.of(drift));
  }

  private static double[][] covariance(Observations data) {
    Kriging kriging = new Kriging(Solved.of(data, MODEL));
    TargetGroups.Joined joined = TargetGroups.of(data, TARGETS).predict(kriging);
    return joined.covariance(joined);
  }

  @Test
  void cellsOfAFieldWithoutAValueHaveItsErrorInCommon() {
    Observations known = with(new East(x -> x));
    double mean = known.drifts().get(0).centre();
    Observations unknown = with(new East(x -> x > LAST_KNOWN_M ? Double.NaN : x));
    Observations meanThere = with(new East(x -> x > LAST_KNOWN_M ? mean : x));
    double effect = Solved.of(known, MODEL).solution().sharedEffects()[0];
    assertThat(effect).isGreaterThan(0.5);
    double[][] more = covariance(unknown);
    double[][] less = covariance(meanThere);
    for (int i = 0; i < 4; i++) {
      for (int j = 0; j < 4; j++) {
        boolean inCommon = i > 0 && j > 0 && (i == 3) == (j == 3);
        assertThat(more[i][j] - less[i][j])
            .as("%d %d", i, j)
            .isCloseTo(inCommon ? effect * effect : 0, within(1e-9));
      }
    }
  }

  @Test
  void theMeanOfAnAreaWithoutValuesIsKnownLess() {
    Observations unknown = with(new East(x -> x > LAST_KNOWN_M ? Double.NaN : x));
    Kriging kriging = new Kriging(Solved.of(unknown, MODEL));
    AreaMoments.Moments moments =
        new AreaMoments(Scale.NATURAL)
            .under(
                kriging,
                unknown,
                List.of(
                    List.of(target("a", 300), target("a", 500)),
                    List.of(target("a", 950), target("a", 1100))));
    double effect = kriging.solved().solution().sharedEffects()[0];
    assertThat(moments.covariance()[1][1]).isGreaterThan(effect * effect);
    assertThat(moments.covariance()[0][0]).isLessThan(effect * effect / 2);
  }
}
