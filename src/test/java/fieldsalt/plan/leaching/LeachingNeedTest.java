package fieldsalt.plan.leaching;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.facts.Crop;
import fieldsalt.facts.Crops;
import fieldsalt.plan.Changed;
import fieldsalt.plan.setting.Irrigation;
import fieldsalt.plan.setting.LeachingSettings;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.setting.WaterSettings;
import fieldsalt.plan.word.PlanWords;
import fieldsalt.plan.word.Sentence;
import fieldsalt.plan.zone.LeachingRequirement;
import fieldsalt.plan.zone.LeachingRequirement.Status;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class LeachingNeedTest {
  private static Optional<Crop> crop(String name) {
    return Optional.of(Crops.standard().find(name).crop());
  }

  private static PlanSettings water(WaterSettings water) {
    return Changed.withWater(PlanSettings.defaults(), water);
  }

  private static LeachingRequirement of(PlanSettings settings, String crop) {
    return new LeachingNeed(settings).of(crop(crop), false);
  }

  private static List<String> codes(LeachingRequirement lr) {
    return said(lr).stream().map(Sentence::code).toList();
  }

  private static List<Sentence> said(LeachingRequirement lr) {
    return new PlanWords(PlanSettings.defaults()).of(lr);
  }

  /** FAO 29, example 3 with the threshold as tolerable ECe: maize, ECw 1.2, LR 0.164, AW 957 mm. */
  @Test
  void thresholdAsTolerableIsAnOption() {
    PlanSettings at100 =
        Changed.withLeaching(
            water(
                Changed.withSeason(
                    Changed.withEfficiencyPct(Changed.withEc(WaterSettings.defaults(), 1.2), 100),
                    800,
                    0)),
            Changed.withTolerableYieldPct(LeachingSettings.defaults(), 100));
    LeachingRequirement lr = of(at100, "corn");
    assertThat(lr.fraction().orElseThrow()).isCloseTo(0.164, within(0.0005));
    assertThat(lr.grossMm().orElseThrow()).isCloseTo(957, within(0.5));
    assertThat(lr.steadyEce().orElseThrow()).isGreaterThan(0);
    assertThat(lr.uptakeMean().orElseThrow()).isGreaterThan(lr.steadyEce().orElseThrow());
  }

  /** The default is the ECe of 90 % yield: maize 2.533, LR 0.105. */
  @Test
  void tolerableIsThatOfNinetyPercent() {
    LeachingRequirement lr = of(water(Changed.withEc(WaterSettings.defaults(), 1.2)), "corn");
    assertThat(lr.tolerableEce().orElseThrow()).isCloseTo(2.533, within(0.0005));
    assertThat(lr.fraction().orElseThrow())
        .isCloseTo(1.2 / (5 * (1.7 + 10 / 12.0) - 1.2), within(1e-9));
  }

  /** Surface: (ET - Pe) / min(Ea, 1 - LR): the losses already cover a small requirement. */
  @Test
  void surfaceIrrigationCountsItsLosses() {
    WaterSettings w = Changed.withSeason(Changed.withEc(WaterSettings.defaults(), 1.2), 800, 0);
    assertThat(of(water(w), "corn").grossMm().orElseThrow())
        .as("FAO 29: 800 mm at 65 % are 1,230 mm, leaching included")
        .isCloseTo(1230.8, within(0.05));
    LeachingRequirement salty =
        of(water(Changed.withEfficiencyPct(Changed.withEc(w, 4), 90)), "corn");
    assertThat(salty.status()).isEqualTo(Status.RARELY_PRACTICABLE);
    double lr = salty.fraction().orElseThrow();
    assertThat(salty.grossMm().orElseThrow()).isCloseTo(800 / (1 - lr), within(1e-9));
  }

  /** Sprinkler: below LR 0.1 ET/Ea, else 0.9 ET / (Ea (1 - LR)) (Keller, from memory). */
  @Test
  void sprinklerRule() {
    WaterSettings w =
        Changed.withSeason(
            Changed.withMethod(WaterSettings.defaults(), Irrigation.SPRINKLER), 900, 150);
    LeachingNeed need = new LeachingNeed(water(w));
    assertThat(need.gross(0.05).orElseThrow()).isCloseTo(750 / 0.75, within(1e-9));
    assertThat(need.gross(0.20).orElseThrow()).isCloseTo(0.9 * 750 / (0.75 * 0.8), within(1e-9));
  }

  /** EC of the season's water is weighted with rain of 0.02 dS/m. */
  @Test
  void rainThinsTheWater() {
    WaterSettings w = Changed.withSeason(Changed.withEc(WaterSettings.defaults(), 2), 1000, 250);
    double mixed = (2 * 750 + 0.02 * 250) / 1000;
    LeachingNeed need = new LeachingNeed(water(w));
    assertThat(need.ecWater().orElseThrow()).isCloseTo(mixed, within(1e-12));
    assertThat(of(water(w), "cotton").ecWater().orElseThrow()).isCloseTo(mixed, within(1e-12));
  }

  /** FAO 29, sect. 2.4: drip on cotton, ECw 2, ECe of no yield 7.7 + 100/5.2 = 26.93: 0.037. */
  @Test
  void dripTakesTheHighFrequencyForm() {
    LeachingRequirement lr =
        of(
            water(Changed.withMethod(Changed.withEc(WaterSettings.defaults(), 2), Irrigation.DRIP)),
            "cotton");
    assertThat(lr.fraction().orElseThrow()).isCloseTo(0.037, within(0.0005));
  }

  /** Above 0.30 rarely practicable, above 0.50 not feasible and no depth (common practice). */
  @Test
  void limitsOfWhatIsFeasible() {
    WaterSettings season = Changed.withSeason(WaterSettings.defaults(), 800, 0);
    double bean = 1 + 10 / 19.0;
    LeachingRequirement rarely = of(water(Changed.withEc(season, 2.0)), "Bean, common");
    assertThat(2.0 / (5 * bean - 2.0)).isBetween(0.30, 0.50);
    assertThat(rarely.status()).isEqualTo(Status.RARELY_PRACTICABLE);
    assertThat(codes(rarely))
        .contains("leaching-rarely-practicable", "water-that-would-do", "crops-that-would-do");
    LeachingRequirement never = of(water(Changed.withEc(season, 3.0)), "Bean, common");
    assertThat(never.status()).isEqualTo(Status.NOT_FEASIBLE);
    assertThat(never.fraction()).isEmpty();
    assertThat(never.grossMm()).isEmpty();
    assertThat(codes(never)).contains("leaching-not-feasible", "crops-that-would-do");
    // 4.5 / (5 x 1.526 - 4.5) = 1.44: more water would have to drain than is given
    LeachingRequirement more = of(water(Changed.withEc(season, 4.5)), "Bean, common");
    assertThat(said(more).get(0).template()).contains("no amount of leaching");
    LeachingRequirement beyond = of(water(Changed.withEc(season, 5 * bean)), "Bean, common");
    assertThat(beyond.status()).isEqualTo(Status.NOT_FEASIBLE);
    assertThat(said(beyond).get(0).template()).contains("no amount of leaching");
  }

  @Test
  void whatWouldDoIsNamed() {
    LeachingRequirement never =
        of(water(Changed.withEc(WaterSettings.defaults(), 3)), "Bean, common");
    Sentence water =
        said(never).stream()
            .filter(s -> s.code().equals("water-that-would-do"))
            .findFirst()
            .orElseThrow();
    double enough = water.numbers().get(0).value();
    LeachingRequirement then =
        of(water(Changed.withEc(WaterSettings.defaults(), enough)), "Bean, common");
    assertThat(then.fraction().orElseThrow()).isCloseTo(0.30, within(1e-9));
    assertThat(said(never))
        .anySatisfy(
            s -> assertThat(s.template()).contains("Barley (grain)").doesNotContain("Almond"));
  }

  @Test
  void withoutCropWaterOrNumbersASentence() {
    PlanSettings none = PlanSettings.defaults();
    assertThat(codes(new LeachingNeed(none).of(Optional.empty(), false)))
        .containsExactly("no-crop-numbers");
    assertThat(codes(new LeachingNeed(none).of(crop("safflower"), false)))
        .containsExactly("no-crop-numbers");
    LeachingRequirement dry = new LeachingNeed(none).of(crop("alfalfa"), false);
    assertThat(codes(dry)).containsExactly("no-water-ec");
    assertThat(dry.tolerableEce()).isPresent();
  }

  @Test
  void pureWaterNeedsNoLeaching() {
    LeachingRequirement lr =
        of(
            water(Changed.withSeason(Changed.withEc(WaterSettings.defaults(), 0), 500, 0)),
            "alfalfa");
    assertThat(lr.fraction()).hasValue(0);
    assertThat(lr.steadyEce()).isEmpty();
    assertThat(lr.grossMm().orElseThrow()).isFinite();
  }

  /** Maas 1990, note (c), holds where gypsum is confirmed in the root zone. */
  @Test
  void gypsiferousSoilRaisesTheTolerable() {
    LeachingNeed need = new LeachingNeed(water(Changed.withEc(WaterSettings.defaults(), 1)));
    double plain = need.of(crop("wheat"), false).tolerableEce().orElseThrow();
    assertThat(need.of(crop("wheat"), true).tolerableEce().orElseThrow())
        .isCloseTo(plain + 2, within(1e-12));
  }
}
