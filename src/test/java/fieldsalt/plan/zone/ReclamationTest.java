package fieldsalt.plan.zone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.basis.depth.ProfileShape;
import fieldsalt.facts.Hoffman1980.Application;
import fieldsalt.plan.Changed;
import fieldsalt.plan.RanchPlan;
import fieldsalt.plan.Ranches;
import fieldsalt.plan.Said;
import fieldsalt.plan.setting.GroundSettings;
import fieldsalt.plan.setting.Irrigation;
import fieldsalt.plan.setting.LeachingSettings;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.setting.WaterSettings;
import fieldsalt.plan.soil.FieldEvidence;
import fieldsalt.plan.soil.FieldSoil;
import fieldsalt.plan.word.Sentence;
import fieldsalt.plan.zone.Reclamation.Status;
import fieldsalt.quantity.Texture;
import fieldsalt.quantity.UnitSystem;
import java.util.List;
import org.junit.jupiter.api.Test;

class ReclamationTest {
  private static final PlanSettings DRAINED = Ranches.drained();

  private static ZonePlan zone(Ranches ranch, PlanSettings settings) {
    return ranch.plan(settings).zones().get(0);
  }

  private static List<String> codes(List<Sentence> sentences) {
    return sentences.stream().map(Sentence::code).toList();
  }

  /** Hoffman 1980 at the middle: alfalfa to 90 % yield (3.37 dS/m) over 0.90 m, Ci 0.5. */
  @Test
  void middleIsTheFormula() {
    Ranches ranch = Ranches.of(12).zoneVariance(0.0001);
    ZonePlan zone = zone(ranch, DRAINED);
    Reclamation r = zone.reclamation();
    double target = 2 + 10 / 7.3;
    assertThat(r.targetEce()).isCloseTo(target, within(1e-9));
    assertThat(r.depthCm()).isEqualTo(90);
    assertThat(r.application()).isEqualTo(Application.PONDING);
    assertThat(r.k()).isEqualTo(0.3);
    double formula = 0.3 * 900 * (zone.ece().p50() - 0.5) / (target - 0.5);
    assertThat(r.mm().p50()).isCloseTo(formula, within(0.03 * formula));
    assertThat(r.plannedMm()).isCloseTo(r.mm().p50(), within(1e-6 + 0.01 * formula));
    assertThat(r.plannedM3(10)).isCloseTo(r.plannedMm() * 100, within(1e-6));
  }

  /** Shallow-rooted crops are reclaimed over 0.60 m; sprinkling takes K 0.1. */
  @Test
  void depthByCropAndMethodByIrrigation() {
    assertThat(zone(Ranches.of(9).crop("lettuce"), DRAINED).reclamation().depthCm()).isEqualTo(60);
    PlanSettings pivot =
        Changed.withWater(
            DRAINED,
            Changed.withMethod(Changed.withEc(WaterSettings.defaults(), 1), Irrigation.PIVOT));
    Reclamation sprinkled = zone(Ranches.of(9), pivot).reclamation();
    assertThat(sprinkled.k()).isEqualTo(0.1);
    assertThat(sprinkled.application()).isEqualTo(Application.SPRINKLING);
    PlanSettings set =
        Changed.withLeaching(
            DRAINED,
            Changed.withApplication(
                Changed.withDepthCm(Changed.withTargetEce(LeachingSettings.defaults(), 5), 45),
                Application.INTERMITTENT));
    Reclamation asSet = zone(Ranches.of(9), set).reclamation();
    assertThat(asSet.targetEce()).isEqualTo(5);
    assertThat(asSet.depthCm()).isEqualTo(45);
    assertThat(asSet.k()).isEqualTo(0.1);
  }

  @Test
  void textureOfTheZoneDecidesUnderPonding() {
    FieldSoil sand = FieldSoil.unknown().withTexture(Texture.LOAMY_SAND);
    FieldSoil loam = FieldSoil.unknown().withTexture(Texture.LOAM);
    assertThat(zone(Ranches.of(9).soil(sand), DRAINED).reclamation().k()).isEqualTo(0.1);
    assertThat(zone(Ranches.of(9).soil(loam), DRAINED).reclamation().k()).isEqualTo(0.2);
    assertThat(zone(Ranches.of(9).soil(FieldSoil.unknown()), DRAINED).reclamation().k())
        .isEqualTo(0.2);
  }

  @Test
  void nothingAtOrBelowTheTarget() {
    ZonePlan zone = zone(Ranches.of(1), DRAINED);
    assertThat(zone.reclamation().status()).isEqualTo(Status.NOT_NEEDED);
    assertThat(zone.reclamation().plannedMm()).isZero();
    assertThat(zone.reclamation().mm().p90()).isZero();
    assertThat(codes(Said.of(zone, DRAINED))).contains("no-reclamation");
  }

  /** The target lies below what the water itself leaves: said, and no depth. */
  @Test
  void targetBelowTheWaterIsOutOfReach() {
    PlanSettings salty = Changed.withWater(DRAINED, Changed.withEc(WaterSettings.defaults(), 8));
    ZonePlan zone = zone(Ranches.of(9).sar(3), salty);
    assertThat(zone.reclamation().status()).isEqualTo(Status.TARGET_OUT_OF_REACH);
    assertThat(zone.reclamation().plannedMm()).isZero();
    assertThat(codes(Said.of(zone, salty))).contains("target-below-water");
    assertThat(zone.firstStep()).isEqualTo(Step.CHANGE_CROP_OR_WATER);
  }

  @Test
  void hardlyAboveTheTargetIsLowConfidence() {
    ZonePlan zone = zone(Ranches.of(3.7), DRAINED);
    assertThat(zone.reclamation().lowConfidence()).isTrue();
    assertThat(codes(Said.of(zone, DRAINED))).contains("about-one-pore-volume");
    assertThat(zone(Ranches.of(9), DRAINED).reclamation().lowConfidence()).isFalse();
  }

  /** Drainage unknown, poor, or a table nearer than 150 cm: leaching only after it is proved. */
  @Test
  void leachingOnlyAfterDrainageIsProved() {
    for (GroundSettings ground :
        List.of(
            GroundSettings.defaults(),
            Changed.withDrainage(GroundSettings.defaults(), GroundSettings.Drainage.POOR),
            Changed.withWaterTableCm(
                Changed.withDrainage(GroundSettings.defaults(), GroundSettings.Drainage.GOOD),
                149))) {
      RanchPlan plan = Ranches.of(9).sar(3).plan(Changed.withGround(DRAINED, ground));
      assertThat(plan.zones().get(0).steps()).containsExactly(Step.DRAINAGE, Step.LEACHING);
      assertThat(codes(Said.cautionsOfFirstField(plan))).contains("drainage-first");
      assertThat(plan.fields().get(0).draft().isDraft()).isTrue();
    }
    GroundSettings deep =
        Changed.withWaterTableCm(
            Changed.withDrainage(GroundSettings.defaults(), GroundSettings.Drainage.GOOD), 150);
    RanchPlan plan = Ranches.of(9).sar(3).plan(Changed.withGround(DRAINED, deep));
    assertThat(plan.zones().get(0).steps()).containsExactly(Step.LEACHING);
  }

  /** Salt coming up from below: look for a water table first, even on ground said to drain. */
  @Test
  void invertedProfileLooksForAWaterTable() {
    FieldEvidence inverted = Changed.withProfile(FieldEvidence.firm(30), ProfileShape.INVERTED);
    ZonePlan zone = zone(Ranches.of(9).sar(3).evidence(inverted), DRAINED);
    assertThat(zone.steps()).containsExactly(Step.WATER_TABLE, Step.LEACHING);
    FieldEvidence normal = Changed.withProfile(FieldEvidence.firm(30), ProfileShape.NORMAL);
    assertThat(zone(Ranches.of(9).sar(3).evidence(normal), DRAINED).firstStep())
        .isEqualTo(Step.LEACHING);
  }

  /** Hoffman 1980: boron over the depth to reclaim takes K 0.6. */
  @Test
  void boronLeaching() {
    FieldSoil high = Changed.withBoronMgL(FieldSoil.unknown().withTexture(Texture.CLAY_LOAM), 12);
    RanchPlan plan = Ranches.of(3).soil(high).plan(DRAINED);
    Sentence boron =
        Said.ofFirstField(plan).stream()
            .filter(s -> s.code().equals("boron-leaching"))
            .findFirst()
            .orElseThrow();
    assertThat(boron.numbers().get(2).value())
        .as("12 to 6 mg/L over 0.90 m")
        .isCloseTo(0.6 * 900 * 12 / 6, within(1e-9));
    assertThat(codes(Said.cautionsOfFirstField(plan))).contains("boron-chloride");
    assertThat(Said.cautionsOfFirstField(plan).get(1).text(UnitSystem.METRIC))
        .isEqualTo("Boron was measured; chloride was not measured.");
    FieldSoil fine = Changed.withBoronMgL(high, 2);
    assertThat(codes(Said.ofFirstField(Ranches.of(3).soil(fine).plan(DRAINED))))
        .contains("boron-fine");
  }

  /** Amounts for people: mm, m3 and their counterparts in inches and acre-feet. */
  @Test
  void amountsInBothSystems() {
    ZonePlan zone = zone(Ranches.of(9).sar(3), DRAINED);
    Sentence s =
        Said.of(zone, DRAINED).stream()
            .filter(x -> x.code().equals("reclamation"))
            .findFirst()
            .orElseThrow();
    assertThat(s.text(UnitSystem.METRIC))
        .contains(" mm of water", " m\u00b3 over the zone", "90 cm");
    assertThat(s.text(UnitSystem.US))
        .contains(" in of water", " acre-feet over the zone", "35 in")
        .doesNotContain("mm", "cm");
  }
}
