package fieldsalt.surface.area;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.geo.PlaceM;
import fieldsalt.surface.RanchCase;
import fieldsalt.surface.SurfaceCases;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.kernel.Kriging;
import fieldsalt.surface.site.Observations;
import fieldsalt.surface.site.Target;
import fieldsalt.zones.field.ZonePoints;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Geometry;

/**
 * How much the error of a zone's mean, and of the mean of all zones together, depends on the number
 * of points that stand for a zone. The reference has all pairs of 1,000 points a zone.
 */
class AreaPointsTest {
  private static final CovarianceModel MODEL =
      new CovarianceModel(new Exponential(192), 0.336, 0.116);
  private Predictor predictor;
  private AreaMoments moments;
  private List<Geometry> zones;

  @BeforeEach
  void ranch() {
    RanchCase ranch = RanchCase.simulated(new RanchCase.Plan(2, 30, 8, 1000, MODEL, 0.15, 6, 3), 5);
    Observations data = Observations.of(ranch.readings(), List.of());
    predictor = new Kriging(Solved.of(data, MODEL));
    moments = new AreaMoments(ranch.readings().scale());
    zones =
        List.of(
            SurfaceCases.polygon("z", 0, 0, 600, 0, 600, 200, 250, 200, 250, 500, 0, 500, 0, 0)
                .shapeM(),
            SurfaceCases.polygon(
                    "z", 600, 0, 1000, 0, 1000, 500, 250, 500, 250, 200, 600, 200, 600, 0)
                .shapeM(),
            SurfaceCases.rectangle("z", 1500, 0, 2500, 60).shapeM(),
            SurfaceCases.rectangle("z", 1500, 60, 2500, 500).shapeM());
  }

  private List<List<Target>> areas(int points) {
    List<List<Target>> areas = new ArrayList<>();
    for (int z = 0; z < zones.size(); z++) {
      String field = z < 2 ? "field 0" : "field 1";
      List<PlaceM> places = ZonePoints.spread(zones.get(z), points);
      areas.add(places.stream().map(p -> new Target(field, p)).toList());
    }
    return areas;
  }

  /** Means, their errors, covariances between zones, the error of the mean of all four. */
  private record Figures(double[] mean, double[] error, double[][] covariance, double ranchError) {}

  private Figures figures(int points) {
    AreaMoments.Moments m = moments.under(predictor, predictor.solved().data(), areas(points));
    return figures(m.mean(), m.covariance());
  }

  private Figures figures(double[] mean, double[][] covariance) {
    double[] error = new double[mean.length];
    double all = 0;
    double area = zones.stream().mapToDouble(Geometry::getArea).sum();
    for (int a = 0; a < mean.length; a++) {
      error[a] = Math.sqrt(covariance[a][a]);
      for (int b = 0; b < mean.length; b++) {
        all += covariance[a][b] * (zones.get(a).getArea() / area) * (zones.get(b).getArea() / area);
      }
    }
    return new Figures(mean, error, covariance, Math.sqrt(all));
  }

  /** Every pair of many points, written out. */
  private Figures reference(int points) {
    List<Target> all = new ArrayList<>();
    List<Integer> zoneOf = new ArrayList<>();
    List<List<Target>> areas = areas(points);
    for (int z = 0; z < areas.size(); z++) {
      all.addAll(areas.get(z));
      zoneOf.addAll(java.util.Collections.nCopies(areas.get(z).size(), z));
    }
    TargetGroups.Joined joined = TargetGroups.of(predictor.solved().data(), all).predict(predictor);
    double[] z = joined.mean();
    double[][] p = joined.covariance(joined);
    double[] mean = new double[areas.size()];
    double[][] covariance = new double[mean.length][mean.length];
    double[] e = new double[z.length];
    for (int i = 0; i < z.length; i++) {
      e[i] = Math.exp(z[i] + (p[i][i] + MODEL.microScale()) / 2);
      mean[zoneOf.get(i)] += e[i] / areas.get(zoneOf.get(i)).size();
    }
    for (int i = 0; i < z.length; i++) {
      for (int j = 0; j < z.length; j++) {
        double pij = p[i][j] + (i == j ? MODEL.microScale() : 0);
        covariance[zoneOf.get(i)][zoneOf.get(j)] +=
            e[i]
                * e[j]
                * Math.expm1(pij)
                / areas.get(zoneOf.get(i)).size()
                / areas.get(zoneOf.get(j)).size();
      }
    }
    return figures(mean, covariance);
  }

  /**
   * Of single points' variance a share of one part in the number of points stays in the error, so
   * that few points make it too wide, never too narrow by more than a hundredth.
   *
   * @param error most that an error may be too wide, as a share
   */
  @ParameterizedTest
  @CsvSource({"60, 0.15, 0.02", "128, 0.07, 0.02", "256, 0.04, 0.02", "300, 0.03, 0.02"})
  void fewPointsMakeTheErrorTooWide(int points, double error, double mean) {
    Figures many = reference(1000);
    Figures some = figures(points);
    for (int a = 0; a < zones.size(); a++) {
      assertThat(some.mean[a] / many.mean[a]).isCloseTo(1, within(mean));
      assertThat(some.error[a] / many.error[a]).isBetween(0.99, 1 + error);
    }
    assertThat(some.ranchError / many.ranchError).isBetween(0.99, 1 + error);
  }

  /** Covariances between areas come from the same points as the areas' own. */
  @Test
  void covariancesAreThoseOfAllPairs() {
    Figures one = figures(100);
    Figures other = reference(100);
    for (int a = 0; a < zones.size(); a++) {
      assertThat(one.mean[a]).isCloseTo(other.mean[a], within(1e-12));
      for (int b = 0; b < zones.size(); b++) {
        assertThat(one.covariance[a][b]).isCloseTo(other.covariance[a][b], within(1e-12));
      }
    }
  }
}
