package fieldsalt.surface.next;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.SurfaceCases;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.kernel.Kriging;
import fieldsalt.surface.site.FieldLattice;
import fieldsalt.surface.site.Observations;
import fieldsalt.surface.site.Points;
import fieldsalt.surface.site.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The search field by field gives what one dense covariance of all zones' points and all readings
 * that could be made gives.
 */
class NextSearchTest {
  private static final CovarianceModel MODEL = new CovarianceModel(new Exponential(150), 0.4, 0.05);
  private static final double OWN = 0.01;
  private static final List<FieldBoundary> FIELDS =
      List.of(
          SurfaceCases.rectangle("a", 0, 0, 400, 300),
          SurfaceCases.rectangle("b", 600, 0, 900, 300),
          SurfaceCases.rectangle("c", 0, 500, 300, 800));
  private static final List<Double> HECTARES = List.of(4.0, 8.0, 9.0, 9.0);

  /** Sites read by two laboratories whose offsets are not known; 3 of them in field c. */
  private static SiteReadings readings(double offset) {
    Random random = new Random(5);
    List<SiteReadings.Site> sites = new ArrayList<>();
    List<SiteReadings.Row> rows = new ArrayList<>();
    for (int f = 0; f < 3; f++) {
      var box = FIELDS.get(f).shapeM().getEnvelopeInternal();
      for (int s = 0; s < (f == 2 ? 3 : 9); s++) {
        double x = box.getMinX() + random.nextDouble() * box.getWidth();
        double y = box.getMinY() + random.nextDouble() * box.getHeight();
        String name = FIELDS.get(f).name();
        sites.add(SurfaceCases.site(name + s, name, x, y));
        boolean second = s % 4 == 3;
        rows.add(
            new SiteReadings.Row(
                sites.size() - 1,
                1 + random.nextGaussian(),
                OWN,
                List.of(new SiteReadings.Loading(second ? 1 : 0, 1)),
                true,
                "paste",
                second ? "B" : "A"));
      }
    }
    return new SiteReadings(
        "ECe",
        "dS/m",
        Scale.LOG,
        sites,
        rows,
        List.of("A", "B"),
        new double[][] {{offset, 0.2 * offset}, {0.2 * offset, offset}},
        List.of());
  }

  private static List<List<Target>> zones() {
    List<List<Target>> zones = new ArrayList<>();
    zones.add(targets("a", 20, 20));
    zones.add(targets("a", 220, 20));
    zones.add(targets("b", 620, 20));
    zones.add(targets("c", 20, 520));
    return zones;
  }

  private static List<Target> targets(String field, double west, double south) {
    List<Target> targets = new ArrayList<>();
    for (int i = 0; i < 30; i++) {
      targets.add(
          new Target(
              field,
              new fieldsalt.geo.PlaceM(west + 30 * (i % 5), south + 40 * Math.floor(i / 5.0))));
    }
    return targets;
  }

  /** One group of points of one field, seen without or with a reading's loadings. */
  private static Predictor.Predicted seen(
      Predictor kriging, Observations data, List<Target> targets, double[] loadings) {
    Points points =
        Points.of(
            data,
            data.indexOf(targets.get(0).field()),
            targets.stream().map(Target::place).toList());
    return kriging.readings(points, loadings);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.04})
  void picksAndGainsAreThoseOfTheDenseCovariance(double offset) {
    Observations data = Observations.of(readings(offset), List.of());
    Kriging kriging = new Kriging(Solved.of(data, MODEL));
    Proposals proposals =
        new NextSearch(kriging, NextSearch.PLACES).best(FIELDS, zones(), HECTARES, 4);

    List<Predictor.Predicted> groups = new ArrayList<>();
    zones().forEach(z -> groups.add(seen(kriging, data, z, new double[data.offsets()])));
    List<Target> places = new ArrayList<>();
    double area = FIELDS.stream().mapToDouble(f -> f.shapeM().getArea()).sum();
    double[] reading = data.standardised(new double[] {1, 0});
    for (FieldBoundary field : FIELDS) {
      int count = (int) Math.max(12, Math.round(150 * field.shapeM().getArea() / area));
      List<Target> own =
          FieldLattice.of(field, count).stream().map(p -> new Target(field.name(), p)).toList();
      groups.add(seen(kriging, data, own, reading));
      places.addAll(own);
    }
    double[][] all = joint(groups);
    double[] weights = HECTARES.stream().mapToDouble(h -> h).toArray();
    for (Proposal proposal : proposals.best()) {
      int best = -1;
      double most = 0;
      for (int p = 0; p < places.size(); p++) {
        double gain = gain(all, 120 + p, weights);
        if (gain > most * (1 + 1e-9)) {
          most = gain;
          best = p;
        }
      }
      assertThat(proposal.kind()).isEqualTo(Proposal.Kind.NEW_SITE);
      assertThat(proposal.gain()).isCloseTo(most, within(1e-8 * most));
      assertThat(proposal.place()).isEqualTo(places.get(best).place());
      observe(all, 120 + best);
      assertThat(proposal.worstZoneErrorAfter()).isCloseTo(worst(all), within(1e-8));
    }
  }

  private static double[][] joint(List<Predictor.Predicted> groups) {
    int n = groups.stream().mapToInt(g -> g.mean().length).sum();
    double[][] all = new double[n][n];
    int row = 0;
    for (Predictor.Predicted g : groups) {
      int column = 0;
      for (Predictor.Predicted h : groups) {
        double[][] c = g.covariance(h);
        for (int i = 0; i < c.length; i++) {
          System.arraycopy(c[i], 0, all[row + i], column, c[i].length);
        }
        column += c[0].length;
      }
      row += g.mean().length;
    }
    return all;
  }

  /** Covariance of a zone's mean (30 points) with an element. */
  private static double withZone(double[][] all, int zone, int element) {
    double sum = 0;
    for (int i = 30 * zone; i < 30 * zone + 30; i++) {
      sum += all[i][element] / 30;
    }
    return sum;
  }

  private static double variance(double[][] all, int element) {
    return all[element][element] + MODEL.microScale() + OWN;
  }

  private static double gain(double[][] all, int element, double[] weights) {
    double sum = 0;
    for (int z = 0; z < 4; z++) {
      sum += weights[z] * Math.pow(withZone(all, z, element), 2);
    }
    return sum / variance(all, element);
  }

  private static void observe(double[][] all, int element) {
    double[] k = all[element].clone();
    double t = variance(all, element);
    for (int i = 0; i < all.length; i++) {
      for (int j = 0; j < all.length; j++) {
        all[i][j] -= k[i] * k[j] / t;
      }
    }
  }

  private static double worst(double[][] all) {
    double worst = 0;
    for (int z = 0; z < 4; z++) {
      double sum = 0;
      for (int i = 30 * z; i < 30 * z + 30; i++) {
        sum += withZone(all, z, i) / 30;
      }
      worst = Math.max(worst, Math.sqrt(sum));
    }
    return worst;
  }
}
