package fieldsalt.basis.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.basis.Basis;
import fieldsalt.basis.Samples;
import fieldsalt.basis.depth.RootZone;
import fieldsalt.basis.depth.Uptake;
import fieldsalt.basis.setting.BasisSettings;
import fieldsalt.read.sample.Sample;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What the surface is handed: values, own errors, shared loadings. */
class SiteReadingsTest {
  private static final RootZone TOP = new RootZone(30, Uptake.UNIFORM);

  private static SiteReadings readings(RootZone zone, List<Sample> samples) {
    return Basis.of(samples, BasisSettings.defaults()).rootZone(f -> zone).readings();
  }

  @Test
  void oneLoamAtOneToFiveHasThePublishedFactorAndItsErrorInThreeParts() {
    SiteReadings r = readings(TOP, List.of(Samples.sample().ec(0.5).get()));
    SiteReadings.Row row = r.rows().get(0);
    assertThat(row.value()).isCloseTo(Math.log(0.5 * 9.5), within(1e-12));
    // design: two thirds of the conversion variance shared, each half; the rest own; laboratory
    // 1:5 0.07 shared and 0.05 own (practice table of defaults); loam 0.22
    double conversion = 0.22 * 0.22;
    assertThat(row.ownVariance()).isCloseTo(conversion / 3 + 0.05 * 0.05, within(1e-12));
    assertThat(r.offsets()).containsExactly("laboratory: Lab, 1:5", "soil: 1:5, medium");
    assertThat(row.loadings()).hasSize(2);
    assertThat(row.loadings().get(0).weight())
        .isCloseTo(Math.sqrt(conversion / 3 + 0.07 * 0.07), within(1e-12));
    assertThat(row.loadings().get(1).weight()).isCloseTo(Math.sqrt(conversion / 3), within(1e-12));
    assertThat(r.offsetCovariance()).isDeepEqualTo(new double[][] {{1, 0}, {0, 1}});
  }

  @Test
  void aPasteRowCarriesLaboratoryErrorToo() {
    SiteReadings r = readings(TOP, List.of(Samples.sample().paste(4).get()));
    SiteReadings.Row row = r.rows().get(0);
    assertThat(row.paste()).isTrue();
    assertThat(row.value()).isEqualTo(Math.log(4));
    assertThat(row.ownVariance()).isCloseTo(0.07 * 0.07, within(1e-12));
    assertThat(row.loadings()).hasSize(1);
    assertThat(row.loadings().get(0).weight()).isCloseTo(0.10, within(1e-12));
  }

  @Test
  void layersOfOneSiteKeepTheirSharedErrorWhole() {
    SiteReadings r =
        readings(
            new RootZone(90, Uptake.UNIFORM),
            List.of(
                Samples.sample().depth(0, 30).ec(0.3).get(),
                Samples.sample().depth(30, 60).ec(0.6).get(),
                Samples.sample().depth(60, 90).ec(0.9).get()));
    SiteReadings.Row row = r.rows().get(0);
    assertThat(row.value()).isCloseTo(Math.log(0.6 * 9.5), within(1e-12));
    // all three share both offsets wholly: the loading is that of one row
    assertThat(row.loadings().get(1).weight()).isCloseTo(0.22 / Math.sqrt(3), within(1e-12));
    double own = 0.22 * 0.22 / 3 + 0.05 * 0.05;
    double weights = (0.3 * 0.3 + 0.6 * 0.6 + 0.9 * 0.9) / (1.8 * 1.8);
    assertThat(row.ownVariance()).isCloseTo(own * weights, within(1e-12));
  }

  @Test
  void orderOfRowsNeverMatters() {
    List<Sample> samples = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      samples.add(Samples.sample().id("S" + i).ec(0.2 + 0.1 * i).row(2 * i).get());
      samples.add(Samples.sample().id("S" + i).paste(2.3 + 0.9 * i).row(2 * i + 1).get());
    }
    SiteReadings before = readings(TOP, samples);
    Collections.shuffle(samples, new Random(5));
    SiteReadings after = readings(TOP, samples);
    assertThat(after.rows()).isEqualTo(before.rows());
    assertThat(after.sites()).isEqualTo(before.sites());
    assertThat(before.sites()).isSortedAccordingTo(java.util.Comparator.comparing(s -> s.id()));
    assertThat(before.rows()).hasSize(24);
  }

  @Test
  void theNewestCampaignIsMappedAndItSaysSo() {
    SiteReadings r =
        readings(
            TOP,
            List.of(
                Samples.sample().date("2024-03-01").get(),
                Samples.sample().date("2025-03-01").get(),
                Samples.sample().id("B").date("2025-01-15").get()));
    assertThat(r.sites()).hasSize(2);
    assertThat(r.findings()).extracting(f -> f.code().id()).contains("several-campaigns");
  }

  @Test
  void aCompositeIsSetAgainstTheMeanOfTheSites() {
    List<Sample> samples = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      samples.add(Samples.sample().id("S" + i).ec(0.4 + 0.02 * i).row(i + 2).get());
    }
    samples.add(Samples.sample().id("bag").ec(0.45).nowhere().row(20).get());
    samples.add(Samples.sample().id("odd").ec(1.8).nowhere().row(21).get());
    SiteReadings r = readings(TOP, samples);
    assertThat(r.sites()).hasSize(6);
    assertThat(r.findings()).filteredOn(f -> f.code().id().equals("composite")).hasSize(2);
    assertThat(r.findings()).anyMatch(f -> f.where().contains("bag") && f.done().contains("agree"));
    assertThat(r.findings())
        .anyMatch(f -> f.where().contains("odd") && f.done().contains("differ by more"));
    SiteReadings.Row site = r.rows().get(0);
    assertThat(r.fieldMeans()).hasSize(2);
    SiteReadings.FieldMean bag = r.fieldMeans().get(0);
    assertThat(bag.sample()).isEqualTo("bag");
    assertThat(bag.field()).isEqualTo("north");
    assertThat(bag.value()).isCloseTo(site.value() + Math.log(0.45 / 0.4), within(1e-12));
    assertThat(bag.ownVariance()).isCloseTo(site.ownVariance(), within(1e-12));
    assertThat(bag.loadings()).isEqualTo(site.loadings());
    assertThat(bag.cores()).isEqualTo(5);
  }

  @Test
  void aCompositeOfAFieldWithoutSitesIsSaidToBeUnused() {
    List<Sample> samples = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      samples.add(Samples.sample().id("S" + i).ec(0.4).row(i + 2).get());
    }
    samples.add(Samples.sample().id("bag").ec(0.45).nowhere().row(20).get());
    samples.add(
        Samples.sample()
            .id("far")
            .ec(0.45)
            .nowhere()
            .row(21)
            .get()
            .withField("west", Optional.empty()));
    SiteReadings r = readings(TOP, samples);
    assertThat(r.fieldMeans()).extracting(SiteReadings.FieldMean::sample).containsExactly("bag");
    assertThat(r.findings())
        .filteredOn(f -> f.code().id().equals("composite-unused"))
        .singleElement()
        .satisfies(f -> assertThat(f.where()).isEqualTo("composite far, field west"));
  }

  /**
   * A composite of two layers is weighted as a site is; one that reaches deeper than they is not.
   */
  @Test
  void aCompositeStandsForTheDepthThatTheSitesHave() {
    List<Sample> samples = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      samples.add(Samples.sample().id("S" + i).ec(0.4).depth(0, 30).row(2 * i).get());
      samples.add(Samples.sample().id("S" + i).ec(0.8).depth(30, 60).row(2 * i + 1).get());
    }
    samples.add(Samples.sample().id("bag").ec(0.4).depth(0, 30).nowhere().row(20).get());
    samples.add(Samples.sample().id("bag").ec(0.8).depth(30, 60).nowhere().row(21).get());
    samples.add(Samples.sample().id("top").ec(0.4).depth(0, 30).nowhere().row(22).get());
    samples.add(Samples.sample().id("deep").ec(0.6).depth(0, 90).nowhere().row(23).get());
    SiteReadings r = readings(new RootZone(90, Uptake.UNIFORM), samples);
    assertThat(r.fieldMeans())
        .extracting(SiteReadings.FieldMean::sample)
        .containsExactly("bag", "top");
    double site = r.rows().get(0).value();
    assertThat(r.fieldMeans().get(0).value()).isCloseTo(site, within(1e-12));
    assertThat(r.fieldMeans().get(1).value())
        .as("completed by the ratio that the full profiles show")
        .isCloseTo(site, within(1e-12));
    assertThat(r.findings())
        .filteredOn(f -> f.code().id().equals("composite-depth"))
        .hasSize(1)
        .allMatch(f -> f.where().contains("deep"));
  }
}
