package fieldsalt.report;

import fieldsalt.plan.Draft;
import fieldsalt.plan.GypsumPlan;
import fieldsalt.plan.MoneyOutlook;
import fieldsalt.plan.Reclamation;
import fieldsalt.plan.Sentence;
import fieldsalt.plan.Step;
import fieldsalt.plan.ZonePlan;
import fieldsalt.quantity.UnitSystem;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** A zone's plan in words ready for the page. */
public final class ZoneAdvices {
  private final ZonePlan plan;
  private final UnitSystem units;

  private ZoneAdvices(ZonePlan plan, UnitSystem units) {
    this.plan = plan;
    this.units = units;
  }

  /** Advice of a plan; without one (another property than ECe is mapped) there is none. */
  public static ZoneAdvice of(Optional<ZonePlan> plan, UnitSystem units) {
    return plan.map(p -> new ZoneAdvices(p, units).advice()).orElseGet(ZoneAdvices::none);
  }

  private static ZoneAdvice none() {
    List<String> no = List.of();
    return new ZoneAdvice("no plan", "", "", "", no, no, List.of(), no);
  }

  private ZoneAdvice advice() {
    return new ZoneAdvice(
        plan.situation().label(),
        texts(plan.sentences()).collect(Collectors.joining(" ")),
        cost(),
        sure(),
        plan.draft().reasons().stream().map(ZoneAdvices::lift).toList(),
        plan.steps().stream().map(Step::label).toList(),
        amounts(),
        texts(plan.cautions()).toList());
  }

  private java.util.stream.Stream<String> texts(List<Sentence> sentences) {
    return sentences.stream().map(s -> s.text(units));
  }

  private static String lift(Draft.Reason reason) {
    return reason.why() + ": " + reason.lift();
  }

  private String cost() {
    return plan.money().stream()
        .map(MoneyOutlook::sentence)
        .map(s -> s.text(units))
        .collect(Collectors.joining(" "));
  }

  private String sure() {
    return String.format(
        Locale.ROOT,
        "Mean ECe %.1f dS/m, with 8 chances in 10 between %.1f and %.1f.",
        plan.ece().p50(),
        plan.ece().p10(),
        plan.ece().p90());
  }

  private List<ZoneAdvice.PlannedAmount> amounts() {
    List<ZoneAdvice.PlannedAmount> amounts = new ArrayList<>();
    GypsumPlan gypsum = plan.gypsum();
    if (plan.productTPerHa() > 0) {
      amounts.add(
          new ZoneAdvice.PlannedAmount(
              "Gypsum",
              rate(plan.productTPerHa())
                  + " ("
                  + rate(gypsum.product().p10())
                  + " to "
                  + rate(gypsum.product().p90())
                  + ")"));
    }
    Reclamation leaching = plan.reclamation();
    if (leaching.plannedMm() > 0) {
      amounts.add(
          new ZoneAdvice.PlannedAmount(
              "Water through the soil",
              depth(leaching.plannedMm())
                  + " ("
                  + depth(leaching.mm().p10())
                  + " to "
                  + depth(leaching.mm().p90())
                  + ")"));
    }
    return amounts;
  }

  private String rate(double tPerHa) {
    return String.format(
        Locale.ROOT,
        "%.1f %s",
        units.of(tPerHa, UnitSystem.Amount.RATE),
        units == UnitSystem.US ? "tons/acre" : "t/ha");
  }

  private String depth(double mm) {
    return String.format(
        Locale.ROOT,
        units == UnitSystem.US ? "%.1f in" : "%.0f mm",
        units.of(mm, UnitSystem.Amount.WATER_DEPTH));
  }
}
