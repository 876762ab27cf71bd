package fieldsalt.plan.zone;

import fieldsalt.facts.UsSalinityLaboratory1954.SoilClass;
import fieldsalt.plan.draw.Odds;
import fieldsalt.plan.word.Digits;
import fieldsalt.plan.word.Draft;
import fieldsalt.plan.word.Sentence;
import fieldsalt.plan.word.Situation;
import fieldsalt.plan.word.Step;
import fieldsalt.zones.field.Zone;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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

  /**
   * The plan's figures for {@code zones.geojson} and other files: name to number, text, boolean or
   * null where a figure is not known; metric. Rates are product where the purity is given, else
   * pure gypsum, as {@code gypsum_of} says.
   */
  public Map<String, Object> toProperties() {
    Map<String, Object> p = new LinkedHashMap<>();
    p.put("situation", situation.label());
    p.put("soil_class", soilClass.map(SoilClass::label).orElse(null));
    p.put("yield_pct", yield.map(y -> Digits.of(y.expectedPct(), 1)).orElse(null));
    p.put("yield_low", yield.map(y -> Digits.of(y.pct().p10(), 1)).orElse(null));
    p.put("yield_high", yield.map(y -> Digits.of(y.pct().p90(), 1)).orElse(null));
    p.put("above_ha", yield.map(y -> Digits.of(y.areaAboveHa(), 2)).orElse(null));
    putLeaching(p);
    putGypsum(p);
    p.put("first_step", firstStep().label());
    p.put("draft", draft.isDraft());
    return p;
  }

  private void putLeaching(Map<String, Object> p) {
    p.put("leaching_requirement", Digits.orNull(leaching.fraction(), 3));
    p.put("leaching_status", leaching.status().label());
    p.put("irrigation_mm", Digits.orNull(leaching.grossMm(), 0));
    p.put("leaching_mm", Digits.of(reclamation.plannedMm(), 0));
    p.put("leaching_mm_low", Digits.of(reclamation.mm().p10(), 0));
    p.put("leaching_mm_high", Digits.of(reclamation.mm().p90(), 0));
    p.put("leaching_chance", Digits.of(reclamation.chance(), 2));
    p.put("leaching_target_ece", Digits.of(reclamation.targetEce(), 2));
  }

  private void putGypsum(Map<String, Object> p) {
    boolean sized = gypsum.isSized();
    boolean known = gypsum.sources().esp().isKnown();
    p.put("esp_pct", known ? Digits.of(gypsum.esp().p50(), 1) : null);
    p.put("gypsum_advice", gypsum.advice().label());
    p.put("gypsum_t_ha", sized ? Digits.of(productTPerHa, 2) : null);
    p.put("gypsum_t_ha_low", sized ? Digits.of(gypsum.product().p10(), 2) : null);
    p.put("gypsum_t_ha_high", sized ? Digits.of(gypsum.product().p90(), 2) : null);
    p.put("gypsum_chance", known ? Digits.of(gypsum.chance(), 2) : null);
    p.put("gypsum_of", gypsum.productPerPure().isPresent() ? "product" : "pure gypsum");
    p.put("gypsum_passes", passes);
  }
}
