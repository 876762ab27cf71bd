package fieldsalt.handover.output;

import fieldsalt.classes.ClassScheme;
import fieldsalt.facts.UsSalinityLaboratory1954.SoilClass;
import fieldsalt.handover.input.ZoneFeature;
import fieldsalt.handover.table.Rounding;
import fieldsalt.plan.zone.Digits;
import fieldsalt.plan.zone.GypsumPlan;
import fieldsalt.plan.zone.Reclamation;
import fieldsalt.plan.zone.SaltYears;
import fieldsalt.plan.zone.YieldOutlook;
import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.zones.field.Zone;
import fieldsalt.zones.sodicity.Sodicity;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Owner of the zones' columns: zones.geojson, layer {@code zones} of the GeoPackage, zones.shp. */
public final class ZonesOutput {
  private static final OutputColumns COLUMNS = OutputColumns.of("zones.geojson");

  private ZonesOutput() {}

  /**
   * What is known of a zone.
   *
   * @param ece whether ECe is mapped, not another property
   * @param mean of the zone, with the ends of its 90 % interval
   * @param chanceAbove mean chance over its points to be above the field's limit
   * @param bySodicity whether zones are divided by sodicity too
   * @param sodicity empty where sodium is not known
   * @param chanceSodic mean chance over its points; NaN where it is not known
   * @param plan empty where another property than ECe is mapped
   * @param machineRate of one pass in the machine file, t/ha; empty where there is none
   */
  public record Known(
      boolean ece,
      double low,
      double mean,
      double high,
      double chanceAbove,
      boolean bySodicity,
      Optional<Sodicity.OfZone> sodicity,
      double chanceSodic,
      Optional<ZonePlan> plan,
      OptionalDouble machineRate) {}

  /** A zone with all its figures; those that are not known are null. */
  public static ZoneFeature feature(Zone zone, ClassScheme scheme, Known known) {
    String name = known.ece ? "ece" : "value";
    Map<String, Object> figures =
        new LinkedHashMap<>(
            COLUMNS.figures(
                known.ece ? "ece_dS_m" : "value",
                Rounding.fourDigits(known.mean),
                name + "_low",
                Rounding.fourDigits(known.low),
                name + "_high",
                Rounding.fourDigits(known.high),
                "p_above",
                Rounding.fourDigits(known.chanceAbove)));
    if (known.bySodicity) {
      figures.putAll(sodicity(zone, scheme, known));
    }
    known.plan.ifPresent(plan -> figures.putAll(plan(plan)));
    known.machineRate.ifPresent(rate -> figures.putAll(COLUMNS.figures("rate_t_ha", rate)));
    boolean sodic = known.sodicity.map(Sodicity.OfZone::isSodic).orElse(false);
    return new ZoneFeature(zone, figures, scheme.labels().size(), sodic);
  }

  private static Map<String, Object> sodicity(Zone zone, ClassScheme scheme, Known known) {
    Optional<Sodicity.OfZone> of = known.sodicity;
    return COLUMNS.figures(
        "salinity",
        scheme.labels().get(zone.klass()),
        "sodicity",
        of.map(Sodicity.OfZone::label).orElse(null),
        "sodic_by",
        of.map(s -> s.by().property().label()).orElse(null),
        "sodic_mean",
        of.map(s -> Rounding.fourDigits(s.mean())).orElse(null),
        "sodic_low",
        of.map(s -> Rounding.fourDigits(s.low())).orElse(null),
        "sodic_high",
        of.map(s -> Rounding.fourDigits(s.high())).orElse(null),
        "p_sodic",
        of.map(s -> Rounding.fourDigits(known.chanceSodic)).orElse(null));
  }

  /** Figures of the plan; rates are product where the purity is given, else pure gypsum. */
  public static Map<String, Object> plan(ZonePlan plan) {
    Map<String, Object> figures = new LinkedHashMap<>();
    Optional<YieldOutlook> yield = plan.yield();
    figures.putAll(
        COLUMNS.figures(
            "situation",
            plan.situation().label(),
            "soil_class",
            plan.soilClass().map(SoilClass::label).orElse(null),
            "yield_pct",
            yield.map(y -> Digits.of(y.expectedPct(), 1)).orElse(null),
            "yield_low",
            yield.map(y -> Digits.of(y.pct().p10(), 1)).orElse(null),
            "yield_high",
            yield.map(y -> Digits.of(y.pct().p90(), 1)).orElse(null),
            "above_ha",
            yield.map(y -> Digits.of(y.areaAboveHa(), 2)).orElse(null)));
    figures.putAll(leaching(plan));
    figures.putAll(years(plan));
    figures.putAll(gypsum(plan));
    figures.putAll(
        COLUMNS.figures("first_step", plan.firstStep().label(), "draft", plan.draft().isDraft()));
    return figures;
  }

  private static Map<String, Object> leaching(ZonePlan plan) {
    Reclamation reclamation = plan.reclamation();
    return COLUMNS.figures(
        "leaching_requirement",
        Digits.orNull(plan.leaching().fraction(), 3),
        "leaching_status",
        plan.leaching().status().label(),
        "irrigation_mm",
        Digits.orNull(plan.leaching().grossMm(), 0),
        "leaching_mm",
        Digits.of(reclamation.plannedMm(), 1),
        "leaching_mm_needed",
        Digits.of(reclamation.mm().p50(), 1),
        "leaching_mm_low",
        Digits.of(reclamation.mm().p10(), 1),
        "leaching_mm_high",
        Digits.of(reclamation.mm().p90(), 1),
        "leaching_chance",
        Digits.of(reclamation.chance(), 2),
        "leaching_target_ece",
        Digits.of(reclamation.targetEce(), 2));
  }

  private static Map<String, Object> years(ZonePlan plan) {
    Optional<SaltYears> years = plan.years();
    return COLUMNS.figures(
        "ece_after_years",
        years.map(y -> Digits.of(y.last().mean(), 2)).orElse(null),
        "ece_after_years_untreated",
        years
            .map(y -> Digits.of(y.untreated().get(y.untreated().size() - 1).mean(), 2))
            .orElse(null),
        "ece_after_years_undrained",
        years.map(y -> Digits.of(y.undrained().mean(), 2)).orElse(null));
  }

  private static Map<String, Object> gypsum(ZonePlan plan) {
    GypsumPlan gypsum = plan.gypsum();
    boolean sized = gypsum.isSized();
    boolean known = gypsum.sources().esp().isKnown();
    return COLUMNS.figures(
        "esp_pct",
        known ? Digits.of(gypsum.esp().p50(), 1) : null,
        "gypsum_advice",
        gypsum.advice().label(),
        "gypsum_t_ha",
        sized ? Digits.of(plan.productTPerHa(), 2) : null,
        "gypsum_t_ha_needed",
        sized ? Digits.of(gypsum.product().p50(), 2) : null,
        "gypsum_t_ha_low",
        sized ? Digits.of(gypsum.product().p10(), 2) : null,
        "gypsum_t_ha_high",
        sized ? Digits.of(gypsum.product().p90(), 2) : null,
        "gypsum_chance",
        known ? Digits.of(gypsum.chance(), 2) : null,
        "gypsum_of",
        gypsum.productPerPure().isPresent() ? "product" : "pure gypsum",
        "gypsum_passes",
        plan.passes());
  }
}
