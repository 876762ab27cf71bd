package fieldsalt.plan.zone;

import fieldsalt.facts.UsSalinityLaboratory1954.SoilClass;
import fieldsalt.plan.draw.Odds;
import fieldsalt.plan.word.Sentence;
import fieldsalt.zones.field.Zone;
import java.util.List;
import java.util.Optional;

/**
 * The plan of one zone.
 *
 * @param ece zone mean, dS/m, with the odds of its error
 * @param soilClass of Handbook 60, where sodium is known
 * @param yield empty where the crop has no numbers or none is given
 * @param productTPerHa gypsum product in all passes after the machine's steps; 0 where none
 * @param steps what to do, first to last; at least one
 * @param money outlooks of gypsum and leaching, where prices allow
 * @param sentences what, why and how sure
 * @param cautions beside the numbers
 */
public record ZonePlan(
    Zone zone,
    Odds ece,
    Situation situation,
    Optional<SoilClass> soilClass,
    Optional<YieldOutlook> yield,
    LeachingRequirement leaching,
    Reclamation reclamation,
    GypsumPlan gypsum,
    double productTPerHa,
    int passes,
    List<Step> steps,
    List<MoneyOutlook> money,
    List<Sentence> sentences,
    List<Sentence> cautions,
    Draft draft) {
  public ZonePlan {
    steps = List.copyOf(steps);
    money = List.copyOf(money);
    sentences = List.copyOf(sentences);
    cautions = List.copyOf(cautions);
  }

  public Step firstStep() {
    return steps.get(0);
  }

  /**
   * Whether its rate is given to a machine: something is spread, and the plan is no draft.
   *
   * @param drafts whether drafts go too
   */
  public boolean goesToMachine(boolean drafts) {
    return passes > 0 && (drafts || !draft.isDraft());
  }

  /** Tonnes of gypsum product. */
  public double productT() {
    return productTPerHa * zone.areaHa();
  }
}
