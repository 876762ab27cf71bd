package fieldsalt.plan.order;

import fieldsalt.basis.depth.ProfileShape;
import fieldsalt.facts.UsSalinityLaboratory1954;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.soil.FieldGround;
import fieldsalt.plan.zone.GypsumPlan;
import fieldsalt.plan.zone.GypsumPlan.Advice;
import fieldsalt.plan.zone.LeachingRequirement;
import fieldsalt.plan.zone.Reclamation;
import fieldsalt.plan.zone.Situation;
import fieldsalt.plan.zone.Step;
import java.util.ArrayList;
import java.util.List;

/** Names the situation of a zone and puts the work in order. */
final class OrderOfWork {
  private final PlanSettings settings;

  OrderOfWork(PlanSettings settings) {
    this.settings = settings;
  }

  Situation situation(Reclamation salt, double meanEce, GypsumPlan gypsum) {
    boolean salty =
        salt.chance() >= settings.money().actAbove() || salt.status() == Reclamation.Status.NEEDED;
    if (gypsum.isSodic()) {
      boolean saline = salty || meanEce >= UsSalinityLaboratory1954.SALINE_DS_M;
      return saline ? Situation.SALINE_SODIC : Situation.SODIC;
    }
    if (!salty) {
      return Situation.FINE;
    }
    return gypsum.advice() == Advice.MEASURE_SODIUM
        ? Situation.SALINE_SODIUM_UNKNOWN
        : Situation.SALINE;
  }

  /**
   * What to do, the worst first: salt that rises comes before all, and a water under which the crop
   * cannot be leached before anything that is done to the soil, in zones that are fine too.
   */
  List<Step> steps(
      Situation situation,
      FieldGround field,
      LeachingRequirement water,
      Reclamation salt,
      GypsumPlan gypsum) {
    List<Step> steps = new ArrayList<>();
    if (field.evidence().profile() == ProfileShape.INVERTED) {
      steps.add(Step.WATER_TABLE);
    }
    if (water.status() == LeachingRequirement.Status.NOT_FEASIBLE
        || water.status() == LeachingRequirement.Status.RARELY_PRACTICABLE) {
      steps.add(Step.CHANGE_CROP_OR_WATER);
    }
    if (situation == Situation.FINE) {
      if (gypsum.advice() == Advice.CONSIDER && gypsum.middlePure() > 0) {
        steps.add(Step.TEST_STRIP);
      }
      return steps.isEmpty() ? List.of(Step.NOTHING) : List.copyOf(steps);
    }
    if (!settings.ground().isProved()) {
      steps.add(Step.DRAINAGE);
    }
    if (situation == Situation.SALINE_SODIUM_UNKNOWN) {
      steps.add(Step.MEASURE_SODIUM);
    }
    if (situation.isSodic()) {
      steps.addAll(sodium(gypsum));
    }
    steps.addAll(leaching(salt, steps.contains(Step.GYPSUM)));
    return steps.isEmpty() ? List.of(Step.NOTHING) : steps.stream().distinct().toList();
  }

  private static List<Step> sodium(GypsumPlan gypsum) {
    return switch (gypsum.advice()) {
      case MEASURE_CEC -> List.of(Step.MEASURE_CEC);
      case OWN_GYPSUM -> List.of(Step.CONFIRM_OWN_GYPSUM);
      case AT_TARGET -> List.of(Step.CHANGE_CROP_OR_WATER);
      case BELOW_SMALLEST -> List.of(Step.MEASURE_SODIUM);
      case DOES_NOT_PAY -> List.of(Step.TEST_STRIP);
      default -> List.of(Step.GYPSUM);
    };
  }

  private static List<Step> leaching(Reclamation salt, boolean gypsum) {
    return switch (salt.status()) {
      case NEEDED -> List.of(Step.LEACHING);
      case TARGET_OUT_OF_REACH, DOES_NOT_PAY -> List.of(Step.CHANGE_CROP_OR_WATER);
      case NOT_NEEDED -> gypsum ? List.of(Step.WATER_IN) : List.of();
    };
  }
}
