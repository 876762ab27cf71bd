package fieldsalt.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.facts.GypsumStoichiometry;
import fieldsalt.facts.UsSalinityLaboratory1954;
import fieldsalt.handover.output.ZonesOutput;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.soil.FieldEvidence;
import fieldsalt.plan.soil.FieldSoil;
import fieldsalt.plan.word.Sentence;
import fieldsalt.plan.zone.GypsumPlan.Advice;
import fieldsalt.plan.zone.Situation;
import fieldsalt.plan.zone.Step;
import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.quantity.Texture;
import fieldsalt.quantity.UnitSystem;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class PlannerTest {
  private static List<String> codes(List<Sentence> sentences) {
    return sentences.stream().map(Sentence::code).toList();
  }

  /** One crop and one water: one leaching requirement, however salty a zone is. */
  @Test
  void oneLeachingRequirementForAllZones() {
    RanchPlan plan = Ranches.of(1.5, 6, 14).plan(Ranches.drained());
    OptionalDouble lr = plan.fields().get(0).leaching().fraction();
    double tolerable = 2 + 10 / 7.3;
    assertThat(lr.orElseThrow()).isCloseTo(1 / (5 * tolerable - 1), within(1e-12));
    assertThat(plan.zones())
        .hasSize(3)
        .allSatisfy(z -> assertThat(z.leaching().fraction()).isEqualTo(lr));
    assertThat(plan.zones().get(2).reclamation().plannedMm())
        .as("what differs by zone is the one-off reclamation")
        .isGreaterThan(plan.zones().get(1).reclamation().plannedMm() * 2);
    assertThat(plan.zones().get(0).reclamation().plannedMm()).isZero();
  }

  @Test
  void onlyGypsumThatIsSpreadIsWateredIn() {
    FieldSoil loam = FieldSoil.unknown().withTexture(Texture.LOAM);
    Ranches sodic = Ranches.of(2).sar(25);
    assertThat(sodic.soil(loam).plan(Ranches.drained()).zones().get(0).steps())
        .contains(Step.GYPSUM, Step.WATER_IN);
    assertThat(sodic.soil(FieldSoil.unknown()).plan(Ranches.drained()).zones().get(0).steps())
        .containsExactly(Step.MEASURE_CEC);
  }

  @Test
  void aSodicZoneNeverShowsLeachingFirst() {
    for (Texture texture : List.of(Texture.SAND, Texture.LOAM, Texture.CLAY, Texture.UNKNOWN)) {
      for (double gypsum : new double[] {0, 5}) {
        FieldSoil soil = Changed.withGypsumPct(FieldSoil.unknown().withTexture(texture), gypsum);
        RanchPlan plan = Ranches.of(2, 9, 15).sar(25, 25, 13.5).soil(soil).plan(Ranches.drained());
        assertThat(plan.zones())
            .allSatisfy(
                z -> {
                  assertThat(z.situation().isSodic()).isTrue();
                  assertThat(z.firstStep()).isNotIn(Step.LEACHING, Step.WATER_IN, Step.NOTHING);
                });
      }
    }
  }

  @Test
  void noTonnesWhereTextureAndCecAreUnknown() {
    ZonePlan zone =
        Ranches.of(6).sar(25).soil(FieldSoil.unknown()).plan(Ranches.drained()).zones().get(0);
    assertThat(zone.gypsum().advice()).isEqualTo(Advice.MEASURE_CEC);
    assertThat(zone.productTPerHa()).isZero();
    assertThat(ZonesOutput.plan(zone)).containsEntry("gypsum_t_ha", null);
    assertThat(codes(Said.of(zone, Ranches.drained()))).contains("measure-cec");
    assertThat(zone.steps()).startsWith(Step.MEASURE_CEC);
  }

  /** The five situations each lead to their sentence. */
  @Test
  void fiveSituationsFiveSentences() {
    PlanSettings settings = Ranches.drained();
    RanchPlan plan = Ranches.of(8, 8, 2, 1).sar(3, 30, 30, 3).plan(settings);
    assertThat(plan.zones())
        .extracting(ZonePlan::situation)
        .containsExactly(Situation.SALINE, Situation.SALINE_SODIC, Situation.SODIC, Situation.FINE);
    assertThat(codes(Said.of(plan.zones().get(0), settings))).contains("saline", "no-gypsum");
    assertThat(codes(Said.of(plan.zones().get(1), settings))).contains("saline-sodic", "gypsum");
    assertThat(codes(Said.of(plan.zones().get(2), settings)))
        .contains("sodic", "gypsum", "gypsum-sources");
    assertThat(codes(Said.of(plan.zones().get(3), settings))).contains("fine");
    RanchPlan flat =
        Ranches.of(8)
            .sar(3)
            .evidence(Changed.withNoBetterThanMean(FieldEvidence.firm(30), true))
            .plan(settings);
    assertThat(codes(Said.ofFirstField(flat))).contains("map-no-better-than-mean");
    assertThat(flat.fields().get(0).draft().isDraft()).isTrue();
    assertThat(plan.fields().get(0).draft().isDraft()).isFalse();
  }

  @Test
  void stepsStandInOrder() {
    PlanSettings undrained = PlanSettings.defaults();
    ZonePlan zone = Ranches.of(9).sar(25).plan(undrained).zones().get(0);
    assertThat(zone.steps()).containsExactly(Step.DRAINAGE, Step.GYPSUM, Step.LEACHING);
    ZonePlan unknown = Ranches.of(9).plan(undrained).zones().get(0);
    assertThat(unknown.steps()).containsExactly(Step.DRAINAGE, Step.MEASURE_SODIUM, Step.LEACHING);
    ZonePlan drained = Ranches.of(9).sar(3).plan(Ranches.drained()).zones().get(0);
    assertThat(drained.steps()).containsExactly(Step.LEACHING);
  }

  /** The middle of the requirement is the formula at the middle of what it hangs on. */
  @Test
  void theMiddleOfTheRequirementIsTheFormula() {
    ZonePlan zone = Ranches.of(6).esp(25).cec(20).plan(Ranches.drained()).zones().get(0);
    double formula = GypsumStoichiometry.requirement(1.2, 0.15, 1.35, 20, 25, 10);
    assertThat(zone.gypsum().pure().p50()).isCloseTo(formula, within(0.02 * formula));
    assertThat(zone.gypsum().pure().p10()).isLessThan(0.85 * formula);
    assertThat(zone.gypsum().pure().p90()).isGreaterThan(1.15 * formula);
    assertThat(zone.gypsum().chance()).isGreaterThan(0.99);
    assertThat(zone.soilClass()).hasValue(UsSalinityLaboratory1954.SoilClass.SALINE_SODIC);
  }

  @Test
  void everyFigureIsFiniteAndTextReadsInBothSystems() {
    for (String crop : new String[] {"alfalfa", "safflower", ""}) {
      RanchPlan plan =
          Ranches.of(0.3, 3, 40).crop(crop).sar(0.2, 14, 90).plan(PlanSettings.defaults());
      for (ZonePlan zone : plan.zones()) {
        ZonesOutput.plan(zone)
            .forEach(
                (name, value) -> {
                  if (value instanceof Double number) {
                    assertThat(number).as(name).isFinite();
                  }
                });
        for (Sentence s : Said.of(zone, plan.settings())) {
          assertThat(s.text(UnitSystem.METRIC)).doesNotContain("{", "NaN", "Infinity");
          assertThat(s.text(UnitSystem.US)).doesNotContain(" t/ha", " mm", " ha");
        }
      }
    }
  }

  @Test
  void sameInputSamePlan() {
    PlanSettings settings = Ranches.drained();
    assertThat(Ranches.of(3, 9).sar(5, 20).plan(settings).toString())
        .isEqualTo(Ranches.of(3, 9).sar(5, 20).plan(settings).toString());
  }
}
