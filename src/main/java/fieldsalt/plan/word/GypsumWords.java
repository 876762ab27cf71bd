package fieldsalt.plan.word;

import static fieldsalt.quantity.Dimension.COUNT;
import static fieldsalt.quantity.Dimension.PERCENT;
import static fieldsalt.quantity.Dimension.RATE;
import static fieldsalt.quantity.Dimension.SOIL_DEPTH;
import static fieldsalt.quantity.Dimension.WATER_DEPTH;

import fieldsalt.facts.Amendment;
import fieldsalt.plan.gypsum.Passes;
import fieldsalt.plan.setting.GypsumSettings;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.zone.GypsumPlan;
import fieldsalt.plan.zone.GypsumPlan.Sources;
import fieldsalt.quantity.Measure;
import java.util.ArrayList;
import java.util.List;

/** What is said of the gypsum of a zone. */
final class GypsumWords {
  private final PlanSettings settings;

  GypsumWords(PlanSettings settings) {
    this.settings = settings;
  }

  /** The verdict, and where there is an amount what it rests on. */
  List<Sentence> of(GypsumPlan plan) {
    List<Sentence> said = new ArrayList<>(List.of(verdict(plan)));
    boolean amount =
        switch (plan.advice()) {
          case RECOMMENDED, DOES_NOT_PAY, CONSIDER, NO_DRAINAGE, BELOW_SMALLEST ->
              plan.middlePure() > 0;
          case NOT_NEEDED, OWN_GYPSUM, AT_TARGET, MEASURE_SODIUM, MEASURE_CEC -> false;
        };
    if (amount) {
      said.add(otherDepth(plan));
      if (plan.targetEspPct() > settings.gypsum().targetEspPct()) {
        said.add(heldByWater(plan));
      }
      said.add(waterToDissolve(plan));
      plan.laboratoryRequirement().ifPresent(t -> said.add(laboratory(t)));
      said.add(sources(plan.sources()));
    }
    return said;
  }

  private Sentence verdict(GypsumPlan plan) {
    Measure rate = rate(plan);
    Measure esp = plan.esp().measure(PERCENT);
    Measure chance = Measure.of(100 * plan.chance(), PERCENT);
    Measure depth = Measure.of(settings.gypsum().depthCm(), SOIL_DEPTH);
    return switch (plan.advice()) {
      case RECOMMENDED, DOES_NOT_PAY ->
          Sentence.of(
              "gypsum",
              "Gypsum about {0} "
                  + product(plan)
                  + " in the top {1}"
                  + passes(plan)
                  + ": ESP about {2}, chance that it is needed {3}.",
              rate,
              depth,
              esp,
              chance);
      case CONSIDER -> consider(plan);
      case NOT_NEEDED ->
          Sentence.of(
              "no-gypsum",
              "No gypsum: ESP is about {0}, below 15; the chance that it is needed is {1}.",
              esp,
              chance);
      case AT_TARGET ->
          Sentence.of(
              "gypsum-at-target",
              "No gypsum: ESP about {0} is not above the {1} that can be reached with this water;"
                  + " a better water comes first.",
              esp,
              Measure.of(plan.targetEspPct(), PERCENT));
      case NO_DRAINAGE ->
          Sentence.of(
              "gypsum-no-drainage",
              "Do not spread yet: sodium asks for about {0} "
                  + product(plan)
                  + " (ESP about {1}), but water cannot leave, so the sodium would stay.",
              rate,
              esp);
      case BELOW_SMALLEST ->
          Sentence.of(
              "gypsum-below-smallest",
              "No gypsum: {0} " + product(plan) + " is below the smallest rate worth a pass ({1}).",
              rate,
              Measure.of(settings.gypsum().minTPerHa(), RATE));
      case OWN_GYPSUM ->
          Sentence.of(
              "own-gypsum",
              "No gypsum: sodium is there (ESP about {0}), but the layer holds gypsum of its own"
                  + " that covers the requirement; leaching slowly lets it work.",
              esp);
      case MEASURE_SODIUM -> measureSodium(plan.sitesToMeasure());
      case MEASURE_CEC ->
          Sentence.of(
              "measure-cec",
              "Sodium asks for treatment (ESP about {0}), but neither CEC nor texture is known: no"
                  + " tonnes can be given. Measure CEC, or at least the texture.",
              esp);
    };
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

  private Sentence consider(GypsumPlan plan) {
    Measure esp = plan.esp().measure(PERCENT);
    String why =
        settings.water().isUnknown()
            ? "ESP about {0} on fine soil: where the land is rain-fed, or its water seals the soil,"
            : "ESP about {0} on fine soil under a water that seals it:";
    if (plan.middlePure() <= 0) {
      return Sentence.of(
          "gypsum-consider",
          why + " watch the infiltration; it is not above the target of {1}, so no amount follows.",
          esp,
          Measure.of(plan.targetEspPct(), PERCENT));
    }
    return Sentence.of(
        "gypsum-consider",
        why + " try {1} " + product(plan) + " in the top {2} on a strip beside an untreated one.",
        esp,
        rate(plan),
        Measure.of(settings.gypsum().depthCm(), SOIL_DEPTH));
  }

  private static String product(GypsumPlan plan) {
    return plan.productPerPure().isPresent()
        ? "of your product"
        : "of pure gypsum (purity not given)";
  }

  private static Measure rate(GypsumPlan plan) {
    double factor = plan.productPerPure().orElse(1);
    return new Measure(
        plan.middlePure() * factor, plan.product().p10(), plan.product().p90(), RATE);
  }

  private String passes(GypsumPlan plan) {
    int passes = Passes.of(rate(plan).value(), settings);
    return passes > 1 ? ", in " + passes + " passes" : "";
  }

  private Sentence otherDepth(GypsumPlan plan) {
    return Sentence.of(
        "gypsum-other-depth",
        "Over {0} of soil it would be {1}.",
        Measure.of(settings.gypsum().otherDepthCm(), SOIL_DEPTH),
        Measure.of(plan.otherDepthPure() * plan.productPerPure().orElse(1), RATE));
  }

  private static Sentence heldByWater(GypsumPlan plan) {
    return Sentence.of(
        "target-held-by-water",
        "The water itself keeps ESP at about {0}: less cannot be reached with it, so that is the"
            + " target.",
        Measure.of(plan.targetEspPct(), PERCENT));
  }

  private static Sentence waterToDissolve(GypsumPlan plan) {
    return Sentence.of(
        "water-to-dissolve",
        "At most {0} of water dissolves it (pure water; sodic soil takes less), and leaching"
            + " follows.",
        Measure.of(plan.waterToDissolveMm(), WATER_DEPTH));
  }

  private static Sentence laboratory(double tPerHa) {
    return Sentence.of(
        "laboratory-requirement",
        "The laboratory's own requirement averages {0} over the field; it may count soluble"
            + " carbonate too.",
        Measure.of(tPerHa, RATE));
  }

  private static Sentence sources(Sources sources) {
    return Sentence.of(
        "gypsum-sources",
        "Rests on {0} sodium samples (ESP: "
            + sources.esp().source().label()
            + "); CEC: "
            + sources.cec().source().label()
            + "; bulk density: "
            + sources.bulkDensity().source().label()
            + ".",
        Measure.of(sources.esp().sites(), COUNT));
  }

  /** Other amendments that would do the same, per tonne of pure gypsum; acids only on lime. */
  static Sentence equivalents(double purePerHa, GypsumSettings.Lime lime) {
    List<Measure> rates = new ArrayList<>();
    List<String> parts = new ArrayList<>();
    for (Amendment a : Amendment.all()) {
      if (!a.needsLime() || lime != GypsumSettings.Lime.NO) {
        parts.add(
            a.name()
                + " {"
                + rates.size()
                + "}"
                + (a.needsLime() && lime == GypsumSettings.Lime.UNKNOWN
                    ? " (only if the soil holds free lime)"
                    : ""));
        rates.add(Measure.of(purePerHa * a.tPerTGypsum(), RATE));
      }
    }
    String without =
        lime == GypsumSettings.Lime.NO
            ? " Sulfur and acids do nothing without free lime in the soil."
            : "";
    return new Sentence(
        "equivalents",
        "The same calcium would come from: " + String.join("; ", parts) + "." + without,
        rates);
  }
}
