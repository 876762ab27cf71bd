package fieldsalt.plan.zone;

import fieldsalt.facts.UsSalinityLaboratory1954.SoilClass;
import fieldsalt.plan.draw.Odds;
import fieldsalt.quantity.Measure;
import fieldsalt.zones.field.Zone;
import java.util.List;
import java.util.Optional;

/**
 * The plan of one zone.
 *
 * @param ece zone mean, dS/m, with the odds of its error
 * @param meanEce its mean with the ends of its 90 % interval
 * @param soilClass of Handbook 60, where sodium is known
 * @param yield empty where the crop has no numbers or none is given
 * @param productTPerHa gypsum product in all passes after the machine's steps; 0 where none
 * @param steps what to do, first to last; at least one
 * @param years salt of the root zone season by season; empty where the water or what passes the
 *     soil is not known
 * @param money outlooks of gypsum and leaching, where prices allow
 */
public record ZonePlan(
    Zone zone,
    Odds ece,
    Measure meanEce,
    Situation situation,
    Optional<SoilClass> soilClass,
    Optional<YieldOutlook> yield,
    LeachingRequirement leaching,
    Reclamation reclamation,
    GypsumPlan gypsum,
    double productTPerHa,
    int passes,
    List<Step> steps,
    Optional<SaltYears> years,
    List<MoneyOutlook> money,
    Draft draft) {
  public ZonePlan {
    steps = List.copyOf(steps);
    money = List.copyOf(money);
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

  /** Outlooks of what is planned; what is not to be done costs nothing and brings nothing. */
  public List<MoneyOutlook> plannedMoney() {
    return money.stream()
        .filter(
            m ->
                m.of() == MoneyOutlook.Treated.GYPSUM
                    ? productTPerHa > 0
                    : reclamation.plannedMm() > 0)
        .toList();
  }

  /** Tonnes of gypsum product. */
  public double productT() {
    return productTPerHa * zone.areaHa();
  }
}
