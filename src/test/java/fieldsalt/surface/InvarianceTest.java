package fieldsalt.surface;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.geo.PlaceM;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.area.JointMeans;
import fieldsalt.surface.choice.SurfaceSettings;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.map.PointDistribution;
import fieldsalt.surface.site.Target;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What must not matter does not: the order of the samples, a sample written as two rows of twice
 * the own variance, and where on earth the ranch lies. Medians, errors, chances, joint moments and
 * means of areas are compared as doubles, to 1e-8 of their size. 25 sites a field are averaged over
 * variograms, 60 are not.
 */
class InvarianceTest {
  private static final double TOLERANCE = 1e-8;
  private static final CovarianceModel TRUE_MODEL =
      new CovarianceModel(new Exponential(250), 0.45, 0.05);

  private static RanchCase ranch(int sites) {
    return RanchCase.simulated(new RanchCase.Plan(2, sites, 50, 1000, TRUE_MODEL, 0.2, 4, 4), 11);
  }

  /** Everything that is asked of a surface, in one list. */
  private static double[] answers(
      SiteReadings readings, List<FieldBoundary> fields, List<List<Target>> areas) {
    Surface surface = SurfaceFitter.fit(readings, fields, SurfaceSettings.defaults());
    List<Double> answers = new ArrayList<>();
    for (List<Target> area : areas) {
      for (Target target : area) {
        PointDistribution p = surface.at(target);
        Collections.addAll(
            answers,
            p.median(),
            p.mean(),
            p.error(),
            p.chanceAbove(3),
            p.quantile(0.05),
            p.quantile(0.95));
      }
    }
    List<Target> some = areas.get(0).subList(0, 20);
    Surface.Marginals marginals = surface.marginals(some);
    JointMeans joint = surface.areaMeans(some.stream().map(List::of).toList());
    for (int i = 0; i < 20; i++) {
      answers.add(marginals.mean()[i]);
      answers.add(marginals.sd()[i]);
      for (int j = 0; j < 20; j++) {
        answers.add(joint.covariance()[i][j] / (joint.mean()[i] * joint.mean()[j]));
      }
    }
    JointMeans means = surface.areaMeans(areas);
    for (int a = 0; a < areas.size(); a++) {
      Collections.addAll(
          answers,
          means.mean()[a],
          means.low()[a],
          means.high()[a],
          means.covariance()[a][0],
          means.covariance()[a][1]);
    }
    return answers.stream().mapToDouble(d -> d).toArray();
  }

  private static List<List<Target>> areas(RanchCase ranch) {
    return List.of(ranch.targets(0), ranch.targets(1));
  }

  private static void same(double[] expected, double[] found) {
    assertThat(found).hasSameSizeAs(expected).hasSizeGreaterThan(900);
    for (int i = 0; i < expected.length; i++) {
      double size = Math.max(Math.abs(expected[i]), 1e-3);
      assertThat(found[i]).as("answer " + i).isCloseTo(expected[i], within(TOLERANCE * size));
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {25, 60})
  void theOrderOfSitesAndRows(int sites) {
    RanchCase ranch = ranch(sites);
    SiteReadings readings = ranch.readings();
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < readings.sites().size(); i++) {
      order.add(i);
    }
    Collections.shuffle(order, new Random(1));
    List<SiteReadings.Row> rows = new ArrayList<>();
    for (SiteReadings.Row r : readings.rows()) {
      rows.add(SurfaceCases.row(r, order.indexOf(r.site()), r.ownVariance()));
    }
    Collections.shuffle(rows, new Random(2));
    SiteReadings shuffled =
        SurfaceCases.with(
            readings, order.stream().map(i -> readings.sites().get(i)).toList(), rows);
    double[] before = answers(readings, ranch.fields(), areas(ranch));
    assertThat(answers(shuffled, ranch.fields(), areas(ranch))).isEqualTo(before);
  }

  @ParameterizedTest
  @ValueSource(ints = {25, 60})
  void oneSampleAsTwoRowsOfTwiceTheVariance(int sites) {
    RanchCase ranch = ranch(sites);
    List<SiteReadings.Row> split = new ArrayList<>(ranch.readings().rows());
    for (int at : new int[] {2, 9, 30}) {
      SiteReadings.Row first = split.get(at);
      split.set(at, SurfaceCases.row(first, first.site(), 2 * first.ownVariance()));
      split.add(at, SurfaceCases.row(first, first.site(), 2 * first.ownVariance()));
    }
    same(
        answers(ranch.readings(), ranch.fields(), areas(ranch)),
        answers(
            SurfaceCases.with(ranch.readings(), ranch.readings().sites(), split),
            ranch.fields(),
            areas(ranch)));
  }

  @ParameterizedTest
  @ValueSource(ints = {25, 60})
  void whereTheRanchLies(int sites) {
    RanchCase ranch = ranch(sites);
    UnaryOperator<PlaceM> shift = p -> new PlaceM(p.xM() + 1e6, p.yM() + 1e6);
    List<SiteReadings.Site> moved =
        ranch.readings().sites().stream()
            .map(s -> new SiteReadings.Site(s.id(), s.field(), shift.apply(s.place()), s.date()))
            .toList();
    List<FieldBoundary> fields =
        List.of(
            SurfaceCases.rectangle("field 0", 1e6, 1e6, 1e6 + 1000, 1e6 + 500),
            SurfaceCases.rectangle("field 1", 1e6 + 1500, 1e6, 1e6 + 2500, 1e6 + 500));
    List<List<Target>> areas =
        areas(ranch).stream()
            .map(
                area ->
                    area.stream().map(t -> new Target(t.field(), shift.apply(t.place()))).toList())
            .toList();
    same(
        answers(ranch.readings(), ranch.fields(), areas(ranch)),
        answers(
            SurfaceCases.with(ranch.readings(), moved, ranch.readings().rows()), fields, areas));
  }

  /** More sites than are solved whole: order, split and shift at once. */
  @Test
  void manySites() {
    Random random = new Random(7);
    List<SiteReadings.Site> sites = new ArrayList<>();
    List<SiteReadings.Site> moved = new ArrayList<>();
    List<SiteReadings.Row> rows = new ArrayList<>();
    List<SiteReadings.Row> split = new ArrayList<>();
    for (int i = 0; i < 1100; i++) {
      double x = 1000 * random.nextDouble();
      double y = 600 * random.nextDouble();
      double z = 1 + 0.6 * Math.sin(x / 90) * Math.cos(y / 70) + 0.3 * random.nextGaussian();
      sites.add(SurfaceCases.site("s%04d".formatted(i), "one", x, y));
      moved.add(SurfaceCases.site("s%04d".formatted(i), "one", x + 1e6, y + 1e6));
      SiteReadings.Row row =
          i % 5 == 0 ? SurfaceCases.paste(i, z, 0.01) : SurfaceCases.cheap(i, z, 0.06, 0);
      rows.add(row);
      split.add(i % 90 == 0 ? SurfaceCases.row(row, i, 2 * row.ownVariance()) : row);
      if (i % 90 == 0) {
        split.add(SurfaceCases.row(row, i, 2 * row.ownVariance()));
      }
    }
    Collections.shuffle(split, random);
    List<List<Target>> here = manyAreas(0);
    double[] before =
        answers(
            SurfaceCases.readings(Scale.LOG, sites, rows, 0.03),
            List.of(SurfaceCases.rectangle("one", 0, 0, 1000, 600)),
            here);
    double[] after =
        answers(
            SurfaceCases.readings(Scale.LOG, moved, split, 0.03),
            List.of(SurfaceCases.rectangle("one", 1e6, 1e6, 1e6 + 1000, 1e6 + 600)),
            manyAreas(1e6));
    same(before, after);
  }

  private static List<List<Target>> manyAreas(double by) {
    List<List<Target>> areas = List.of(new ArrayList<>(), new ArrayList<>());
    for (int i = 0; i < 80; i++) {
      PlaceM place = new PlaceM(by + 31 + 99 * (i % 10), by + 23 + 71 * (i / 10));
      areas.get(i / 40).add(new Target("one", place));
    }
    return areas;
  }
}
