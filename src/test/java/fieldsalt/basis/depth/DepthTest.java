package fieldsalt.basis.depth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.basis.Basis;
import fieldsalt.basis.Samples;
import fieldsalt.basis.setting.BasisSettings;
import fieldsalt.basis.site.RootZoneReadings;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.Finding;
import fieldsalt.read.sample.Sample;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Depth: means over the root zone, and the rules of practice on it (section 3). */
class DepthTest {
  private static final RootZone NINETY = new RootZone(90, Uptake.UNIFORM);

  private static RootZoneReadings readings(RootZone zone, List<Sample> samples) {
    return Basis.of(samples, BasisSettings.defaults()).rootZone(f -> zone);
  }

  private static List<Sample> pastes(String id, double[] bounds, double... ece) {
    List<Sample> rows = new ArrayList<>();
    for (int i = 0; i < ece.length; i++) {
      rows.add(
          Samples.sample()
              .id(id)
              .depth(bounds[i], bounds[i + 1])
              .paste(ece[i])
              .row(id.hashCode() * 10 + i)
              .get());
    }
    return rows;
  }

  private static double mean(RootZone zone, List<Sample> samples) {
    return Math.exp(readings(zone, samples).readings().rows().get(0).value());
  }

  // 40-30-20-10 by quarters: Ayers & Westcot 1985, FAO 29. Root zone 90 cm, layers
  // 0-15/15-30/30-60/
  // 60-90: weights 0.2667, 0.2333, 0.3333, 0.1667; ECe 2/3/5/8 -> 4.233; by thickness 5.167
  @Test
  void workedExampleOfUnequalLayers() {
    RootZone quarters = new RootZone(90, Uptake.QUARTERS);
    assertThat(quarters.weight(0, 15)).isCloseTo(0.2667, within(0.00005));
    assertThat(quarters.weight(15, 30)).isCloseTo(0.2333, within(0.00005));
    assertThat(quarters.weight(30, 60)).isCloseTo(0.3333, within(0.00005));
    assertThat(quarters.weight(60, 90)).isCloseTo(0.1667, within(0.00005));
    List<Sample> rows = pastes("A", new double[] {0, 15, 30, 60, 90}, 2, 3, 5, 8);
    assertThat(mean(quarters, rows)).isCloseTo(4.233, within(0.0005));
    assertThat(mean(NINETY, rows)).isCloseTo(5.167, within(0.0005));
  }

  // the same for root zone 120 cm, four layers of 30 cm with ECe 2/4/6/8: 4.000 and 5.000
  @Test
  void workedExampleOfFourEqualLayers() {
    List<Sample> rows = pastes("A", new double[] {0, 30, 60, 90, 120}, 2, 4, 6, 8);
    assertThat(mean(new RootZone(120, Uptake.QUARTERS), rows)).isCloseTo(4.000, within(0.0005));
    assertThat(mean(new RootZone(120, Uptake.UNIFORM), rows)).isCloseTo(5.000, within(0.0005));
  }

  @Test
  void layersAreConvertedBeforeTheyAreAveraged() {
    List<Sample> rows =
        List.of(
            Samples.sample().depth(0, 45).ec(0.5).texture(fieldsalt.quantity.Texture.SAND).get(),
            Samples.sample().depth(45, 90).ec(0.5).texture(fieldsalt.quantity.Texture.CLAY).get());
    assertThat(mean(NINETY, rows)).isCloseTo((0.5 * 17 + 0.5 * 7.5) / 2, within(1e-9));
  }

  @Test
  void whatLiesBelowTheRootZoneDoesNotCount() {
    List<Sample> rows = pastes("A", new double[] {0, 60, 120}, 4, 8);
    assertThat(mean(NINETY, rows)).isCloseTo((60 * 4 + 30 * 8) / 90.0, within(1e-9));
    List<Sample> deep = List.of(Samples.sample().depth(100, 120).paste(4).get());
    assertThat(readings(NINETY, deep).readings().rows()).isEmpty();
    assertThat(readings(NINETY, deep).readings().findings())
        .anyMatch(f -> f.code().id().equals("below-root-zone"));
  }

  @Test
  void overlapsRepeatsAndGapsAreFindings() {
    List<Sample> rows = new ArrayList<>();
    rows.add(Samples.sample().depth(0, 30).paste(2).row(2).get());
    rows.add(Samples.sample().depth(0, 30).paste(4).row(3).get());
    rows.add(Samples.sample().depth(20, 50).paste(4).row(4).get());
    rows.add(Samples.sample().depth(60, 90).paste(6).row(5).get());
    List<Finding> findings = readings(NINETY, rows).readings().findings();
    assertThat(findings)
        .extracting(f -> f.code().id())
        .contains("repeated-layer", "overlapping-layers", "depth-gap");
    assertThat(findings).anyMatch(f -> f.where().contains("row 3"));
  }

  @Test
  void underHalfOfTheRootZoneIsTopsoilOnly() {
    RootZoneReadings top = readings(NINETY, pastes("A", new double[] {0, 30}, 4));
    assertThat(top.fields().get(0).topsoilOnly()).isTrue();
    assertThat(top.fields().get(0).bottomCm()).isEqualTo(30);
    assertThat(top.readings().findings()).anyMatch(f -> f.code().id().equals("topsoil-only"));
    RootZoneReadings half = readings(NINETY, pastes("A", new double[] {0, 45}, 4));
    assertThat(half.fields().get(0).topsoilOnly()).isFalse();
  }

  // common practice: top third over bottom third above 1.5 inverted, below 0.67 normal, else even
  @ParameterizedTest
  @CsvSource({"8, 4, INVERTED", "4, 4, EVEN", "3, 6, NORMAL", "4, 5.9, EVEN", "6.1, 4, INVERTED"})
  void profileShape(double top, double bottom, ProfileShape shape) {
    RootZoneReadings r =
        readings(NINETY, pastes("A", new double[] {0, 30, 60, 90}, top, 5, bottom));
    assertThat(r.fields().get(0).shape()).isEqualTo(shape);
  }

  @Test
  void theShapeIsUnknownWhereTheBottomWasNotSampled() {
    assertThat(readings(NINETY, pastes("A", new double[] {0, 30}, 4)).fields().get(0).shape())
        .isEqualTo(ProfileShape.UNKNOWN);
    assertThat(readings(NINETY, pastes("A", new double[] {0, 90}, 4)).fields().get(0).shape())
        .isEqualTo(ProfileShape.UNKNOWN);
  }

  @Test
  void aShallowSiteIsCompletedFromFiveFullProfiles() {
    List<Sample> rows = new ArrayList<>();
    double[] ratios = {1.4, 1.6, 1.5, 1.7, 1.3};
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < 5; i++) {
      double top = 2 + i;
      // lower layer chosen so that the mean of both is ratio x top
      rows.addAll(pastes("F" + i, new double[] {0, 30, 60}, top, (2 * ratios[i] - 1) * top));
      sum += Math.log(ratios[i]) / 5;
    }
    for (double ratio : ratios) {
      squares += Math.pow(Math.log(ratio) - sum, 2);
    }
    rows.addAll(pastes("S", new double[] {0, 30}, 3));
    RootZone zone = new RootZone(60, Uptake.UNIFORM);
    SiteReadings r = readings(zone, rows).readings();
    SiteReadings.Row shallow =
        r.rows().stream()
            .filter(row -> r.sites().get(row.site()).id().equals("S"))
            .findFirst()
            .orElseThrow();
    assertThat(shallow.value()).isCloseTo(Math.log(3) + sum, within(1e-12));
    assertThat(shallow.ownVariance())
        .isCloseTo(0.07 * 0.07 + squares / 4 * (1 + 1.0 / 5), within(1e-12));
    assertThat(r.findings()).anyMatch(f -> f.code().id().equals("unequal-depth"));
    assertThat(readings(zone, rows).fields().get(0).incompleteSites()).isEqualTo(1);
  }

  @Test
  void withFewerFullProfilesTheErrorIsWidened() {
    List<Sample> rows = new ArrayList<>(pastes("F", new double[] {0, 30, 60}, 3, 6));
    rows.addAll(pastes("S", new double[] {0, 30}, 3));
    SiteReadings r = readings(new RootZone(60, Uptake.UNIFORM), rows).readings();
    SiteReadings.Row shallow = r.rows().get(1);
    assertThat(shallow.value()).isCloseTo(Math.log(3), within(1e-12));
    // 0.3 x the missing half, in quadrature
    assertThat(shallow.ownVariance()).isCloseTo(0.07 * 0.07 + 0.15 * 0.15, within(1e-12));
    assertThat(r.findings()).anyMatch(f -> f.done().contains("0.3 times"));
  }

  @Test
  void aTopsoilPasteIsCompletedByTheSiteOwnCheapProfile() {
    List<Sample> rows = new ArrayList<>();
    rows.add(Samples.sample().depth(0, 30).paste(3).row(2).get());
    rows.add(Samples.sample().depth(0, 30).ec(0.4).row(3).get());
    rows.add(Samples.sample().depth(30, 60).ec(0.8).row(4).get());
    SiteReadings r = readings(new RootZone(60, Uptake.UNIFORM), rows).readings();
    SiteReadings.Row paste = r.rows().get(0);
    assertThat(paste.paste()).isTrue();
    assertThat(paste.value()).isCloseTo(Math.log(3 * 1.5), within(1e-12));
    // the cheap method's shared errors cancel in the ratio of its own layers
    assertThat(paste.loadings()).hasSize(1);
    // d = (1/3, 2/3) of the whole less (1, 0) of the top: own variances of two 1:5 rows
    double own = 0.22 * 0.22 / 3 + 0.05 * 0.05;
    assertThat(paste.ownVariance())
        .isCloseTo(0.07 * 0.07 + own * (4.0 / 9 + 4.0 / 9), within(1e-12));
    assertThat(r.findings()).noneMatch(f -> f.code().id().equals("unequal-depth"));
  }

  @Test
  void fieldsMayHaveRootZonesOfTheirOwn() {
    List<Sample> rows = new ArrayList<>(pastes("A", new double[] {0, 30, 60}, 2, 6));
    rows.add(Samples.sample().id("B").field("south").depth(0, 30).paste(2).get());
    rows.add(Samples.sample().id("B").field("south").depth(30, 60).paste(6).row(9).get());
    SiteReadings r =
        Basis.of(rows, BasisSettings.defaults())
            .rootZone(f -> new RootZone(f.equals("south") ? 30 : 60, Uptake.UNIFORM))
            .readings();
    assertThat(r.rows().get(0).value()).isCloseTo(Math.log(4), within(1e-12));
    assertThat(r.rows().get(1).value()).isCloseTo(Math.log(2), within(1e-12));
  }

  @Test
  void inchesAndCentimetresOfOneSurveyAreTheSameLayers() {
    List<Sample> rows = new ArrayList<>(pastes("A", new double[] {0, 30.48, 60.96}, 2, 6));
    rows.addAll(pastes("B", new double[] {0, 30, 60}, 2, 6));
    RootZoneReadings r = readings(new RootZone(60, Uptake.UNIFORM), rows);
    assertThat(r.readings().findings()).isEmpty();
    assertThat(r.fields().get(0).fullProfiles()).isEqualTo(2);
    assertThat(r.readings().rows()).allMatch(x -> Math.abs(x.value() - Math.log(4)) < 0.01);
  }

  @Test
  void weightsOfTheRootZoneSumToOneHoweverItIsCut() {
    for (Uptake uptake : Uptake.values()) {
      RootZone zone = new RootZone(97, uptake);
      double sum = 0;
      for (int cm = 0; cm < 200; cm += 7) {
        sum += zone.weight(cm, cm + 7);
      }
      assertThat(sum).isCloseTo(1, within(1e-12));
    }
  }
}
