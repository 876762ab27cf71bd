package fieldsalt.surface.area;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.geo.PlaceM;
import fieldsalt.surface.ChangedSurface;
import fieldsalt.surface.DenseKriging;
import fieldsalt.surface.RanchCase;
import fieldsalt.surface.Surface;
import fieldsalt.surface.SurfaceFitter;
import fieldsalt.surface.choice.SurfaceSettings;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.fit.SurfaceMethod;
import fieldsalt.surface.kernel.Kriging;
import fieldsalt.surface.next.NextSearch;
import fieldsalt.surface.site.FieldLattice;
import fieldsalt.surface.site.Observations;
import fieldsalt.surface.site.Points;
import fieldsalt.surface.site.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Readings of composites beside sites. */
class FieldMeansTest {
  private static final CovarianceModel MODEL =
      new CovarianceModel(new Exponential(192), 0.336, 0.116);
  private static final SurfaceSettings COARSE = SurfaceSettings.defaults().withCellM(25);
  private static final int MANY = 1_000_000_000;

  private static SiteReadings with(SiteReadings r, SiteReadings.FieldMean... means) {
    return new SiteReadings(
        r.property(),
        r.unit(),
        r.scale(),
        r.sites(),
        r.rows(),
        r.offsets(),
        r.offsetCovariance(),
        List.of(means),
        r.findings());
  }

  private static SiteReadings natural(SiteReadings r) {
    return new SiteReadings(
        r.property(),
        r.unit(),
        Scale.NATURAL,
        r.sites(),
        r.rows(),
        r.offsets(),
        r.offsetCovariance(),
        r.findings());
  }

  private static SiteReadings.FieldMean mean(
      String field, double value, double own, int cores, SiteReadings.Loading... loadings) {
    return new SiteReadings.FieldMean("bag", field, value, own, List.of(loadings), cores);
  }

  private static RanchCase ranch(int sites, long seed) {
    return RanchCase.simulated(new RanchCase.Plan(2, sites, 50, 1000, MODEL, 0.25, 2, 2), seed);
  }

  /**
   * All rows and the composite's in one dense system (Cressie 1993, section 3.4.5), its covariance
   * with a place the average over the field's places. What a thousand million cores miss, 1e-9, is
   * not in it.
   */
  private static double[] dense(
      SiteReadings r, SiteReadings.FieldMean area, List<PlaceM> over, Target at) {
    List<SiteReadings.Site> sites = r.sites();
    int n = r.rows().size();
    double[][] system = new double[n + 3][n + 3];
    double[] right = new double[n + 3];
    double[] y = new double[n + 1];
    for (int i = 0; i < n; i++) {
      SiteReadings.Row row = r.rows().get(i);
      SiteReadings.Site a = sites.get(row.site());
      y[i] = row.value();
      for (int j = 0; j < n; j++) {
        SiteReadings.Row other = r.rows().get(j);
        SiteReadings.Site b = sites.get(other.site());
        boolean field = a.field().equals(b.field());
        system[i][j] = field ? MODEL.covariance(a.place().distanceM(b.place())) : 0;
        system[i][j] += row.site() == other.site() ? MODEL.microScale() : 0;
        system[i][j] += shared(r, row.loadings(), other.loadings());
      }
      system[i][i] += row.ownVariance();
      boolean inside = a.field().equals(area.field());
      system[i][n] = inside ? average(a.place(), over) : 0;
      system[i][n] += shared(r, row.loadings(), area.loadings());
      system[n][i] = system[i][n];
      boolean here = a.field().equals(at.field());
      right[i] = here ? MODEL.covariance(a.place().distanceM(at.place())) : 0;
      trend(system, i, n, a.field());
    }
    y[n] = area.value();
    system[n][n] = over.stream().mapToDouble(p -> average(p, over)).average().orElseThrow();
    system[n][n] += area.ownVariance() + shared(r, area.loadings(), area.loadings());
    trend(system, n, n, area.field());
    right[n] = area.field().equals(at.field()) ? average(at.place(), over) : 0;
    right[n + 1 + (at.field().equals("field 0") ? 0 : 1)] = 1;
    double[] solution = DenseKriging.eliminate(system, right.clone());
    double[] out = {0, MODEL.pointVariance()};
    for (int i = 0; i <= n; i++) {
      out[0] += solution[i] * y[i];
    }
    for (int i = 0; i < n + 3; i++) {
      out[1] -= solution[i] * right[i];
    }
    return out;
  }

  private static void trend(double[][] system, int row, int n, String field) {
    int column = n + 1 + (field.equals("field 0") ? 0 : 1);
    system[row][column] = 1;
    system[column][row] = 1;
  }

  private static double average(PlaceM from, List<PlaceM> over) {
    return over.stream()
        .mapToDouble(p -> MODEL.covariance(p.distanceM(from)))
        .average()
        .orElseThrow();
  }

  private static double shared(
      SiteReadings r, List<SiteReadings.Loading> a, List<SiteReadings.Loading> b) {
    double sum = 0;
    for (SiteReadings.Loading one : a) {
      for (SiteReadings.Loading two : b) {
        sum += one.weight() * two.weight() * r.offsetCovariance()[one.offset()][two.offset()];
      }
    }
    return sum;
  }

  @Test
  void aCompositeIsSolvedAsIfItStoodInOneSystemWithTheSites() {
    RanchCase ranch = ranch(12, 3);
    SiteReadings sites = natural(ranch.readings());
    SiteReadings.FieldMean bag = mean("field 0", 1.6, 0.02, MANY, new SiteReadings.Loading(1, 0.8));
    Observations data = Observations.of(sites, List.of());
    Predictor kriging = new Kriging(Solved.of(data, MODEL));
    List<PlaceM> over = FieldLattice.of(ranch.fields().get(0), 64);
    AreaReading area =
        new AreaReading(bag, Points.of(data, 0, over), data.standardised(new double[] {0, 0.8}));
    Predictor informed = new Informed(kriging, List.of(area), Scale.NATURAL);
    for (int field = 0; field < 2; field++) {
      Target at = ranch.targets(field).get(7);
      Predictor.Predicted p = informed.predict(Points.of(data, field, List.of(at.place())));
      double[] expected = dense(sites, bag, over, at);
      assertThat(p.mean()[0]).isCloseTo(expected[0], within(1e-8));
      assertThat(p.variance()[0]).isCloseTo(expected[1], within(1e-8));
      double without = kriging.predict(Points.of(data, field, List.of(at.place()))).variance()[0];
      assertThat(p.variance()[0]).isLessThan(without - 1e-5);
      assertThat(p.covariance(p)[0][0] + MODEL.microScale()).isCloseTo(expected[1], within(1e-8));
    }
  }

  @Test
  void severalCompositesAreTheSameWhateverTheirOrder() {
    RanchCase ranch = ranch(12, 4);
    SiteReadings.FieldMean a = mean("field 0", lnMean(ranch, 0), 0.02, 9);
    SiteReadings.FieldMean b =
        new SiteReadings.FieldMean(
            "other",
            "field 1",
            lnMean(ranch, 1),
            0.03,
            List.of(new SiteReadings.Loading(0, 1)),
            12);
    Surface one = SurfaceFitter.fit(with(ranch.readings(), a, b), ranch.fields(), COARSE);
    Surface two = SurfaceFitter.fit(with(ranch.readings(), b, a), ranch.fields(), COARSE);
    Target at = ranch.targets(1).get(3);
    assertThat(two.at(at).median()).isCloseTo(one.at(at).median(), within(1e-10));
    assertThat(one.report().findings()).noneMatch(f -> f.code().id().startsWith("composite"));
  }

  /** Two readings of one bag share what its cores missed: the second tells less than a new bag. */
  @Test
  void aSecondReadingOfOneBagTellsLessThanAnotherBag() {
    SiteReadings.FieldMean bag = mean("field 0", 1.2, 0.01, 5);
    SiteReadings.FieldMean other =
        new SiteReadings.FieldMean("new bag", "field 0", 1.2, 0.01, List.of(), 5);
    double once = ranchError(List.of(bag));
    double again = ranchError(List.of(bag, bag));
    double another = ranchError(List.of(bag, other));
    assertThat(again).isLessThan(once);
    assertThat(another).isLessThan(again - 1e-4);
  }

  private static double ranchError(List<SiteReadings.FieldMean> bags) {
    RanchCase ranch = ranch(6, 5);
    Observations data = Observations.of(ranch.readings(), List.of());
    List<PlaceM> over = FieldLattice.of(ranch.fields().get(0), 64);
    List<AreaReading> areas =
        bags.stream()
            .map(bag -> new AreaReading(bag, Points.of(data, 0, over), new double[2]))
            .toList();
    Informed informed = new Informed(new Kriging(Solved.of(data, MODEL)), areas, Scale.LOG);
    return new NextSearch(informed, NextSearch.PLACES)
        .best(ranch.fields(), List.of(ranch.targets(0)), List.of(10.0), 1)
        .ranchErrorNow();
  }

  /** A search for the next readings starts from what a composite left unknown. */
  @Test
  void whatToMeasureNextKnowsTheComposites() {
    RanchCase ranch = ranch(6, 5);
    Observations data = Observations.of(ranch.readings(), List.of());
    double without =
        new NextSearch(new Kriging(Solved.of(data, MODEL)), NextSearch.PLACES)
            .best(ranch.fields(), List.of(ranch.targets(0)), List.of(10.0), 1)
            .ranchErrorNow();
    assertThat(ranchError(List.of(mean("field 0", 1.2, 0.01, 20)))).isLessThan(0.95 * without);
  }

  private static double lnMean(RanchCase ranch, int field) {
    double[] z = ranch.truth().get(field);
    return Math.log(java.util.Arrays.stream(z).map(Math::exp).average().orElseThrow());
  }

  @Test
  void whatNoSiteSupportsIsToldAndLeavesTheMapAlone() {
    RanchCase ranch = ranch(12, 6);
    SiteReadings.FieldMean far = mean("field 0", 6, 0.01, 20);
    SiteReadings.FieldMean elsewhere = mean("nowhere", 1, 0.01, 20);
    Surface plain = SurfaceFitter.fit(ranch.readings(), ranch.fields(), COARSE);
    Surface told =
        SurfaceFitter.fit(with(ranch.readings(), far, elsewhere), ranch.fields(), COARSE);
    assertThat(told.report().findings())
        .extracting(f -> f.code().id())
        .contains("composite-apart", "composite-unused");
    assertThat(told.maps(Map.of()).get(0).median()).isEqualTo(plain.maps(Map.of()).get(0).median());
  }

  @Test
  void theFieldMeanAlsoTakesAComposite() {
    RanchCase ranch = ranch(12, 7);
    SurfaceSettings mean = ChangedSurface.withMethod(COARSE, SurfaceMethod.MEAN);
    SiteReadings.FieldMean bag = mean("field 0", 1.6, 0.02, 20);
    Surface plain = SurfaceFitter.fit(ranch.readings(), ranch.fields(), mean);
    Surface told = SurfaceFitter.fit(with(ranch.readings(), bag), ranch.fields(), mean);
    JointMeans before = plain.areaMeans(List.of(ranch.targets(0)));
    JointMeans after = told.areaMeans(List.of(ranch.targets(0)));
    assertThat(after.covariance()[0][0] / Math.pow(after.mean()[0], 2))
        .isLessThan(before.covariance()[0][0] / Math.pow(before.mean()[0], 2));
    double target = Math.exp(1.6);
    assertThat(Math.abs(after.mean()[0] - target)).isLessThan(Math.abs(before.mean()[0] - target));
  }

  /**
   * Simulated fields of few sites with a composite of 20 cores: the mean's error falls, and its 90
   * % interval holds the true mean as often as it says (three binomial errors of the fields).
   */
  @Test
  void compositesLowerTheErrorOfAFieldsMeanAndTheIntervalStaysTrue() {
    int ranches = 30;
    double[] squares = new double[2];
    int inside = 0;
    for (int seed = 1; seed <= ranches; seed++) {
      RanchCase ranch =
          RanchCase.simulated(new RanchCase.Plan(1, 10, 98, 1000, MODEL, 0.2, 2, 2), seed);
      double truth = Math.exp(lnMean(ranch, 0));
      SiteReadings.FieldMean bag = drawn(ranch.truth().get(0), 20, new Random(900 + seed));
      List<List<Target>> whole = List.of(ranch.targets(0));
      JointMeans before =
          SurfaceFitter.fit(ranch.readings(), ranch.fields(), COARSE).areaMeans(whole);
      JointMeans after =
          SurfaceFitter.fit(with(ranch.readings(), bag), ranch.fields(), COARSE).areaMeans(whole);
      squares[0] += Math.pow(Math.log(before.mean()[0] / truth), 2);
      squares[1] += Math.pow(Math.log(after.mean()[0] / truth), 2);
      inside += after.low()[0] < truth && truth < after.high()[0] ? 1 : 0;
    }
    assertThat(Math.sqrt(squares[1] / squares[0])).isLessThan(0.85);
    double band = 3 * Math.sqrt(0.9 * 0.1 / ranches);
    assertThat((double) inside / ranches).isBetween(0.9 - band, 0.9 + band);
  }

  private static SiteReadings.FieldMean drawn(double[] z, int cores, Random random) {
    List<Double> all = new ArrayList<>();
    for (double value : z) {
      all.add(Math.exp(value));
    }
    java.util.Collections.shuffle(all, random);
    double mixed =
        all.subList(0, cores).stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    double error = 0.1 * random.nextGaussian();
    return mean("field 0", Math.log(mixed) + error, 0.01, cores);
  }
}
