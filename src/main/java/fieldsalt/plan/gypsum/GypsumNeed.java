package fieldsalt.plan.gypsum;

import static fieldsalt.quantity.Dimension.COUNT;
import static fieldsalt.quantity.Dimension.PERCENT;
import static fieldsalt.quantity.Dimension.RATE;
import static fieldsalt.quantity.Dimension.SOIL_DEPTH;
import static fieldsalt.quantity.Dimension.WATER_DEPTH;

import fieldsalt.facts.GypsumStoichiometry;
import fieldsalt.facts.InfiltrationHazard;
import fieldsalt.facts.UsSalinityLaboratory1954;
import fieldsalt.plan.draw.Draws;
import fieldsalt.plan.draw.Middle;
import fieldsalt.plan.draw.Odds;
import fieldsalt.plan.setting.GroundSettings.Drainage;
import fieldsalt.plan.setting.GypsumSettings;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.soil.FieldSoil;
import fieldsalt.plan.soil.SoilDraws;
import fieldsalt.plan.word.Sentence;
import fieldsalt.plan.zone.GypsumPlan;
import fieldsalt.plan.zone.GypsumPlan.Advice;
import fieldsalt.plan.zone.GypsumPlan.Sources;
import fieldsalt.quantity.Measure;
import fieldsalt.quantity.TextureGroup;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Works out the gypsum of a zone: gates, requirement, what stands in the way. */
public final class GypsumNeed {
  /** From here sodium may harm fine soil where the water seals it, ESP percent. */
  static final double CONSIDER_ESP_PCT = 6;

  /** Layers whose requirement stands beside that of the layer asked for, cm. */
  private static final double SHALLOW_CM = 15;

  private static final double DEEP_CM = 30;

  private final PlanSettings settings;
  private final SoilDraws draws;

  public GypsumNeed(PlanSettings settings, SoilDraws draws) {
    this.settings = settings;
    this.draws = draws;
  }

  /** Target ESP: as set, never below the ESP that the water's own SAR keeps. */
  double target() {
    return Math.max(settings.gypsum().targetEspPct(), espOfWater());
  }

  private double espOfWater() {
    OptionalDouble sar = settings.water().sarKnown();
    return sar.isPresent() ? UsSalinityLaboratory1954.espFromSar(sar.getAsDouble()) : 0;
  }

  /** How far the water seals the soil; empty where its EC or SAR is not known. */
  public Optional<InfiltrationHazard> hazard() {
    OptionalDouble sar = settings.water().sarKnown();
    OptionalDouble ec = settings.water().ecDsPerM();
    return sar.isPresent() && ec.isPresent()
        ? Optional.of(InfiltrationHazard.of(sar.getAsDouble(), ec.getAsDouble()))
        : Optional.empty();
  }

  /** The futures of the requirement in a zone, t/ha of pure gypsum, less what the soil holds. */
  public double[] pure(int zone, FieldSoil soil) {
    return pure(zone, soil, settings.gypsum().depthCm() / 100);
  }

  private double[] pure(int zone, FieldSoil soil, double depthM) {
    double target = target();
    double factor = GypsumStoichiometry.factor(target);
    double[] esp = draws.esp().values()[zone];
    double[] cec = draws.cec().values()[zone];
    double[] density = draws.bulkDensity().values()[zone];
    double own = soil.gypsumPct().orElse(0);
    double[] out = new double[Draws.COUNT];
    for (int d = 0; d < out.length; d++) {
      double asked =
          GypsumStoichiometry.requirement(
              factor, depthM, density[d], cec[d], Math.min(100, esp[d]), target);
      double held = GypsumStoichiometry.nativeGypsum(own, depthM, density[d]);
      out[d] = Math.max(0, asked - held);
    }
    return out;
  }

  /** Chance that ESP is at or above 15, or SAR at or above 13 where ESP was worked out from it. */
  private double chanceSodic(int zone) {
    boolean bySar = draws.esp().known().get(zone).workedOut();
    return bySar
        ? Draws.share(draws.sar().values()[zone], x -> x >= UsSalinityLaboratory1954.SODIC_SAR)
        : Draws.share(draws.esp().values()[zone], x -> x >= UsSalinityLaboratory1954.SODIC_ESP_PCT);
  }

  public GypsumPlan of(int zone, FieldSoil soil, List<String> sitesToMeasure) {
    Sources sources =
        new Sources(
            draws.esp().known().get(zone),
            draws.cec().known().get(zone),
            draws.bulkDensity().known().get(zone));
    if (!draws.esp().has(zone)) {
      return bare(Advice.MEASURE_SODIUM, Odds.none(), 0, sources, measureSodium(sitesToMeasure));
    }
    double[] esp = draws.esp().values()[zone];
    double chance = chanceSodic(zone);
    boolean sodic = chance >= settings.money().actAbove();
    boolean consider = !sodic && isConsidered(esp, soil);
    if (!sodic && !consider) {
      return notNeeded(zone, esp, chance, soil, sources);
    }
    if (!draws.cec().has(zone)) {
      return bare(Advice.MEASURE_CEC, Odds.of(esp), chance, sources, measureCec(Odds.of(esp)));
    }
    return sized(zone, soil, sodic, chance, sources);
  }

  private boolean isConsidered(double[] esp, FieldSoil soil) {
    boolean seals = hazard().filter(h -> h != InfiltrationHazard.NONE).isPresent();
    boolean fine = soil.texture().group() == TextureGroup.FINE;
    double likely = Draws.share(esp, x -> x >= CONSIDER_ESP_PCT);
    boolean water = seals || settings.water().isUnknown();
    return water && fine && likely >= settings.money().actAbove();
  }

  private GypsumPlan bare(
      Advice advice, Odds esp, double chance, Sources sources, Sentence... said) {
    double target = target();
    return new GypsumPlan(
        advice,
        esp,
        chance,
        Odds.none(),
        target,
        GypsumStoichiometry.factor(target),
        0,
        productPerPure(),
        0,
        sources,
        List.of(said));
  }

  private GypsumPlan notNeeded(
      int zone, double[] esp, double chance, FieldSoil soil, Sources sources) {
    Odds odds = Odds.of(esp);
    Sentence why =
        Sentence.of(
            "no-gypsum",
            "No gypsum: ESP is about {0}, below 15; the chance that it is needed is {1}.",
            odds.measure(PERCENT),
            Measure.of(100 * chance, PERCENT));
    GypsumPlan plan = bare(Advice.NOT_NEEDED, odds, chance, sources, why);
    return draws.cec().has(zone) ? withOdds(plan, pure(zone, soil)) : plan;
  }

  private static GypsumPlan withOdds(GypsumPlan plan, double[] pure) {
    return new GypsumPlan(
        plan.advice(),
        plan.esp(),
        plan.chance(),
        Odds.of(pure),
        plan.targetEspPct(),
        plan.factor(),
        plan.wantedProduct(),
        plan.productPerPure(),
        plan.waterToDissolveMm(),
        plan.sources(),
        plan.sentences());
  }

  private OptionalDouble productPerPure() {
    GypsumSettings gypsum = settings.gypsum();
    return gypsum.purityPct().isPresent()
        ? OptionalDouble.of(
            GypsumStoichiometry.product(1, gypsum.purityPct().getAsDouble(), gypsum.moisturePct()))
        : OptionalDouble.empty();
  }

  private GypsumPlan sized(
      int zone, FieldSoil soil, boolean sodic, double chance, Sources sources) {
    double[] pure = pure(zone, soil);
    double needed = Draws.share(pure, x -> x > 0);
    double middle = needed < settings.money().actAbove() ? 0 : Middle.ofPositive(pure);
    double wanted = middle * productPerPure().orElse(1);
    Odds esp = Odds.of(draws.esp().values()[zone]);
    Advice advice = advice(sodic, Odds.of(pure), needed, wanted, soil);
    double planned = advice == Advice.RECOMMENDED ? wanted : 0;
    double target = target();
    GypsumPlan plan =
        new GypsumPlan(
            advice,
            esp,
            chance,
            Odds.of(pure),
            target,
            GypsumStoichiometry.factor(target),
            planned,
            productPerPure(),
            middle * GypsumStoichiometry.DISSOLVING_MM_PER_T_HA,
            sources,
            List.of());
    return plan.with(advice, planned, told(plan, middle, soil, zone));
  }

  private Advice advice(boolean sodic, Odds pure, double needed, double wanted, FieldSoil soil) {
    if (soil.gypsumPct().isPresent() && pure.p50() <= 0 && soil.gypsumPct().getAsDouble() > 0) {
      return Advice.OWN_GYPSUM;
    }
    if (!sodic) {
      return Advice.CONSIDER;
    }
    if (needed < settings.money().actAbove()) {
      return Advice.AT_TARGET;
    }
    if (settings.ground().drainage() == Drainage.POOR) {
      return Advice.NO_DRAINAGE;
    }
    return wanted < settings.gypsum().minTPerHa() ? Advice.BELOW_SMALLEST : Advice.RECOMMENDED;
  }

  private static Sentence measureSodium(List<String> sites) {
    String where =
        sites.isEmpty() ? "on samples of this zone" : "on these sites: " + String.join(", ", sites);
    return Sentence.of(
        "measure-sodium",
        "No gypsum is planned: nothing is known of sodium here. Measure SAR of the saturated paste "
            + where
            + ".");
  }

  private static Sentence measureCec(Odds esp) {
    return Sentence.of(
        "measure-cec",
        "Sodium asks for treatment (ESP about {0}), but neither CEC nor texture is known: no tonnes"
            + " can be given. Measure CEC, or at least the texture.",
        esp.measure(PERCENT));
  }

  private List<Sentence> told(GypsumPlan plan, double middle, FieldSoil soil, int zone) {
    List<Sentence> said = new ArrayList<>();
    said.add(GypsumWords.verdict(plan, middle, settings));
    if (plan.advice() == Advice.OWN_GYPSUM || plan.advice() == Advice.AT_TARGET || middle <= 0) {
      return said;
    }
    double otherCm = settings.gypsum().depthCm() < DEEP_CM ? DEEP_CM : SHALLOW_CM;
    double other = Middle.ofPositive(pure(zone, soil, otherCm / 100));
    said.add(
        Sentence.of(
            "gypsum-other-depth",
            "Over {0} of soil it would be {1}.",
            Measure.of(otherCm, SOIL_DEPTH),
            Measure.of(other * plan.productPerPure().orElse(1), RATE)));
    if (plan.targetEspPct() > settings.gypsum().targetEspPct()) {
      said.add(
          Sentence.of(
              "target-held-by-water",
              "The water itself keeps ESP at about {0}: less cannot be reached with it, so that is"
                  + " the target.",
              Measure.of(plan.targetEspPct(), PERCENT)));
    }
    said.add(
        Sentence.of(
            "water-to-dissolve",
            "At most {0} of water dissolves it (pure water; sodic soil takes less), and leaching"
                + " follows.",
            Measure.of(plan.waterToDissolveMm(), WATER_DEPTH)));
    soil.laboratoryRequirement()
        .ifPresent(
            t ->
                said.add(
                    Sentence.of(
                        "laboratory-requirement",
                        "The laboratory's own requirement averages {0} over the field; it may count"
                            + " soluble carbonate too.",
                        Measure.of(t, RATE))));
    said.add(
        Sentence.of(
            "gypsum-sources",
            "Rests on {0} sodium samples (ESP: "
                + plan.sources().esp().source().label()
                + "); CEC: "
                + plan.sources().cec().source().label()
                + "; bulk density: "
                + plan.sources().bulkDensity().source().label()
                + ".",
            Measure.of(plan.sources().esp().sites(), COUNT)));
    return said;
  }
}
