package fieldsalt.basis.depth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.basis.Basis;
import fieldsalt.basis.Samples;
import fieldsalt.basis.setting.BasisOptions;
import fieldsalt.basis.setting.BasisSettings;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.read.sample.Sample;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Layers of one profile set against each other; the numbers are worked out here by hand. */
class ProfileDoubtsTest {
  private static Sample layer(String id, int row, double top, double ece) {
    return Samples.sample().id(id).row(row).depth(top, top + 30).paste(ece).get();
  }

  private static List<Sample> profile(String id, double... ece) {
    List<Sample> layers = new ArrayList<>();
    for (int k = 0; k < ece.length; k++) {
      layers.add(layer(id, 10 + k, 30 * k, ece[k]));
    }
    return layers;
  }

  private static SiteReadings readings(List<Sample> samples, String... confirmed) {
    BasisOptions options = BasisOptions.defaults().withConfirmed(Set.of(confirmed));
    return Basis.of(samples, BasisSettings.defaults().withOptions(options))
        .rootZone(field -> new RootZone(90, Uptake.UNIFORM))
        .readings();
  }

  private static List<Finding> doubtful(SiteReadings readings) {
    return readings.findings().stream().filter(f -> f.code() == Code.DOUBTFUL_LAYER).toList();
  }

  /** 6, 63, 6: between its neighbours 6 is expected; ten times that counts half. */
  @Test
  void aSlipBetweenTwoLayers() {
    SiteReadings read = readings(profile("A", 6, 63, 6));
    assertThat(doubtful(read))
        .singleElement()
        .satisfies(
            f -> {
              assertThat(f.found()).contains("30-60 cm", "ECe 63.0 dS/m", "suggests 6.00");
              assertThat(f.where()).contains("row 11");
            });
    double middle = Math.exp((Math.log(63) + Math.log(6)) / 2);
    double half = Math.log(63.0 / 6) / 2;
    SiteReadings.Row row = read.rows().get(0);
    assertThat(row.value()).isCloseTo(Math.log((6 + middle + 6) / 3), within(1e-9));
    double share = middle / (12 + middle);
    assertThat(row.ownVariance()).isGreaterThan(share * share * half * half);
  }

  @Test
  void layersThatRiseWithDepthAreNoSlip() {
    assertThat(doubtful(readings(profile("A", 2, 5, 11)))).isEmpty();
    assertThat(doubtful(readings(profile("A", 12, 7, 3)))).isEmpty();
    assertThat(doubtful(readings(profile("A", 1.5, 6, 14)))).isEmpty();
  }

  /** By the row or by the sample a person ends the doubt: the mean is the plain one. */
  @Test
  void aConfirmedLayerCountsAsItWasRead() {
    for (String word : List.of("A", "11")) {
      SiteReadings read = readings(profile("A", 6, 63, 6), word);
      assertThat(doubtful(read)).isEmpty();
      assertThat(read.rows().get(0).value()).isCloseTo(Math.log(25), within(1e-9));
    }
  }

  /** The lowest layer has one neighbour only: five profiles tell how it usually differs. */
  @Test
  void aSlipAtTheEndOfAProfileIsSeenWhereOthersTellTheShape() {
    List<Sample> samples = new ArrayList<>(profile("A", 2, 3, 45));
    assertThat(doubtful(readings(samples))).isEmpty();
    for (int p = 0; p < 6; p++) {
      samples.addAll(profile("P" + p, 2 + 0.1 * p, 3 + 0.2 * p, 4.5 + 0.1 * p));
    }
    assertThat(doubtful(readings(samples)))
        .singleElement()
        .satisfies(f -> assertThat(f.found()).contains("60-90 cm", "ECe 45.0 dS/m"));
  }

  /** A second method that has the same jump believes it; one that has none does not. */
  @Test
  void anotherMethodSaysWhetherALayerIsRight() {
    List<Sample> believed = new ArrayList<>(profile("A", 3, 12, 3));
    List<Sample> doubted = new ArrayList<>(profile("A", 3, 12, 3));
    for (int k = 0; k < 3; k++) {
      double ec = k == 1 ? 2.0 : 0.5;
      believed.add(Samples.sample().id("A").row(20 + k).depth(30 * k, 30 * k + 30).ec(ec).get());
      doubted.add(Samples.sample().id("A").row(20 + k).depth(30 * k, 30 * k + 30).ec(0.5).get());
    }
    assertThat(doubtful(readings(believed))).isEmpty();
    assertThat(doubtful(readings(doubted)))
        .singleElement()
        .satisfies(f -> assertThat(f.found()).contains("by paste: ECe 12.0 dS/m"));
  }
}
