package fieldsalt.plan.gypsum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.facts.GypsumStoichiometry;
import fieldsalt.facts.UsSalinityLaboratory1954;
import fieldsalt.handover.output.ZonesOutput;
import fieldsalt.plan.Changed;
import fieldsalt.plan.Ranches;
import fieldsalt.plan.Said;
import fieldsalt.plan.draw.Known;
import fieldsalt.plan.draw.Known.Source;
import fieldsalt.plan.setting.GroundSettings;
import fieldsalt.plan.setting.GroundSettings.Drainage;
import fieldsalt.plan.setting.GypsumSettings;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.setting.WaterSettings;
import fieldsalt.plan.soil.FieldSoil;
import fieldsalt.plan.soil.SoilProperties;
import fieldsalt.plan.word.Sentence;
import fieldsalt.plan.zone.GypsumPlan;
import fieldsalt.plan.zone.GypsumPlan.Advice;
import fieldsalt.plan.zone.Situation;
import fieldsalt.plan.zone.Step;
import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.quantity.Texture;
import fieldsalt.quantity.UnitSystem;
import fieldsalt.surface.SampledProperty;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class GypsumTest {
  private static final PlanSettings DRAINED = Ranches.drained();

  private static ZonePlan zone(Ranches ranch, PlanSettings settings) {
    return ranch.plan(settings).zones().get(0);
  }

  private static List<String> codes(ZonePlan zone) {
    return Said.of(zone, DRAINED).stream().map(Sentence::code).toList();
  }

  private static String text(ZonePlan zone, String code) {
    return text(zone, DRAINED, code);
  }

  private static String text(ZonePlan zone, PlanSettings settings, String code) {
    return Said.of(zone, settings).stream()
        .filter(s -> s.code().equals(code))
        .findFirst()
        .orElseThrow()
        .text(UnitSystem.METRIC);
  }

  /** Gate: ESP 15 or SAR 13 of the paste. */
  @Test
  void recommendedFromTheGateOn() {
    assertThat(zone(Ranches.of(2).esp(19), DRAINED).gypsum().advice())
        .isEqualTo(Advice.RECOMMENDED);
    assertThat(zone(Ranches.of(2).esp(12), DRAINED).gypsum().advice()).isEqualTo(Advice.NOT_NEEDED);
    assertThat(zone(Ranches.of(2).sar(16), DRAINED).gypsum().advice())
        .isEqualTo(Advice.RECOMMENDED);
    ZonePlan below = zone(Ranches.of(2).sar(10), DRAINED);
    assertThat(below.gypsum().advice()).isEqualTo(Advice.NOT_NEEDED);
    assertThat(text(below, "no-gypsum")).contains("below 15");
  }

  /** ESP 6 to 15 counts only on fine soil and under a water that seals it, or where rain-fed. */
  @Test
  void consideredOnFineSoilUnderASealingWater() {
    PlanSettings seals =
        Changed.withWater(
            DRAINED, Changed.withSar(Changed.withEc(WaterSettings.defaults(), 0.4), 4));
    FieldSoil coarse = FieldSoil.unknown().withTexture(Texture.SANDY_LOAM);
    assertThat(zone(Ranches.of(2).esp(12), seals).gypsum().advice()).isEqualTo(Advice.CONSIDER);
    assertThat(zone(Ranches.of(2).esp(12).soil(coarse), seals).gypsum().advice())
        .isEqualTo(Advice.NOT_NEEDED);
    assertThat(zone(Ranches.of(2).esp(4), seals).gypsum().advice()).isEqualTo(Advice.NOT_NEEDED);
    PlanSettings harmless =
        Changed.withWater(
            DRAINED, Changed.withSar(Changed.withEc(WaterSettings.defaults(), 1.5), 4));
    assertThat(zone(Ranches.of(2).esp(12), harmless).gypsum().advice())
        .isEqualTo(Advice.NOT_NEEDED);
    PlanSettings rainFed = Changed.withWater(DRAINED, WaterSettings.defaults());
    ZonePlan rain = zone(Ranches.of(2).esp(12), rainFed);
    assertThat(rain.gypsum().advice()).isEqualTo(Advice.CONSIDER);
    assertThat(text(rain, rainFed, "gypsum-consider")).contains("rain-fed", "strip");
    assertThat(rain.productTPerHa()).as("a strip is no rate").isZero();
    assertThat(rain.steps()).containsExactly(Step.TEST_STRIP);
    assertThat(text(zone(Ranches.of(2).esp(8), rainFed), rainFed, "gypsum-consider"))
        .contains("no amount follows");
  }

  /** Target never below the ESP that the water's own SAR keeps. */
  @Test
  void targetIsHeldByTheWater() {
    PlanSettings salty =
        Changed.withWater(
            DRAINED, Changed.withSar(Changed.withEc(WaterSettings.defaults(), 2), 14));
    double kept = UsSalinityLaboratory1954.espFromSar(14);
    ZonePlan zone = zone(Ranches.of(2).esp(30).cec(20), salty);
    assertThat(zone.gypsum().targetEspPct()).isCloseTo(kept, within(1e-9));
    assertThat(zone.gypsum().factor()).isCloseTo(1.1, within(1e-9));
    double formula = GypsumStoichiometry.requirement(1.1, 0.15, 1.35, 20, 30, kept);
    assertThat(zone.gypsum().pure().p50()).isCloseTo(formula, within(0.03 * formula));
    assertThat(codes(zone)).contains("target-held-by-water");
    ZonePlan there =
        zone(
            Ranches.of(2).esp(15.5).cec(20).sar(40),
            Changed.withWater(
                salty, Changed.withSar(Changed.withEc(WaterSettings.defaults(), 2), 20)));
    assertThat(there.gypsum().advice()).isEqualTo(Advice.AT_TARGET);
    assertThat(there.productTPerHa()).isZero();
    assertThat(codes(there)).contains("gypsum-at-target");
  }

  /** SAR of the water from its ions where it is not given. */
  @Test
  void sarOfTheWaterFromItsIons() {
    WaterSettings.WaterIons ions =
        new WaterSettings.WaterIons(
            java.util.OptionalDouble.of(20),
            java.util.OptionalDouble.of(2),
            java.util.OptionalDouble.of(2),
            java.util.OptionalDouble.empty(),
            java.util.OptionalDouble.empty(),
            java.util.OptionalDouble.empty());
    assertThat(Changed.withIons(WaterSettings.defaults(), ions).sarKnown().orElseThrow())
        .isCloseTo(20 / Math.sqrt(2), within(1e-12));
    assertThat(WaterSettings.defaults().sarKnown()).isEmpty();
  }

  /** Native gypsum is deducted, usually to nothing: 1 % in 0.15 m is about 20 t/ha. */
  @Test
  void nativeGypsumIsDeducted() {
    FieldSoil holds = Changed.withGypsumPct(FieldSoil.unknown().withTexture(Texture.CLAY_LOAM), 1);
    ZonePlan zone = zone(Ranches.of(2).esp(25).cec(20).soil(holds), DRAINED);
    assertThat(zone.gypsum().advice()).isEqualTo(Advice.OWN_GYPSUM);
    assertThat(zone.productTPerHa()).isZero();
    assertThat(zone.steps()).startsWith(Step.CONFIRM_OWN_GYPSUM);
    assertThat(zone.draft().isDraft()).as("gypsum in the soil undermines ECe").isTrue();
    FieldSoil little =
        Changed.withGypsumPct(FieldSoil.unknown().withTexture(Texture.CLAY_LOAM), 0.1);
    double without = zone(Ranches.of(2).esp(25).cec(20), DRAINED).gypsum().pure().p50();
    double with = zone(Ranches.of(2).esp(25).cec(20).soil(little), DRAINED).gypsum().pure().p50();
    assertThat(without - with).isCloseTo(0.1 * 0.15 * 1.35 * 100, within(0.06));
  }

  /** Purity and moisture turn pure gypsum into product. */
  @Test
  void productCarriesPurityAndMoisture() {
    PlanSettings product =
        Changed.withGypsum(DRAINED, Changed.withProduct(GypsumSettings.defaults(), 80, 10));
    ZonePlan pure = zone(Ranches.of(2).esp(25).cec(20), DRAINED);
    ZonePlan moist = zone(Ranches.of(2).esp(25).cec(20), product);
    assertThat(moist.productTPerHa()).isCloseTo(pure.productTPerHa() / 0.8 / 0.9, within(0.02));
    assertThat(ZonesOutput.plan(moist)).containsEntry("gypsum_of", "product");
    assertThat(ZonesOutput.plan(pure)).containsEntry("gypsum_of", "pure gypsum");
    assertThat(Said.cautions(pure, DRAINED)).extracting(Sentence::code).contains("purity-asked");
    assertThat(Said.cautions(moist, product))
        .extracting(Sentence::code)
        .doesNotContain("purity-asked");
  }

  @Test
  void belowTheSmallestUsefulRateNone() {
    PlanSettings shallow =
        Changed.withGypsum(DRAINED, Changed.withDepthCm(GypsumSettings.defaults(), 5));
    ZonePlan zone = zone(Ranches.of(2).esp(17).cec(4), shallow);
    assertThat(zone.gypsum().advice()).isEqualTo(Advice.BELOW_SMALLEST);
    assertThat(zone.productTPerHa()).isZero();
    assertThat(codes(zone)).contains("gypsum-below-smallest");
  }

  /** The laboratory's own requirement stands beside ours and is not ours. */
  @Test
  void laboratorysOwnRequirementStandsBeside() {
    FieldSoil soil =
        Changed.withLaboratoryRequirement(FieldSoil.unknown().withTexture(Texture.CLAY_LOAM), 9.5);
    ZonePlan with = zone(Ranches.of(2).esp(25).cec(20).soil(soil), DRAINED);
    ZonePlan without = zone(Ranches.of(2).esp(25).cec(20), DRAINED);
    assertThat(text(with, "laboratory-requirement")).contains("9.5 t/ha", "carbonate");
    assertThat(with.productTPerHa()).isEqualTo(without.productTPerHa());
    assertThat(codes(without)).doesNotContain("laboratory-requirement");
  }

  /** No drainage: do not spread. */
  @Test
  void withoutDrainageNothingIsSpread() {
    PlanSettings poor =
        Changed.withGround(DRAINED, Changed.withDrainage(GroundSettings.defaults(), Drainage.POOR));
    ZonePlan zone = zone(Ranches.of(9).esp(25), poor);
    assertThat(zone.gypsum().advice()).isEqualTo(Advice.NO_DRAINAGE);
    assertThat(zone.productTPerHa()).isZero();
    assertThat(text(zone, "gypsum-no-drainage")).startsWith("Do not spread yet");
    assertThat(zone.firstStep()).isEqualTo(Step.DRAINAGE);
  }

  /** At most 40 mm a tonne dissolve it (2.5 g/L); 0.30 m stands beside 0.15 m. */
  @Test
  void waterToDissolveAndTheDeeperLayer() {
    ZonePlan zone = zone(Ranches.of(2).esp(25).cec(20), DRAINED);
    assertThat(zone.gypsum().waterToDissolveMm())
        .isCloseTo(40 * zone.gypsum().wantedProduct(), within(1e-9));
    Sentence deeper =
        Said.of(zone, DRAINED).stream()
            .filter(s -> s.code().equals("gypsum-other-depth"))
            .findFirst()
            .orElseThrow();
    assertThat(deeper.numbers().get(1).value())
        .isCloseTo(2 * zone.gypsum().wantedProduct(), within(1e-6));
    PlanSettings deep =
        Changed.withGypsum(DRAINED, Changed.withDepthCm(GypsumSettings.defaults(), 30));
    assertThat(text(zone(Ranches.of(2).esp(25).cec(20), deep), deep, "gypsum-other-depth"))
        .startsWith("Over 15 cm");
  }

  /** Refused where nothing is known of sodium; the most useful sites are named. */
  @Test
  void withoutSodiumTheSitesToMeasureAreNamed() {
    ZonePlan zone = zone(Ranches.of(8), DRAINED);
    assertThat(zone.gypsum().advice()).isEqualTo(Advice.MEASURE_SODIUM);
    assertThat(ZonesOutput.plan(zone)).containsEntry("gypsum_t_ha", null);
    assertThat(ZonesOutput.plan(zone)).containsEntry("gypsum_chance", null);
    assertThat(text(zone, "measure-sodium")).contains("Measure SAR of the saturated paste");
    assertThat(zone.situation()).isEqualTo(Situation.SALINE_SODIUM_UNKNOWN);
  }

  /** Surface, then the mean of few sites, then the texture's usual value; ever wider. */
  @Test
  void sourcesFromFirmToLoose() {
    SampledProperty few = new SampledProperty(Ranches.readings("CEC", 2, 22), Optional.empty());
    Ranches mapped = Ranches.of(2).esp(25).cec(22);
    SoilProperties some =
        new SoilProperties(
            mapped.input().soil().esp(), Optional.empty(), Optional.of(few), Optional.empty());
    GypsumPlan byMap = zone(mapped, DRAINED).gypsum();
    GypsumPlan byMean = zone(Ranches.of(2).properties(some), DRAINED).gypsum();
    GypsumPlan byTexture = zone(Ranches.of(2).esp(25), DRAINED).gypsum();
    assertThat(byMap.sources().cec().source()).isEqualTo(Source.SURFACE);
    assertThat(byMean.sources().cec()).isEqualTo(new Known(Source.FIELD_MEAN, 2));
    assertThat(byTexture.sources().cec().source()).isEqualTo(Source.TEXTURE);
    assertThat(byTexture.sources().bulkDensity().source()).isEqualTo(Source.TEXTURE);
    assertThat(width(byMean)).isGreaterThan(width(byMap));
    assertThat(width(byTexture)).isGreaterThan(width(byMean));
    assertThat(byMean.pure().p50()).isCloseTo(byMap.pure().p50(), within(0.5));
  }

  private static double width(GypsumPlan plan) {
    return plan.pure().p90() - plan.pure().p10();
  }

  /** ESP from SAR carries 20 % of the exchangeable sodium ratio (common practice). */
  @Test
  void espFromSarIsWiderThanEspMeasured() {
    double sar = UsSalinityLaboratory1954.sarFromEsp(25);
    GypsumPlan measured = zone(Ranches.of(2).esp(25), DRAINED).gypsum();
    GypsumPlan fromSar = zone(Ranches.of(2).sar(sar), DRAINED).gypsum();
    assertThat(fromSar.esp().p50()).isCloseTo(25, within(0.5));
    assertThat(fromSar.esp().p90() - fromSar.esp().p10())
        .isGreaterThan(1.3 * (measured.esp().p90() - measured.esp().p10()));
    assertThat(fromSar.sources().esp().workedOut()).isTrue();
  }

  @Test
  void noSodiumAtAllIsNoGypsum() {
    ZonePlan zone = zone(Ranches.of(2).sar(0.01), DRAINED);
    assertThat(zone.gypsum().esp().p90()).isZero();
    assertThat(zone.gypsum().advice()).isEqualTo(Advice.NOT_NEEDED);
    assertThat(codes(zone)).contains("no-gypsum");
  }
}
