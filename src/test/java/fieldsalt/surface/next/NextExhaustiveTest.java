package fieldsalt.surface.next;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.geo.PlaceM;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.SurfaceCases;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.kernel.Kriging;
import fieldsalt.surface.site.FieldLattice;
import fieldsalt.surface.site.Observations;
import fieldsalt.surface.site.Target;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The first three picks against the best three of 60 candidates, by exhaustive search over dense
 * covariances worked out here (kriging variances of Matheron's system; picks conditioned on by the
 * multivariate normal's formula), zones weighted by their hectares.
 */
class NextExhaustiveTest {
  private static final FieldBoundary FIELD = SurfaceCases.rectangle("a", 0, 0, 600, 400);

  /** Zones of very different size: a strip, a corner and the rest. */
  private static final double[][] BOXES = {
    {0, 0, 120, 400}, {120, 0, 300, 120}, {300, 0, 600, 120}, {120, 120, 600, 400}
  };

  /** One invented field with its sites. */
  private static final class Case {
    private final Random random;
    private final CovarianceModel model;
    private final List<PlaceM> sites = new ArrayList<>();
    private final List<PlaceM> candidates = FieldLattice.of(FIELD, 60);
    private final List<List<Target>> zones = new ArrayList<>();
    private final List<Double> hectares = new ArrayList<>();

    Case(int seed) {
      random = new Random(seed);
      model =
          new CovarianceModel(
              new Exponential(60 + 240 * random.nextDouble()), 0.4, 0.2 * random.nextDouble());
      int n = 8 + random.nextInt(12);
      double wide = seed % 3 == 0 ? 200 : 600;
      for (int i = 0; i < n; i++) {
        sites.add(new PlaceM(wide * random.nextDouble(), 400 * random.nextDouble()));
      }
      for (double[] box : BOXES) {
        List<Target> points = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
          double x = box[0] + (box[2] - box[0]) * (i % 8 + 0.5) / 8;
          double y = box[1] + (box[3] - box[1]) * (Math.floor(i / 8.0) + 0.5) / 5;
          points.add(new Target("a", new PlaceM(x, y)));
        }
        zones.add(points);
        hectares.add((box[2] - box[0]) * (box[3] - box[1]) / 1e4);
      }
    }

    private Proposals picks() {
      List<SiteReadings.Site> at = new ArrayList<>();
      List<SiteReadings.Row> rows = new ArrayList<>();
      for (int s = 0; s < sites.size(); s++) {
        at.add(SurfaceCases.site("s" + (100 + s), "a", sites.get(s).xM(), sites.get(s).yM()));
        rows.add(SurfaceCases.paste(s, random.nextGaussian(), 0.01));
      }
      Observations data = Observations.of(SurfaceCases.readings(Scale.LOG, at, rows), List.of());
      return new NextSearch(new Kriging(Solved.of(data, model)), 60)
          .best(List.of(FIELD), zones, hectares, 3);
    }

    private double covariance(PlaceM a, PlaceM b) {
      return model.covariance(a.distanceM(b));
    }

    /**
     * Covariance of zones' means and candidates' values given the sites, the field's mean unknown:
     * the flat prior is a variance that is very large against all others.
     */
    private double[][] given() {
      List<PlaceM> all = new ArrayList<>();
      zones.forEach(z -> z.forEach(t -> all.add(t.place())));
      all.addAll(candidates);
      all.addAll(sites);
      int n = all.size();
      int points = 40 * zones.size();
      int known = n - sites.size();
      double[][] c = new double[n][n];
      for (int i = 0; i < n; i++) {
        for (int j = 0; j < n; j++) {
          c[i][j] = covariance(all.get(i), all.get(j)) + 1e4;
        }
        c[i][i] += i >= points ? model.microScale() : 0;
      }
      for (int s = known; s < n; s++) {
        observe(c, s, 0.01);
      }
      int z = zones.size();
      double[][] joint = new double[z + candidates.size()][z + candidates.size()];
      for (int i = 0; i < known; i++) {
        for (int j = 0; j < known; j++) {
          int a = i < points ? i / 40 : z + i - points;
          int b = j < points ? j / 40 : z + j - points;
          joint[a][b] += c[i][j] / (i < points ? 40 : 1) / (j < points ? 40 : 1);
        }
      }
      return joint;
    }

    private static void observe(double[][] c, int at, double noise) {
      double[] column = new double[c.length];
      double t = c[at][at] + noise;
      for (int i = 0; i < c.length; i++) {
        column[i] = c[i][at];
      }
      for (int i = 0; i < c.length; i++) {
        for (int j = 0; j < c.length; j++) {
          c[i][j] -= column[i] * column[j] / t;
        }
      }
    }

    /** Fall of the weighted zone variances by a set of candidates. */
    private double fall(double[][] joint, int... set) {
      int z = zones.size();
      int[] kept =
          IntStream.concat(IntStream.range(0, z), IntStream.of(set).map(i -> z + i)).toArray();
      double[][] c = new double[kept.length][kept.length];
      for (int i = 0; i < kept.length; i++) {
        for (int j = 0; j < kept.length; j++) {
          c[i][j] = joint[kept[i]][kept[j]];
        }
      }
      double before = weighted(c);
      for (int i = z; i < kept.length; i++) {
        observe(c, i, NOISE);
      }
      return before - weighted(c);
    }

    /** Of a paste reading: its own and, no laboratory being known, its shared error. */
    private static final double NOISE = 0.01;

    private double weighted(double[][] c) {
      double sum = 0;
      for (int i = 0; i < zones.size(); i++) {
        sum += hectares.get(i) * c[i][i];
      }
      return sum;
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void theFirstThreeAreNearlyTheBestThree(int seed) {
    Case own = new Case(seed);
    assertThat(own.candidates).hasSizeBetween(50, 70);
    double[][] joint = own.given();
    double best = 0;
    int n = own.candidates.size();
    for (int i = 0; i < n; i++) {
      for (int j = i + 1; j < n; j++) {
        for (int k = j + 1; k < n; k++) {
          best = Math.max(best, own.fall(joint, i, j, k));
        }
      }
    }
    Proposals picks = own.picks();
    int[] picked =
        picks.best().stream()
            .filter(p -> p.kind() == Proposal.Kind.NEW_SITE)
            .mapToInt(p -> nearest(own.candidates, p.place()))
            .toArray();
    assertThat(picked).hasSize(3);
    assertThat(own.fall(joint, picked)).isGreaterThan(0.95 * best);
  }

  private static int nearest(List<PlaceM> places, PlaceM place) {
    return IntStream.range(0, places.size())
        .boxed()
        .min(Comparator.comparingDouble(i -> places.get(i).distanceM(place)))
        .orElseThrow();
  }
}
