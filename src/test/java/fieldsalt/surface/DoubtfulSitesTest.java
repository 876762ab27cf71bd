package fieldsalt.surface;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.geo.PlaceM;
import fieldsalt.surface.choice.Candidates;
import fieldsalt.surface.choice.Tried;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.fit.Doubts;
import fieldsalt.surface.fit.Mixture;
import fieldsalt.surface.fit.Modelled;
import fieldsalt.surface.map.MapMaker;
import fieldsalt.surface.site.Observations;
import fieldsalt.surface.site.Points;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.logging.Logger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Doubtful readings on simulated fields of 800 m x 500 m with a known truth: exponential ln ECe
 * (partial sill 0.36, 200 m, micro-scale 0.02), reading error 0.12, sites in a stratified layout;
 * every figure beside plain kriging of the same readings. The limits are those of an independent
 * simulation of the same setting (own simulation, no published source).
 */
class DoubtfulSitesTest {
  private static final CovarianceModel TRUE = new CovarianceModel(new Exponential(200), 0.36, 0.02);
  private static final double ERROR_SD = 0.12;
  private static final int ACROSS = 20;
  private static final int UP = 12;

  /** A field: where it is known, what is true there, and its sites' readings. */
  private record Case(List<PlaceM> cells, double[] truth, List<PlaceM> sites, double[] z) {
    static Case simulated(int n, long seed) {
      Random random = new Random(seed);
      List<PlaceM> at = new ArrayList<>();
      for (int c = 0; c < ACROSS * UP; c++) {
        at.add(
            new PlaceM(
                20 + 40.0 * (c % ACROSS), 500 / 24.0 + Math.floorDiv(c, ACROSS) * 500.0 / UP));
      }
      int columns = (int) Math.round(Math.sqrt(n * 1.6));
      int rows = (n + columns - 1) / columns;
      List<Integer> strata = new ArrayList<>(IntStream.range(0, columns * rows).boxed().toList());
      java.util.Collections.shuffle(strata, random);
      for (int s = 0; s < n; s++) {
        double x = (strata.get(s) % columns + random.nextDouble()) * 800 / columns;
        double y = (Math.floorDiv(strata.get(s), columns) + random.nextDouble()) * 500 / rows;
        at.add(new PlaceM(x, y));
      }
      double[] z = gaussian(at, random);
      int cells = ACROSS * UP;
      double[] read = new double[n];
      for (int s = 0; s < n; s++) {
        double micro = Math.sqrt(TRUE.microScale()) * random.nextGaussian();
        read[s] = z[cells + s] + micro + ERROR_SD * random.nextGaussian();
      }
      return new Case(
          at.subList(0, cells), Arrays.copyOf(z, cells), at.subList(cells, at.size()), read);
    }

    private static double[] gaussian(List<PlaceM> at, Random random) {
      int n = at.size();
      double[][] c = new double[n][n];
      for (int i = 0; i < n; i++) {
        for (int j = 0; j < n; j++) {
          double h = Math.hypot(at.get(i).xM() - at.get(j).xM(), at.get(i).yM() - at.get(j).yM());
          c[i][j] = 0.36 * Math.exp(-h / 200) + (i == j ? 1e-9 : 0);
        }
      }
      double[] scores = IntStream.range(0, n).mapToDouble(i -> random.nextGaussian()).toArray();
      double[] z = fieldsalt.gaussian.Cholesky.factor(c).correlate(scores);
      return Arrays.stream(z).map(v -> v + 1.2).toArray();
    }

    /** Multiplies or divides some readings by 5, or one by 10. */
    Set<Integer> spoil(double share, boolean oneByTen, Random random) {
      Set<Integer> bad = new TreeSet<>();
      int count = oneByTen ? 1 : (int) Math.round(share * z.length);
      while (bad.size() < count) {
        bad.add(random.nextInt(z.length));
      }
      for (int s : bad) {
        z[s] += oneByTen ? Math.log(10) : (random.nextBoolean() ? 1 : -1) * Math.log(5);
      }
      return bad;
    }

    SiteReadings readings() {
      List<SiteReadings.Site> at = new ArrayList<>();
      List<SiteReadings.Row> rows = new ArrayList<>();
      for (int s = 0; s < z.length; s++) {
        at.add(SurfaceCases.site("s" + (1000 + s), "a", sites.get(s).xM(), sites.get(s).yM()));
        rows.add(SurfaceCases.paste(s, z[s], ERROR_SD * ERROR_SD));
      }
      return SurfaceCases.readings(Scale.LOG, at, rows);
    }
  }

  /** Squared error, interval score (90 %) and share inside, over the cells of a field. */
  private record Score(double square, double interval, double inside) {
    static Score of(Modelled modelled, Case field) {
      Tried kriging = Candidates.withoutDrift(modelled).get(1);
      Points points = Points.of(modelled.likelihood().data(), 0, field.cells());
      Mixture[] known = MapMaker.mixtures(kriging, points);
      double square = 0;
      double interval = 0;
      double inside = 0;
      for (int i = 0; i < known.length; i++) {
        double truth = field.truth()[i];
        double median = known[i].quantile(0.5);
        double low = known[i].quantile(0.05);
        double high = known[i].quantile(0.95);
        square += (median - truth) * (median - truth) / known.length;
        interval +=
            (high - low + 20 * Math.max(0, low - truth) + 20 * Math.max(0, truth - high))
                / known.length;
        inside += truth >= low && truth <= high ? 1.0 / known.length : 0;
      }
      return new Score(square, interval, inside);
    }
  }

  /** Figures over many fields: ratios to plain, share found, false per 100 good, coverage. */
  private record Outcome(
      double rmse, double interval, double found, double falsePer100, double coverage) {}

  private static Outcome simulate(int n, int fields, double share, boolean oneByTen) {
    double[][] sums =
        IntStream.range(0, fields)
            .parallel()
            .mapToObj(f -> one(n, f, share, oneByTen))
            .toArray(double[][]::new);
    double[] sum = new double[9];
    for (double[] each : sums) {
      for (int k = 0; k < sum.length; k++) {
        sum[k] += each[k];
      }
    }
    Outcome outcome =
        new Outcome(
            sum[0] / sum[1],
            sum[2] / sum[3],
            sum[5] > 0 ? sum[4] / sum[5] : 1,
            100 * sum[6] / sum[7],
            sum[8] / fields);
    Logger.getLogger(DoubtfulSitesTest.class.getName())
        .info(
            () ->
                String.format(
                    Locale.ROOT,
                    "n %d, %d fields, share %.2f%s: %s",
                    n,
                    fields,
                    share,
                    oneByTen ? ", one by ten" : "",
                    outcome));
    return outcome;
  }

  private static double[] one(int n, long seed, double share, boolean oneByTen) {
    Case field = Case.simulated(n, 7000 + seed);
    Set<Integer> bad = field.spoil(share, oneByTen, new Random(99 + seed));
    Observations data = Observations.of(field.readings(), List.of());
    Modelled plain = Modelled.of(data);
    Doubts.Result doubts = Doubts.of(plain, new double[] {800 * 500}, Set.of());
    Score was = Score.of(plain, field);
    Score is = Score.of(doubts.modelled(), field);
    int found = 0;
    int wrong = 0;
    for (Doubts.Site site : doubts.sites()) {
      int s =
          Integer.parseInt(data.parts().get(0).sites().get(site.site()).id().substring(1)) - 1000;
      found += bad.contains(s) ? 1 : 0;
      wrong += bad.contains(s) ? 0 : 1;
    }
    return new double[] {
      Math.sqrt(is.square()),
      Math.sqrt(was.square()),
      is.interval(),
      was.interval(),
      found,
      bad.size(),
      wrong,
      n - bad.size(),
      is.inside()
    };
  }

  /** Small: two standard errors wider than the limits of 200 fields below. */
  @ParameterizedTest
  @CsvSource({"45, 0, 1.02, 1.03, 0", "45, 0.05, 0.99, 0.95, 0.45", "45, -1, 0.97, 0.92, 0.8"})
  void aBadReadingIsSurvived(int n, double share, double rmse, double interval, double found) {
    Outcome outcome = simulate(n, 24, Math.max(0, share), share < 0);
    assertThat(outcome.rmse()).isLessThanOrEqualTo(rmse);
    assertThat(outcome.interval()).isLessThanOrEqualTo(interval);
    assertThat(outcome.found()).isGreaterThanOrEqualTo(found);
    assertThat(outcome.falsePer100()).isLessThanOrEqualTo(1.2);
    assertThat(outcome.coverage()).isBetween(0.85, 0.97);
  }

  @Tag("whole")
  @ParameterizedTest
  @CsvSource({
    "20, 0, 1.01, 1.01, 0",
    "45, 0, 1.01, 1.01, 0",
    "100, 0, 1.01, 1.01, 0",
    "20, 0.05, 0.98, 0.92, 0.43",
    "45, 0.05, 0.955, 0.88, 0.62",
    "100, 0.05, 0.94, 0.82, 0.82",
    "20, 0.10, 0.98, 1, 0.30",
    "45, 0.10, 0.965, 1, 0.38",
    "100, 0.10, 0.955, 1, 0.67",
    "20, -1, 0.94, 1, 0.80",
    "45, -1, 0.94, 1, 0.94",
    "100, -1, 0.96, 1, 0.98"
  })
  void overTwoHundredFields(int n, double share, double rmse, double interval, double found) {
    Outcome outcome = simulate(n, 200, Math.max(0, share), share < 0);
    assertThat(outcome.rmse()).isLessThanOrEqualTo(rmse);
    assertThat(outcome.interval()).isLessThanOrEqualTo(interval);
    assertThat(outcome.found()).isGreaterThanOrEqualTo(found);
    assertThat(outcome.falsePer100()).isLessThanOrEqualTo(0.6);
    assertThat(outcome.coverage()).isBetween(0.88, 0.95);
  }
}
