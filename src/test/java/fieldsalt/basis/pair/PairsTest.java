package fieldsalt.basis.pair;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.basis.Basis;
import fieldsalt.basis.Samples;
import fieldsalt.basis.depth.RootZone;
import fieldsalt.basis.depth.Uptake;
import fieldsalt.basis.layer.LayerKey;
import fieldsalt.basis.layer.LayerReading;
import fieldsalt.basis.layer.LayerReadings;
import fieldsalt.basis.layer.Offsets;
import fieldsalt.basis.setting.BasisOptions;
import fieldsalt.basis.setting.BasisSettings;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.gaussian.GaussianState;
import fieldsalt.quantity.Method;
import fieldsalt.quantity.ReadingKind;
import fieldsalt.quantity.Texture;
import fieldsalt.read.sample.Sample;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Factors after pairs. */
class PairsTest {
  private static final BasisSettings SETTINGS = BasisSettings.defaults();

  private static List<Sample> pairs(int count, double ratio, double noise, long seed) {
    Random random = new Random(seed);
    List<Sample> rows = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double ec = Math.exp(-0.8 + 0.9 * random.nextGaussian());
      double paste = 9.5 * ratio * ec * Math.exp(noise * random.nextGaussian());
      rows.add(Samples.sample().id("P" + i).ec(ec).row(2 * i + 2).get());
      rows.add(Samples.sample().id("P" + i).paste(paste).row(2 * i + 3).get());
    }
    return rows;
  }

  private static ConvertedReadings.Group group(List<Sample> rows) {
    return Basis.of(rows, SETTINGS).converted().groups().get(0);
  }

  @Test
  void onePairByHand() {
    // 1:5 on loam: shared 0.22²(1/3)+0.07² and 0.22²/3, own 0.22²/3+0.05²; paste 0.10 and 0.07
    List<Sample> rows =
        List.of(
            Samples.sample().ec(0.5).get(), Samples.sample().paste(0.5 * 9.5 * 1.3).row(3).get());
    double third = 0.22 * 0.22 / 3;
    double shared = 2 * third + 0.0049;
    double total = shared + 0.01 + third + 0.0025 + 0.0049;
    ConvertedReadings.Group g = group(rows);
    assertThat(g.priorFactor()).isCloseTo(9.5, within(1e-12));
    assertThat(g.priorSdLn()).isCloseTo(Math.sqrt(shared), within(1e-12));
    assertThat(Math.log(g.posteriorFactor() / 9.5))
        .isCloseTo(Math.log(1.3) * shared / total, within(1e-12));
    assertThat(g.posteriorSdLn())
        .isCloseTo(Math.sqrt(shared - shared * shared / total), within(1e-12));
    assertThat(g.pairs()).isEqualTo(1);
  }

  /** The oracle: every layer's true value a fixed effect with a flat prior, one full solve. */
  @Test
  void agreesWithTheFullSolveWithFreeSiteEffects() {
    List<Sample> rows = new ArrayList<>(pairs(6, 1.2, 0.15, 3));
    rows.add(
        Samples.sample()
            .id("P2")
            .method(Method.ONE_TO_ONE, ReadingKind.EXTRACT)
            .texture(Texture.LOAM)
            .ec(1.7)
            .row(90)
            .get());
    rows.add(Samples.sample().id("alone").ec(0.7).row(91).get());
    LayerReadings readings = LayerReadings.of(rows, SETTINGS);
    Offsets offsets = new Offsets(readings.measured());
    Map<LayerKey, List<LayerReading>> layers = LayerKey.group(readings.measured());
    FactorPosterior fast = new FactorPosterior(layers, Set.of(), offsets);

    List<LayerKey> keys = List.copyOf(layers.keySet());
    int u = offsets.count();
    int n = u + keys.size();
    double[][] prior = new double[n][n];
    double[][] design = new double[n][keys.size()];
    for (int i = 0; i < u; i++) {
      prior[i][i] = 1;
    }
    for (int i = 0; i < keys.size(); i++) {
      design[u + i][i] = 1;
    }
    GaussianState state = GaussianState.of(new double[n], prior, design);
    for (LayerReading r : readings.measured()) {
      double[] h = java.util.Arrays.copyOf(offsets.loadings(r.shared()), n);
      h[u + keys.indexOf(LayerKey.of(r.sample()))] = 1;
      state = state.observe(h, r.ownVariance(), r.lnEce());
    }
    for (LayerReading r : readings.measured()) {
      double[] h = java.util.Arrays.copyOf(offsets.loadings(r.shared()), n);
      assertThat(fast.mean(r.shared())).isCloseTo(state.mean(h), within(1e-10));
      assertThat(fast.variance(r.shared())).isCloseTo(state.variance(h), within(1e-10));
    }
  }

  @Test
  void pairsPullTheFactorAndNarrowIt() {
    ConvertedReadings.Group none = group(List.of(Samples.sample().get()));
    ConvertedReadings.Group three = group(pairs(3, 1.4, 0.1, 1));
    ConvertedReadings.Group twenty = group(pairs(20, 1.4, 0.1, 1));
    assertThat(none.posteriorFactor()).isCloseTo(9.5, within(1e-9));
    assertThat(three.posteriorSdLn()).isLessThan(none.posteriorSdLn());
    assertThat(twenty.posteriorSdLn()).isLessThan(three.posteriorSdLn());
    assertThat(twenty.posteriorFactor()).isBetween(11.5, 14.0);
    // never below what the paste laboratory's own shared error leaves open
    assertThat(twenty.posteriorSdLn()).isGreaterThan(0.08);
  }

  @Test
  void whatOneMorePairWouldBringIsWhatItBrings() {
    ConvertedReadings.Group three = group(pairs(3, 1.1, 0.1, 4));
    List<Sample> rows = new ArrayList<>(pairs(3, 1.1, 0.1, 4));
    rows.add(Samples.sample().id("new").ec(0.5).row(80).get());
    rows.add(Samples.sample().id("new").paste(5.3).row(81).get());
    assertThat(group(rows).posteriorSdLn()).isCloseTo(three.sdLnAfterOneMore(), within(1e-12));
  }

  @Test
  void anOutlyingPairIsNamedKeptAndCanBeDropped() {
    List<Sample> rows = new ArrayList<>(pairs(8, 1.0, 0.1, 2));
    rows.add(Samples.sample().id("swap").ec(0.5).row(80).get());
    rows.add(Samples.sample().id("swap").paste(0.5 * 9.5 * 3).row(81).get());
    ConvertedReadings kept = Basis.of(rows, SETTINGS).converted();
    assertThat(kept.findings())
        .filteredOn(f -> f.code().id().equals("outlying-pair"))
        .singleElement()
        .satisfies(f -> assertThat(f.where()).contains("site swap"));
    ConvertedReadings dropped =
        Basis.of(rows, SETTINGS.withOptions(BasisOptions.defaults().withDropPairs(Set.of("swap"))))
            .converted();
    assertThat(dropped.findings()).extracting(f -> f.code().id()).doesNotContain("outlying-pair");
    assertThat(dropped.groups().get(0).pairs()).isEqualTo(8);
    assertThat(dropped.groups().get(0).posteriorFactor())
        .isCloseTo(group(pairs(8, 1.0, 0.1, 2)).posteriorFactor(), within(1e-9));
  }

  @Test
  void leaveOneOutMatchesRefitting() {
    List<Sample> rows = pairs(5, 1.2, 0.2, 9);
    ConvertedReadings all = Basis.of(rows, SETTINGS).converted();
    List<Sample> others = rows.stream().filter(s -> !s.id().equals("P3")).toList();
    ConvertedReadings.Group without = group(others);
    ConvertedReadings.Pair third =
        all.pairs().stream().filter(p -> p.id().equals("P3")).findFirst().orElseThrow();
    // the pair's ln(cheap / paste) against what the others predict, in their standard deviations
    LayerReadings r = LayerReadings.of(others, SETTINGS);
    Offsets offsets = new Offsets(r.measured());
    FactorPosterior posterior =
        new FactorPosterior(LayerKey.group(r.measured()), Set.of(), offsets);
    LayerReading cheap =
        r.measured().stream().filter(x -> !x.method().isBasis()).findFirst().orElseThrow();
    LayerReading paste =
        r.measured().stream().filter(x -> x.method().isBasis()).findFirst().orElseThrow();
    double[] a = offsets.loadings(cheap.shared());
    double[] p = offsets.loadings(paste.shared());
    for (int i = 0; i < a.length; i++) {
      a[i] -= p[i];
    }
    double d = Math.log(third.ec() * 9.5 / third.ece()) - posterior.meanOf(a);
    double sd = Math.sqrt(posterior.varianceOf(a) + cheap.ownVariance() + paste.ownVariance());
    assertThat(Math.abs(third.sigmas())).isCloseTo(Math.abs(d / sd), within(1e-9));
    assertThat(without.pairs()).isEqualTo(4);
  }

  @Test
  void theLnLnSlopeComesWithTwelvePairsAndIsFlaggedWhenItIsNotOne() {
    assertThat(Basis.of(pairs(11, 1, 0.1, 5), SETTINGS).converted().slopes()).isEmpty();
    ConvertedReadings straight = Basis.of(pairs(30, 1, 0.15, 5), SETTINGS).converted();
    assertThat(straight.slopes()).hasSize(1);
    assertThat(straight.slopes().get(0).slope()).isBetween(0.85, 1.15);
    assertThat(straight.slopes().get(0).isCurved()).isFalse();
    // texture groups with factors and salinities of their own do not bend it
    List<Sample> two = new ArrayList<>(pairs(14, 1, 0.1, 5));
    for (Sample s : pairs(14, 0.6, 0.1, 6)) {
      double ec = s.ec().orElseThrow().dSPerM() * 3;
      Samples coarse = Samples.sample().id("C" + s.id()).texture(Texture.SANDY_LOAM);
      boolean paste = s.method().orElseThrow() == Method.PASTE;
      two.add((paste ? coarse.paste(ec) : coarse.ec(ec)).row(s.source().row() + 100).get());
    }
    assertThat(Basis.of(two, SETTINGS).converted().slopes().get(0).isCurved()).isFalse();
    // log10 ECe = 1.2562 log10 EC1:5 + 0.7659: Klaustermeier et al. 2016, from memory
    List<Sample> bent = new ArrayList<>();
    Random random = new Random(8);
    for (int i = 0; i < 20; i++) {
      double ec = Math.exp(-1 + 0.9 * random.nextGaussian());
      double paste =
          Math.pow(10, 1.2562 * Math.log10(ec) + 0.7659) * Math.exp(0.08 * random.nextGaussian());
      bent.add(Samples.sample().id("P" + i).ec(ec).row(2 * i).get());
      bent.add(Samples.sample().id("P" + i).paste(paste).row(2 * i + 1).get());
    }
    ConvertedReadings c = Basis.of(bent, SETTINGS).converted();
    assertThat(c.slopes().get(0).slope()).isCloseTo(1.2562, within(0.08));
    assertThat(c.slopes().get(0).isCurved()).isTrue();
    assertThat(c.findings()).extracting(f -> f.code().id()).contains("ln-ln-slope");
  }

  @Test
  void siteReadingsKeepThePublishedFactorWhateverThePairsSay() {
    SiteReadings r =
        Basis.of(pairs(12, 1.5, 0.1, 6), SETTINGS)
            .rootZone(f -> new RootZone(30, Uptake.UNIFORM))
            .readings();
    assertThat(r.rows()).hasSize(24);
    for (SiteReadings.Row row : r.rows()) {
      if (!row.paste()) {
        assertThat(row.loadings()).hasSize(2);
      }
    }
    double meanCheap =
        r.rows().stream()
            .filter(x -> !x.paste())
            .mapToDouble(x -> x.value())
            .average()
            .orElseThrow();
    double meanPaste =
        r.rows().stream()
            .filter(SiteReadings.Row::paste)
            .mapToDouble(x -> x.value())
            .average()
            .orElseThrow();
    assertThat(meanPaste - meanCheap).isCloseTo(Math.log(1.5), within(0.1));
  }

  // Student's t, 95 % point, 6, 10 and 30 degrees of freedom: 1.943, 1.812, 1.697 (any table)
  @Test
  void studentsT() {
    assertThat(StudentT.quantile95(6)).isCloseTo(1.943, within(0.002));
    assertThat(StudentT.quantile95(10)).isCloseTo(1.812, within(0.001));
    assertThat(StudentT.quantile95(30)).isCloseTo(1.697, within(0.001));
  }
}
