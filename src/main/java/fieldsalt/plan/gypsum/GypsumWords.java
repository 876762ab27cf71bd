package fieldsalt.plan.gypsum;

import static fieldsalt.quantity.Dimension.PERCENT;
import static fieldsalt.quantity.Dimension.RATE;
import static fieldsalt.quantity.Dimension.SOIL_DEPTH;

import fieldsalt.facts.Amendment;
import fieldsalt.plan.setting.GypsumSettings;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.word.Sentence;
import fieldsalt.plan.zone.GypsumPlan;
import fieldsalt.quantity.Measure;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** What is said of the gypsum of a zone. */
public final class GypsumWords {
  private GypsumWords() {}

  /** The verdict with its amount. */
  static Sentence verdict(GypsumPlan plan, double middle, PlanSettings settings) {
    Measure rate = rate(plan, middle);
    Measure esp = plan.esp().measure(PERCENT);
    Measure chance = Measure.of(100 * plan.chance(), PERCENT);
    Measure depth = Measure.of(settings.gypsum().depthCm(), SOIL_DEPTH);
    String product =
        plan.productPerPure().isPresent() ? "of your product" : "of pure gypsum (purity not given)";
    return switch (plan.advice()) {
      case RECOMMENDED ->
          Sentence.of(
              "gypsum",
              "Gypsum about {0} "
                  + product
                  + " in the top {1}"
                  + passes(plan, middle, settings)
                  + ": ESP about {2}, chance that it is needed {3}.",
              rate,
              depth,
              esp,
              chance);
      case CONSIDER -> consider(plan, middle, settings, product);
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
                  + product
                  + " (ESP about {1}), but water cannot leave, so the sodium would stay.",
              rate,
              esp);
      case BELOW_SMALLEST ->
          Sentence.of(
              "gypsum-below-smallest",
              "No gypsum: {0} " + product + " is below the smallest rate worth a pass ({1}).",
              rate,
              Measure.of(settings.gypsum().minTPerHa(), RATE));
      case OWN_GYPSUM ->
          Sentence.of(
              "own-gypsum",
              "No gypsum: sodium is there (ESP about {0}), but the layer holds gypsum of its own"
                  + " that covers the requirement; leaching slowly lets it work.",
              esp);
      default -> throw new IllegalArgumentException("no amount for " + plan.advice());
    };
  }

  private static Sentence consider(
      GypsumPlan plan, double middle, PlanSettings settings, String product) {
    Measure esp = plan.esp().measure(PERCENT);
    String why =
        settings.water().isUnknown()
            ? "ESP about {0} on fine soil: where the land is rain-fed, or its water seals the soil,"
            : "ESP about {0} on fine soil under a water that seals it:";
    if (middle <= 0) {
      return Sentence.of(
          "gypsum-consider",
          why + " watch the infiltration; it is not above the target of {1}, so no amount follows.",
          esp,
          Measure.of(plan.targetEspPct(), PERCENT));
    }
    return Sentence.of(
        "gypsum-consider",
        why + " try {1} " + product + " in the top {2} on a strip beside an untreated one.",
        esp,
        rate(plan, middle),
        Measure.of(settings.gypsum().depthCm(), SOIL_DEPTH));
  }

  private static Measure rate(GypsumPlan plan, double middle) {
    double factor = plan.productPerPure().orElse(1);
    return new Measure(
        middle * factor, plan.pure().p10() * factor, plan.pure().p90() * factor, RATE);
  }

  private static String passes(GypsumPlan plan, double middle, PlanSettings settings) {
    double product = middle * plan.productPerPure().orElse(1);
    int passes = Passes.of(product, settings);
    return passes > 1 ? ", in " + passes + " passes" : "";
  }

  /** Other amendments that would do the same, per tonne of pure gypsum; acids only on lime. */
  public static Sentence equivalents(double purePerHa, GypsumSettings.Lime lime) {
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
        "The same calcium would come from: "
            + parts.stream().collect(Collectors.joining("; "))
            + "."
            + without,
        rates);
  }
}
