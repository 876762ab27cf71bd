package fieldsalt.surface.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.geo.PlaceM;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.site.Observations;
import fieldsalt.surface.site.Points;
import fieldsalt.surface.site.SiteThinning;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LocalKrigingTest {
  private static final CovarianceModel MODEL = new CovarianceModel(new Exponential(150), 0.4, 0.1);

  /** Invented: two fields side by side, every third site read twice, the second time by 1:5. */
  private static SiteReadings readings(int sites, double offsetVariance) {
    Random random = new Random(7);
    List<SiteReadings.Site> places = new ArrayList<>();
    List<SiteReadings.Row> rows = new ArrayList<>();
    for (int i = 0; i < sites; i++) {
      String field = i % 2 == 0 ? "East" : "West";
      PlaceM place =
          new PlaceM(
              500_000 + 400 * random.nextDouble() + (i % 2 == 0 ? 500 : 0),
              4_000_000 + 400 * random.nextDouble());
      places.add(new SiteReadings.Site("%05d".formatted(i), field, place, Optional.empty()));
      double z = Math.sin(place.xM() / 80) + 0.2 * random.nextGaussian();
      boolean paste = i % 5 == 0;
      rows.add(row(i, z + 0.05 * random.nextGaussian(), 0.01, paste));
      if (i % 3 == 0) {
        rows.add(row(i, z + 0.2 + 0.2 * random.nextGaussian(), 0.04, false));
      }
    }
    return new SiteReadings(
        "ECe",
        "dS/m",
        Scale.LOG,
        places,
        rows,
        List.of("A 1:5"),
        new double[][] {{offsetVariance}},
        List.of());
  }

  private static SiteReadings.Row row(int site, double value, double own, boolean paste) {
    List<SiteReadings.Loading> loadings =
        paste ? List.of() : List.of(new SiteReadings.Loading(0, 1));
    return new SiteReadings.Row(site, value, own, loadings, paste, paste ? "paste" : "1:5", "A");
  }

  private static Points points(Observations data, int part) {
    List<PlaceM> places =
        IntStream.range(0, 90)
            .mapToObj(
                i ->
                    new PlaceM(500_050 + 40 * (i % 9) + (1 - part) * 500, 4_000_020 + 35 * (i / 9)))
            .toList();
    return Points.of(data, part, places);
  }

  @Test
  void fromAllSitesWithoutSharedErrorItIsKrigingOfAllRows() {
    Observations data = Observations.of(readings(120, 0), List.of());
    Solved solved = Solved.of(data, MODEL);
    Points points = points(data, 0);
    Predictor.Predicted whole = new Kriging(solved).predict(points);
    Predictor.Predicted local = new LocalKriging(solved, data).predict(points);
    assertThat(local.mean()).containsExactly(whole.mean(), within(1e-9));
    assertThat(local.variance()).containsExactly(whole.variance(), within(1e-9));
    double[][] expected = whole.covariance(whole);
    double[][] covariance = local.covariance(local);
    for (int i = 0; i < expected.length; i++) {
      assertThat(covariance[i]).containsExactly(expected[i], within(1e-9));
    }
  }

  @Test
  void theOffsetsErrorIsInEveryVarianceAndBetweenFields() {
    Observations data = Observations.of(readings(120, 0.09), List.of());
    Solved solved = Solved.of(data, MODEL);
    LocalKriging local = new LocalKriging(solved, data);
    double[][] within = covariance(local, data, 0, 0);
    double[][] between = covariance(local, data, 0, 1);
    Observations known = Observations.of(readings(120, 0), List.of());
    double[][] without = covariance(new LocalKriging(Solved.of(known, MODEL), known), known, 0, 0);
    double offsetVariance = offsetVariance(solved);
    assertThat(offsetVariance).isBetween(1e-4, 0.01);
    for (int i = 0; i < 90; i++) {
      assertThat(within[i][i]).isGreaterThan(without[i][i]);
      // near a place, between none and all of the weight stands on rows that carry the offset
      assertThat(between[i][i]).isBetween(0.0, offsetVariance);
    }
    assertThat(IntStream.range(0, 90).mapToDouble(i -> between[i][i]).average().orElseThrow())
        .as("on average most of the weight does: four rows in five")
        .isBetween(0.3 * offsetVariance, 0.9 * offsetVariance);
  }

  private static double[][] covariance(LocalKriging local, Observations data, int a, int b) {
    return local.predict(points(data, a)).covariance(local.predict(points(data, b)));
  }

  /** After the data; the solver's offsets are standardised by their prior, 0.09. */
  private static double offsetVariance(Solved solved) {
    int k = solved.data().drifts().size();
    return 0.09 * solved.solution().sharedCovariance()[k][k];
  }

  @Test
  void originsAndOrderOfFewerSitesDoNotMatter() {
    SiteReadings all = readings(400, 0.09);
    SiteReadings fewer = SiteThinning.of(all, 75);
    Observations whole = Observations.of(all, List.of());
    Observations some = Observations.of(fewer, List.of());
    Solved solved = Solved.of(some, MODEL);
    Points points = points(some, 1);
    double[] mean = new LocalKriging(solved, whole).predict(points).mean();
    double[] variance = new LocalKriging(solved, whole).predict(points).variance();
    double[] fromSome = new Kriging(solved).predict(points).variance();
    double[] fromAll = new Kriging(Solved.of(whole, MODEL)).predict(points(whole, 1)).mean();
    for (int i = 0; i < 90; i++) {
      assertThat(mean[i]).isCloseTo(fromAll[i], within(0.1));
      assertThat(variance[i]).isLessThan(fromSome[i]);
    }
  }

  @Test
  void thinningKeepsSitesReadTwiceFirstAndASpread() {
    SiteReadings all = readings(1200, 0.09);
    SiteReadings fewer = SiteThinning.of(all, 250);
    List<Integer> kept = fewer.rows().stream().map(SiteReadings.Row::site).distinct().toList();
    assertThat(kept).hasSizeBetween(490, 500);
    long twice = kept.stream().filter(s -> s % 3 == 0 && s % 5 == 0).count();
    assertThat(twice).as("all read by paste and by 1:5").isEqualTo(80);
    for (double west : new double[] {500_000, 500_200, 500_500, 500_700}) {
      for (double south : new double[] {4_000_000, 4_000_200}) {
        assertThat(
                kept.stream()
                    .map(s -> all.sites().get(s).place())
                    .filter(p -> p.xM() >= west && p.xM() < west + 200)
                    .filter(p -> p.yM() >= south && p.yM() < south + 200)
                    .count())
            .isBetween(40L, 90L);
      }
    }
    assertThat(SiteThinning.of(all, 600)).isSameAs(all);
    assertThat(SiteThinning.of(fewer, 10).rows().stream().map(SiteReadings.Row::site).distinct())
        .as("ten a field")
        .hasSize(20);
  }

  /** A small field beside a large one is solved whole, and shares the offset's error with it. */
  @Test
  void onlyLargeFieldsAreLocal() {
    SiteReadings readings = readings(120, 0.09);
    Observations data = Observations.of(readings, List.of());
    Observations large =
        Observations.of(
            readings.withRows(
                readings.rows().stream()
                    .filter(r -> readings.sites().get(r.site()).field().equals("West"))
                    .toList()),
            List.of());
    Solved solved = Solved.of(data, MODEL);
    LocalKriging local = new LocalKriging(solved, large);
    Kriging whole = new Kriging(solved);
    Predictor.Predicted east = local.predict(points(data, 0));
    Predictor.Predicted west = local.predict(points(data, 1));
    assertThat(east.mean()).containsExactly(whole.predict(points(data, 0)).mean());
    double[][] between = east.covariance(west);
    double[][] other = west.covariance(east);
    double[][] exact = whole.predict(points(data, 0)).covariance(whole.predict(points(data, 1)));
    double sum = 0;
    double exactSum = 0;
    for (int i = 0; i < 90; i++) {
      assertThat(other[i][i]).isEqualTo(between[i][i]);
      sum += between[i][i];
      exactSum += exact[i][i];
    }
    assertThat(sum).as("same sign, same size").isBetween(0.8 * exactSum, 1.3 * exactSum);
  }
}
