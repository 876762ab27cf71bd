package fieldsalt.plan.word;

import static fieldsalt.quantity.Dimension.CONDUCTIVITY;
import static fieldsalt.quantity.Dimension.PURE;
import static fieldsalt.quantity.Dimension.RATE;

import fieldsalt.facts.Crop;
import fieldsalt.facts.InfiltrationHazard;
import fieldsalt.facts.SeedbedLimit;
import fieldsalt.facts.WaterLimit;
import fieldsalt.plan.setting.GroundSettings;
import fieldsalt.plan.setting.GypsumSettings;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.setting.WaterSettings;
import fieldsalt.plan.soil.FieldGround;
import fieldsalt.plan.soil.FieldSoil;
import fieldsalt.plan.zone.GypsumPlan;
import fieldsalt.plan.zone.GypsumPlan.Advice;
import fieldsalt.quantity.Measure;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Cautions that stand where the decision is made. */
final class Cautions {
  private final PlanSettings settings;

  Cautions(PlanSettings settings) {
    this.settings = settings;
  }

  /** Of a whole field. */
  List<Sentence> of(FieldGround field) {
    List<Sentence> said = new ArrayList<>();
    said.add(adviser());
    said.add(measuredOrNot(field.soil()));
    drainage().ifPresent(said::add);
    settings
        .water()
        .hazard()
        .filter(h -> h != InfiltrationHazard.NONE)
        .ifPresent(h -> said.add(sealing(h)));
    said.addAll(waterLimits());
    seedbed(field).ifPresent(said::add);
    field.crop().flatMap(c -> crop(c, field.soil())).ifPresent(said::add);
    if (field.evidence().topsoilOnly()) {
      said.add(
          Sentence.of(
              "topsoil-only",
              "Topsoil only: yields are an indication, the leaching plan is a draft."));
    }
    if (field.soil().isGypsiferous()) {
      said.add(
          Sentence.of(
              "gypsiferous",
              "Gypsum is confirmed in the soil: plants stand about {0} more than the table says, and"
                  + " thresholds are raised by it (Maas 1990).",
              Measure.of(2, CONDUCTIVITY)));
    }
    return said;
  }

  private static Sentence adviser() {
    return Sentence.of(
        "licensed-adviser",
        "This is a draft for a licensed adviser to sign before money is spent. The tables were made"
            + " on good stands, and yields are of the same crop on good ground. Local rules on"
            + " drainage water apply.");
  }

  private static Sentence measuredOrNot(FieldSoil soil) {
    String boron = soil.boronMgL().isPresent() ? "Boron was measured" : "Boron was not measured";
    String chloride =
        soil.chlorideMeqL().isPresent() ? "chloride was measured" : "chloride was not measured";
    return Sentence.of("boron-chloride", boron + "; " + chloride + ".");
  }

  private Optional<Sentence> drainage() {
    if (settings.ground().isProved()) {
      return Optional.empty();
    }
    String why =
        settings.ground().hasShallowTable()
            ? "The water table is near"
            : settings.ground().drainage() == GroundSettings.Drainage.POOR
                ? "Drainage is poor"
                : "Drainage is not proved";
    return Optional.of(
        Sentence.of(
            "drainage-first",
            why
                + ": leaching only after it is proved that water can leave. Leaching into a rising"
                + " water table brings the salt back."));
  }

  private static Sentence sealing(InfiltrationHazard hazard) {
    return Sentence.of(
        "infiltration-hazard",
        (hazard == InfiltrationHazard.SEVERE
                ? "This water seals the soil: hazard "
                : "This water may seal the soil: hazard ")
            + hazard.label()
            + " for its salt and sodium (FAO 29, table 1). Very pure leaching water on heavy clay"
            + " does the same.");
  }

  private List<Sentence> waterLimits() {
    List<Sentence> said = new ArrayList<>();
    WaterSettings water = settings.water();
    for (WaterLimit limit : WaterLimit.all()) {
      OptionalDouble value = value(limit.item());
      boolean above = value.isPresent() && value.getAsDouble() >= limit.slightFrom();
      if (above && limit.concerns(water.method().isOverhead())) {
        said.add(restriction(limit, value.getAsDouble()));
      }
    }
    return said;
  }

  private OptionalDouble value(String item) {
    WaterSettings water = settings.water();
    return switch (item) {
      case "ec" -> water.ecDsPerM();
      case "sar" -> water.sarKnown();
      case "na" -> water.ions().na();
      case "cl" -> water.ions().cl();
      case "b" -> water.ions().boronMgL();
      case "hco3" -> water.ions().hco3();
      default -> OptionalDouble.empty();
    };
  }

  private static Sentence restriction(WaterLimit limit, double value) {
    OptionalDouble severeAbove = limit.severeAbove();
    boolean severe = severeAbove.isPresent() && value > severeAbove.getAsDouble();
    return Sentence.of(
        "water-" + limit.item(),
        "The water's "
            + limit.label()
            + " of {0}"
            + (limit.unit().isEmpty() ? "" : " " + limit.unit())
            + " restricts its use "
            + (severe ? "severely" : "slightly to moderately")
            + " (FAO 29, table 1).",
        Measure.of(value, PURE));
  }

  private static Optional<Sentence> seedbed(FieldGround field) {
    OptionalDouble ece = field.evidence().seedbedEce();
    double limit = SeedbedLimit.dsPerM(field.crop());
    if (ece.isEmpty() || ece.getAsDouble() <= limit) {
      return Optional.empty();
    }
    return Optional.of(
        Sentence.of(
            "emergence",
            "The top layer of the samples averages ECe {0}, seedlings stand about {1}: if the seedbed"
                + " is as salty, expect gaps in the stand unless it is leached before sowing.",
            Measure.of(ece.getAsDouble(), CONDUCTIVITY),
            Measure.of(limit, CONDUCTIVITY)));
  }

  private static Optional<Sentence> crop(Crop crop, FieldSoil soil) {
    if (crop.isWoody()) {
      return Optional.of(
          Sentence.of(
              "rootstock-chloride",
              crop.name()
                  + ": the numbers hold for rootstocks that keep sodium and chloride out; leaf injury"
                  + " follows chloride"
                  + (soil.chlorideMeqL().isPresent()
                      ? ", which was measured here."
                      : ", so have it measured.")));
    }
    if (crop.isFlooded()) {
      return Optional.of(
          Sentence.of(
              "rice-soil-water",
              "Rice: the table means the soil water while flooded, and seedlings stand less."));
    }
    return Optional.empty();
  }

  /** Of one zone's gypsum. */
  List<Sentence> of(GypsumPlan plan) {
    if (plan.advice() != Advice.RECOMMENDED) {
      return List.of();
    }
    List<Sentence> said = new ArrayList<>();
    said.add(
        Sentence.of(
            "incorporate",
            "Work it in as near to the sodic layer as you can; left on the surface no more than {0}"
                + " a pass.",
            Measure.of(GypsumSettings.SURFACE_CAP_T_HA, RATE)));
    if (plan.productPerPure().isEmpty()) {
      said.add(
          Sentence.of(
              "purity-asked",
              "Amounts are of pure gypsum: ask the supplier for purity and moisture (keys gypsum:"
                  + " purity-pct, moisture-pct) before you order."));
    }
    said.add(
        GypsumWords.equivalents(
            plan.wantedProduct() / plan.productPerPure().orElse(1), settings.gypsum().lime()));
    return said;
  }
}
