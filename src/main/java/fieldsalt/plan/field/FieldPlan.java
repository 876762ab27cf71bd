package fieldsalt.plan.field;

import fieldsalt.plan.draw.Odds;
import fieldsalt.plan.leaching.BoronNeed;
import fieldsalt.plan.leaching.SteadyState;
import fieldsalt.plan.soil.FieldGround;
import fieldsalt.plan.zone.Draft;
import fieldsalt.plan.zone.LeachingRequirement;
import fieldsalt.plan.zone.ZonePlan;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The plan of one field.
 *
 * @param ece mean of the field, dS/m, with the odds of its error
 * @param leaching the one requirement of its crop and water
 * @param steady what the water alone makes of the root zone; empty where its salinity is not known
 * @param boron where it was measured and the crop's tolerance is published
 * @param zones in the order given
 * @param gypsumT requirement of the zones that are to be treated, tonnes of product, with odds
 * @param plannedT tonnes of product that the rates add up to
 * @param unmetT tonnes wanted, where the machine's steps do not allow them to half a percent
 * @param leachingM3 water through the soil that the zones to be leached need, m3, with odds
 * @param comparison one rate against a rate by zone
 */
public record FieldPlan(
    FieldGround ground,
    Odds ece,
    LeachingRequirement leaching,
    Optional<SteadyState> steady,
    Optional<BoronNeed> boron,
    List<ZonePlan> zones,
    Odds gypsumT,
    double plannedT,
    OptionalDouble unmetT,
    Odds leachingM3,
    Comparison comparison,
    Draft draft) {
  public FieldPlan {
    zones = List.copyOf(zones);
  }

  public String field() {
    return ground.field();
  }

  /** Cubic metres of water through the soil that are planned: the sum of the zones' own. */
  public double plannedM3() {
    return zones.stream().mapToDouble(z -> z.reclamation().plannedM3(z.zone().areaHa())).sum();
  }

  public double areaHa() {
    return zones.stream().mapToDouble(z -> z.zone().areaHa()).sum();
  }
}
