package fieldsalt.plan;

import fieldsalt.finding.Finding;
import fieldsalt.plan.draw.Odds;
import fieldsalt.plan.field.CropYields;
import fieldsalt.plan.field.FieldPlan;
import fieldsalt.plan.gypsum.RateRow;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.zone.ZonePlan;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The plan of a ranch. Totals rest on futures in which the zones move together, as laboratories'
 * shared errors make them do.
 *
 * @param settings that it was made with
 * @param fields in the order given
 * @param crops every compared crop by zone, largest expected yield first; rating-only crops last
 * @param gypsumT requirement of the zones that are to be treated, tonnes of product, with odds
 * @param plannedT tonnes of product that the rates add up to
 * @param leachingM3 water through the soil that the zones to be leached need, m3, with odds
 * @param expectedCost of the plan by the user's prices; 0 without
 * @param expectedNet gain less cost where both are priced; 0 without
 * @param rates one a zone, for {@code rates.csv}
 */
public record RanchPlan(
    PlanSettings settings,
    List<FieldPlan> fields,
    List<CropYields> crops,
    Odds gypsumT,
    double plannedT,
    Odds leachingM3,
    double expectedCost,
    double expectedNet,
    List<RateRow> rates,
    List<Finding> findings) {
  public RanchPlan {
    fields = List.copyOf(fields);
    crops = List.copyOf(crops);
    rates = List.copyOf(rates);
    findings = List.copyOf(findings);
  }

  /** The plan of one field; crops stay with the ranch. */
  public Optional<RanchPlan> only(String field) {
    return fields.stream()
        .filter(f -> f.field().equals(field))
        .findFirst()
        .map(
            f ->
                new RanchPlan(
                    settings,
                    List.of(f),
                    List.of(),
                    f.gypsumT(),
                    f.plannedT(),
                    f.leachingM3(),
                    0,
                    0,
                    List.of(),
                    List.of()));
  }

  /** The settings of each field's plan. */
  public Map<String, PlanSettings> settingsByField() {
    return fields.stream().collect(Collectors.toMap(FieldPlan::field, f -> f.ground().settings()));
  }

  /** Cubic metres of water through the soil that are planned: the sum of the fields' own. */
  public double plannedM3() {
    return fields.stream().mapToDouble(FieldPlan::plannedM3).sum();
  }

  /** Every zone's plan, field by field. */
  public List<ZonePlan> zones() {
    return fields.stream().flatMap(f -> f.zones().stream()).toList();
  }
}
