package fieldsalt.report.input;

import fieldsalt.plan.draw.Odds;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.word.PlanWords;
import fieldsalt.plan.word.Sentence;
import fieldsalt.plan.zone.Draft;
import fieldsalt.plan.zone.GypsumPlan;
import fieldsalt.plan.zone.MoneyOutlook;
import fieldsalt.plan.zone.Reclamation;
import fieldsalt.plan.zone.Situation;
import fieldsalt.plan.zone.Step;
import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.quantity.Dimension;
import fieldsalt.quantity.Measure;
import fieldsalt.quantity.UnitSystem;
import fieldsalt.report.input.ZoneAdvice.PlannedAmount;
import fieldsalt.report.markup.Figures;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A zone's plan in words ready for the page. */
public final class ZoneAdvices {
  private final ZonePlan plan;
  private final PlanWords words;
  private final UnitSystem units;

  private ZoneAdvices(ZonePlan plan, PlanSettings settings, UnitSystem units) {
    this.plan = plan;
    this.words = new PlanWords(settings);
    this.units = units;
  }

  /**
   * Advice of a plan.
   *
   * @param settings that it was made with
   */
  public static ZoneAdvice of(ZonePlan plan, PlanSettings settings, UnitSystem units) {
    return new ZoneAdvices(plan, settings, units).advice();
  }

  private ZoneAdvice advice() {
    return new ZoneAdvice(
        headline(plan.steps()),
        why(),
        Figures.grouped(taken()),
        sure(),
        plan.draft().reasons().stream().map(ZoneAdvices::lift).toList(),
        plan.steps().stream().map(s -> upperFirst(s.label())).toList(),
        texts(words.of(plan)),
        amounts(),
        texts(words.cautions(plan)));
  }

  private List<String> texts(List<Sentence> sentences) {
    return sentences.stream().map(s -> Figures.grouped(s.text(units))).toList();
  }

  private static String lift(Draft.Reason reason) {
    return reason.why() + ": " + reason.lift();
  }

  /** The steps in a few words, in their order. */
  static String headline(List<Step> steps) {
    List<String> few = steps.stream().map(ZoneAdvices::few).distinct().toList();
    return upperFirst(String.join(", then ", few));
  }

  private static String few(Step step) {
    return switch (step) {
      case WATER_TABLE -> "look for a water table";
      case DRAINAGE -> "prove the drainage";
      case MEASURE_SODIUM -> "measure sodium";
      case MEASURE_CEC -> "measure CEC or texture";
      case CONFIRM_OWN_GYPSUM -> "have the soil's own gypsum tested";
      case TEST_STRIP -> "try gypsum on a strip";
      case GYPSUM -> "gypsum";
      case WATER_IN -> "water it in";
      case LEACHING -> "leach";
      case CHANGE_CROP_OR_WATER -> "change the crop or the water";
      case NOTHING -> "nothing to treat";
    };
  }

  private static String upperFirst(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  private String why() {
    Reclamation salt = plan.reclamation();
    return situation()
        + ": ECe "
        + Figures.twoFigures(plan.meanEce().value())
        + wanted(salt)
        + sodium();
  }

  /** What is wanted, of the depth that would be reclaimed where that is not the root zone's. */
  private String wanted(Reclamation salt) {
    String target = Figures.twoFigures(salt.targetEce());
    double mean = plan.meanEce().value();
    String now = Figures.twoFigures(salt.eceNow());
    boolean likely = salt.chance() >= 0.5;
    boolean differs = !now.equals(Figures.twoFigures(mean));
    String deep =
        differs && (likely || mean > salt.targetEce())
            ? ", " + now + " in the top " + depth(salt)
            : "";
    if (likely) {
      return deep + " where " + target + " is wanted";
    }
    return salt.plannedMm() > 0
        ? deep + " where " + target + " is wanted, but may be higher"
        : deep + ", and up to " + target + Figures.GAP + "dS/m is fine";
  }

  private String depth(Reclamation salt) {
    return Measure.of(salt.depthCm(), Dimension.SOIL_DEPTH).text(units);
  }

  private String situation() {
    boolean strip = plan.gypsum().advice() == GypsumPlan.Advice.CONSIDER;
    if (plan.situation() == Situation.SALINE_SODIC && plan.reclamation().chance() < 0.5) {
      return "Sodic and saline";
    }
    return plan.situation() == Situation.FINE && strip
        ? "Not too salty for the crop, but sodium may seal the soil"
        : upperFirst(plan.situation().label());
  }

  private String sodium() {
    GypsumPlan gypsum = plan.gypsum();
    return gypsum.sources().esp().isKnown()
        ? "; ESP " + Figures.twoFigures(gypsum.esp().p50()) + Figures.GAP + "%"
        : "";
  }

  private String taken() {
    List<String> takes = takes();
    if (!takes.isEmpty()) {
      return String.join("; ", takes);
    }
    return plan.steps().equals(List.of(Step.NOTHING)) ? "nothing" : "no amount yet";
  }

  private List<String> takes() {
    List<String> takes = new ArrayList<>();
    if (plan.productTPerHa() > 0) {
      takes.add(
          "Spread "
              + Measure.of(plan.productTPerHa(), Dimension.RATE).text(units)
              + " (needed "
              + range(plan.gypsum().product(), Dimension.RATE)
              + "), "
              + tonnes().text(units));
    }
    Reclamation salt = plan.reclamation();
    if (salt.plannedMm() > 0) {
      takes.add(
          Measure.of(salt.plannedMm(), Dimension.WATER_DEPTH).text(units)
              + " of water (needed "
              + range(salt.mm(), Dimension.WATER_DEPTH)
              + "), "
              + Measure.of(salt.plannedM3(plan.zone().areaHa()), Dimension.VOLUME).text(units));
    }
    if (plan.steps().contains(Step.MEASURE_SODIUM) || plan.steps().contains(Step.MEASURE_CEC)) {
      takes.add("gypsum is not known yet");
    }
    plan.plannedMoney().forEach(m -> takes.add(cost(m)));
    return takes;
  }

  private String cost(MoneyOutlook money) {
    return money.of().word()
        + " costs "
        + Measure.of(money.costPerHa(), Dimension.MONEY_PER_AREA).text(units);
  }

  /** The range that holds what is needed 8 times in 10, in the unit of the rate before it. */
  private String range(Odds odds, Dimension dimension) {
    return bare(odds.p10(), dimension) + " to " + bare(odds.p90(), dimension);
  }

  private String bare(double value, Dimension dimension) {
    return Measure.of(value, dimension).text(units).replace(" " + dimension.unit(units), "");
  }

  /** What is needed: its middle and that range. */
  private String needed(Odds odds, Dimension dimension) {
    return odds.measure(dimension).text(units);
  }

  private Measure tonnes() {
    return Measure.of(plan.productT(), Dimension.MASS);
  }

  private String sure() {
    List<String> sure = new ArrayList<>();
    if (plan.productTPerHa() > 0) {
      sure.add("gypsum is needed: " + Figures.chance(plan.gypsum().chance()));
    }
    String need = sure.isEmpty() ? "leaching is needed: " : "leaching: ";
    sure.add(need + Figures.chance(plan.reclamation().chance()));
    plan.plannedMoney()
        .forEach(
            m -> sure.add(m.of().word() + " pays back: " + Figures.chance(m.chancePaysBack())));
    return "Chance that " + String.join("; ", sure);
  }

  private List<PlannedAmount> amounts() {
    List<PlannedAmount> amounts = new ArrayList<>();
    plan.yield()
        .ifPresent(
            y -> {
              amounts.add(
                  new PlannedAmount(
                      "Yield, of the same crop on good ground",
                      y.pct().measure(Dimension.PERCENT).text(units)));
              amounts.add(
                  new PlannedAmount(
                      "Area likely above the crop's threshold",
                      Measure.of(y.areaAboveHa(), Dimension.AREA).text(units)));
            });
    if (plan.productTPerHa() > 0) {
      amounts.add(
          new PlannedAmount(
              "Gypsum to spread", Measure.of(plan.productTPerHa(), Dimension.RATE).text(units)));
      amounts.add(
          new PlannedAmount("Gypsum needed", needed(plan.gypsum().product(), Dimension.RATE)));
      amounts.add(new PlannedAmount("Passes", String.valueOf(plan.passes())));
    }
    if (plan.reclamation().plannedMm() > 0) {
      amounts.add(
          new PlannedAmount(
              "Water through the soil, planned",
              Measure.of(plan.reclamation().plannedMm(), Dimension.WATER_DEPTH).text(units)));
      amounts.add(
          new PlannedAmount(
              "Water needed", needed(plan.reclamation().mm(), Dimension.WATER_DEPTH)));
    }
    return amounts.stream()
        .map(a -> new PlannedAmount(a.what(), Figures.grouped(a.value())))
        .toList();
  }
}
