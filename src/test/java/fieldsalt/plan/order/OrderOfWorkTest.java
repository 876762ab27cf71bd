package fieldsalt.plan.order;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.basis.depth.ProfileShape;
import fieldsalt.plan.Changed;
import fieldsalt.plan.RanchPlan;
import fieldsalt.plan.Ranches;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.setting.WaterSettings;
import fieldsalt.plan.soil.FieldEvidence;
import fieldsalt.plan.zone.LeachingRequirement;
import fieldsalt.plan.zone.Situation;
import fieldsalt.plan.zone.Step;
import fieldsalt.plan.zone.ZonePlan;
import org.junit.jupiter.api.Test;

/** The worst fact decides the first step; limits are those of the published table. */
class OrderOfWorkTest {
  private static PlanSettings water(double ec) {
    return Changed.withWater(Ranches.drained(), Changed.withEc(WaterSettings.defaults(), ec));
  }

  /** US Salinity Laboratory Staff 1954: saline from 4 dS/m, sodic from ESP 15. */
  @Test
  void salineSodicFromFourDeciSiemens() {
    assertThat(situation(3.6)).isEqualTo(Situation.SODIC);
    assertThat(situation(4.2)).isEqualTo(Situation.SALINE_SODIC);
  }

  /** Barley stands 8 dS/m: only the table's limit can make such a zone saline. */
  private static Situation situation(double ece) {
    return Ranches.of(ece)
        .crop("barley")
        .sar(30)
        .plan(Ranches.drained())
        .zones()
        .get(0)
        .situation();
  }

  /**
   * Alfalfa under a water of 6 dS/m: its threshold plus 10 % loss is 3.37 dS/m, so the requirement
   * is 6/(5 x 3.37 - 6) = 0.55, above 0.50: not feasible, and nothing done to the soil helps.
   */
  @Test
  void aWaterThatTheCropCannotStandOutranksNothingToTreat() {
    RanchPlan plan = Ranches.of(1.2, 9).sar(3, 3).plan(water(6));
    assertThat(plan.fields().get(0).leaching().status())
        .isEqualTo(LeachingRequirement.Status.NOT_FEASIBLE);
    assertThat(plan.zones())
        .extracting(ZonePlan::firstStep)
        .containsOnly(Step.CHANGE_CROP_OR_WATER);
    assertThat(plan.zones().get(0).situation()).isEqualTo(Situation.FINE);
    assertThat(plan.zones().get(0).steps()).doesNotContain(Step.NOTHING);
  }

  /** 4.5/(5 x 3.37 - 4.5) = 0.36, above 0.30: rarely practicable, said before leaching. */
  @Test
  void aRequirementAboveThirtyPerCentOutranksLeaching() {
    RanchPlan plan = Ranches.of(9).sar(3).plan(water(4.5));
    assertThat(plan.zones().get(0).steps()).startsWith(Step.CHANGE_CROP_OR_WATER);
    assertThat(Ranches.of(9).sar(3).plan(water(1)).zones().get(0).steps())
        .startsWith(Step.LEACHING);
  }

  /** Salt that comes up from below shows in the profile before ECe is high everywhere. */
  @Test
  void anInvertedProfileIsToldInEveryZone() {
    RanchPlan plan =
        Ranches.of(1.2, 9)
            .sar(3, 3)
            .evidence(Changed.withProfile(FieldEvidence.firm(30), ProfileShape.INVERTED))
            .plan(Ranches.drained());
    assertThat(plan.zones()).extracting(ZonePlan::firstStep).containsOnly(Step.WATER_TABLE);
  }
}
