package fieldsalt.plan.field;

import fieldsalt.plan.draw.Odds;
import fieldsalt.plan.soil.FieldGround;
import fieldsalt.plan.zone.Draft;
import fieldsalt.plan.word.Sentence;
import fieldsalt.plan.zone.LeachingRequirement;
import fieldsalt.plan.zone.ZonePlan;
import java.util.List;

/**
 * The plan of one field.
 *
 * @param leaching the one requirement of its crop and water
 * @param zones in the order given
 * @param gypsumT requirement of the zones that are to be treated, tonnes of product, with odds
 * @param plannedT tonnes of product that the rates add up to
 * @param leachingM3 planned water through the soil, m3, with odds
 * @param comparison one rate against a rate by zone
 * @param sentences of the whole field
 * @param cautions of the whole field
 */
public record FieldPlan(
    FieldGround ground,
    LeachingRequirement leaching,
    List<ZonePlan> zones,
    Odds gypsumT,
    double plannedT,
    Odds leachingM3,
    Comparison comparison,
    List<Sentence> sentences,
    List<Sentence> cautions,
    Draft draft) {
  public FieldPlan {
    zones = List.copyOf(zones);
    sentences = List.copyOf(sentences);
    cautions = List.copyOf(cautions);
  }

  public String field() {
    return ground.field();
  }

  public double areaHa() {
    return zones.stream().mapToDouble(z -> z.zone().areaHa()).sum();
  }
}
