package fieldsalt.report.section;

import fieldsalt.plan.RanchPlan;
import fieldsalt.plan.draw.Odds;
import fieldsalt.plan.field.Comparison.Side;
import fieldsalt.plan.field.FieldPlan;
import fieldsalt.plan.zone.GypsumPlan;
import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.quantity.UnitSystem.Amount;
import fieldsalt.report.input.PageInput;
import fieldsalt.report.markup.Figures;
import fieldsalt.report.markup.HtmlTable;
import fieldsalt.report.markup.Markup;
import fieldsalt.report.markup.Section;
import java.util.List;
import java.util.Locale;

/** What the plan adds up to, and one rate over a field against a rate by zone. */
public final class TotalsSection implements Section {
  private final PageInput input;
  private final Figures figures;

  public TotalsSection(PageInput input, Figures figures) {
    this.input = input;
    this.figures = figures;
  }

  @Override
  public String id() {
    return "totals";
  }

  @Override
  public String title() {
    return "The plan in total";
  }

  @Override
  public boolean isNeeded() {
    return input.plan().filter(TotalsSection::asksForAnything).isPresent();
  }

  private static boolean asksForAnything(RanchPlan plan) {
    return plan.gypsumT().p90() > 0 || plan.plannedT() > 0 || plan.plannedM3() > 0;
  }

  @Override
  public void body(Markup page) {
    RanchPlan plan = input.plan().orElseThrow();
    HtmlTable table =
        new HtmlTable(
            "What is planned is the sum of the zones' own; what is needed is its middle and the range"
                + " that holds it 8 times in 10: zones share the laboratories' error, so the ranch"
                + " is less sure than its zones would suggest",
            "Field",
            "Gypsum to spread",
            "Gypsum needed",
            "Water planned",
            "Water needed");
    table.write(
        page,
        () -> {
          for (FieldPlan f : input.isOverview() ? List.<FieldPlan>of() : plan.fields()) {
            String gypsum = gypsum(f.gypsumT(), f.zones());
            row(page, table, f.field(), f.plannedT(), gypsum, f.plannedM3(), f.leachingM3());
          }
          if (plan.fields().size() > 1) {
            String gypsum = gypsum(plan.gypsumT(), plan.zones());
            row(page, table, "Ranch", plan.plannedT(), gypsum, plan.plannedM3(), plan.leachingM3());
          }
        });
    money(page, plan);
    if (!input.isOverview()) {
      comparison(page, plan);
    }
  }

  private void row(
      Markup page,
      HtmlTable table,
      String name,
      double plannedT,
      String gypsum,
      double plannedM3,
      Odds leachingM3) {
    table.row(
        page,
        name,
        plannedT > 0 ? figures.amount(plannedT, Amount.MASS) : "none",
        gypsum,
        plannedM3 > 0 ? figures.amount(plannedM3, Amount.WATER_VOLUME) : "none",
        amount(leachingM3, Amount.WATER_VOLUME));
  }

  /** What the zones need, and of how many nobody can say it yet. */
  private String gypsum(Odds tonnes, List<ZonePlan> zones) {
    List<ZonePlan> unknown = zones.stream().filter(z -> z.gypsum().isUnknown()).toList();
    if (unknown.isEmpty()) {
      return amount(tonnes, Amount.MASS);
    }
    boolean sodium =
        unknown.stream().anyMatch(z -> z.gypsum().advice() == GypsumPlan.Advice.MEASURE_SODIUM);
    String where =
        unknown.size() == zones.size()
            ? "not known"
            : "not known in " + unknown.size() + (unknown.size() == 1 ? " zone" : " zones");
    return (tonnes.p90() > 0 ? amount(tonnes, Amount.MASS) + "; " : "")
        + where
        + (sodium ? ": measure sodium" : ": measure CEC or texture");
  }

  private String amount(Odds odds, Amount amount) {
    return odds.p90() > 0 ? figures.amount(odds.p10(), odds.p50(), odds.p90(), amount) : "none";
  }

  private static void money(Markup page, RanchPlan plan) {
    if (plan.expectedCost() > 0) {
      page.line(
          "p",
          "At your prices the plan costs about "
              + Figures.twoFigures(plan.expectedCost())
              + " and is expected to bring "
              + Figures.twoFigures(plan.expectedNet())
              + " net.");
    }
  }

  private void comparison(Markup page, RanchPlan plan) {
    List<FieldPlan> several =
        plan.fields().stream().filter(f -> f.zones().size() > 1 && isTreated(f)).toList();
    if (several.isEmpty() || input.isFlat()) {
      return;
    }
    page.line("h3", "One rate over the field, or a rate by zone");
    boolean priced = several.stream().anyMatch(f -> f.comparison().byZone().cost() > 0);
    HtmlTable table = priced ? comparing("Cost", "Net") : comparing();
    table.write(
        page,
        () ->
            several.forEach(
                f -> {
                  side(page, table, f, ", one rate", f.comparison().uniform(), priced);
                  side(page, table, f, ", by zone", f.comparison().byZone(), priced);
                }));
  }

  private static boolean isTreated(FieldPlan field) {
    return treats(field.comparison().uniform()) || treats(field.comparison().byZone());
  }

  private static boolean treats(Side side) {
    return side.tonnes() > 0 || side.leachingM3() > 0;
  }

  /** Below a twentieth there is nothing to speak of. */
  private String some(double inside, Amount amount) {
    return inside < 0.05 ? "none" : figures.amount(inside, amount);
  }

  private static HtmlTable comparing(String... more) {
    List<String> columns =
        new java.util.ArrayList<>(
            List.of(
                "Field and way",
                "Gypsum product",
                "Still short",
                "Beyond need",
                "Water through the soil",
                "Expected yield after leaching"));
    columns.addAll(List.of(more));
    return new HtmlTable(
        "Expected amounts over all that is not known", columns.toArray(String[]::new));
  }

  private void side(
      Markup page, HtmlTable table, FieldPlan field, String way, Side side, boolean priced) {
    boolean unknown = field.zones().stream().anyMatch(z -> z.gypsum().isUnknown());
    List<String> cells =
        new java.util.ArrayList<>(
            List.of(
                field.field() + way,
                unknown ? "not known" : some(side.tonnes(), Amount.MASS),
                unknown ? "not known" : some(side.shortTonnes(), Amount.MASS),
                unknown ? "not known" : some(side.excessTonnes(), Amount.MASS),
                some(side.leachingM3(), Amount.WATER_VOLUME),
                side.expectedYieldPct() > 0
                    ? Figures.percent(side.expectedYieldPct() / 100)
                    : "not known"));
    if (priced) {
      cells.add(String.format(Locale.ROOT, "%,.0f", side.cost()));
      cells.add(String.format(Locale.ROOT, "%,.0f", side.net()));
    }
    table.row(page, cells.toArray(String[]::new));
  }
}
