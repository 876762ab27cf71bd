package fieldsalt.report.section;

import fieldsalt.plan.draw.Odds;
import fieldsalt.plan.field.FieldPlan;
import fieldsalt.plan.zone.SaltYears;
import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.report.markup.Figures;
import fieldsalt.report.markup.HtmlTable;
import fieldsalt.report.markup.Markup;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Salt of each zone's root zone season by season: with the plan, without it, without drainage. */
final class YearsTable {
  private static final int MOST_SEASONS = 4;

  private final FieldPlan plan;
  private final List<ZonePlan> zones;

  YearsTable(FieldPlan plan) {
    this.plan = plan;
    this.zones = plan.zones().stream().filter(z -> z.years().isPresent()).toList();
  }

  void write(Markup page) {
    if (zones.isEmpty()) {
      page.line(
          "p",
          "Over the years: not worked out, because "
              + (plan.steady().isEmpty()
                  ? "the salinity of the water is not given (water: ec-dS-m)."
                  : "neither what is applied nor what the crop uses is given (water: applied-mm,"
                      + " season-et-mm)."));
      return;
    }
    int seasons = zones.get(0).years().orElseThrow().planned().size();
    List<Integer> shown =
        IntStream.rangeClosed(1, seasons)
            .filter(t -> t < MOST_SEASONS || t == seasons)
            .boxed()
            .toList();
    List<String> columns = new ArrayList<>(List.of("Zone", "Now"));
    shown.forEach(t -> columns.add("After season " + t));
    columns.add("Without the plan");
    columns.add("If drainage fails");
    columns.add("Target reached");
    page.in(
        "details",
        () -> {
          page.line("summary", "Over the years");
          HtmlTable table =
              new HtmlTable(
                  "Mean ECe of the root zone, dS/m, with the range that holds it 8 times in 10: salt"
                      + " balance of one well-mixed root zone, a simplification of ours",
                  columns.toArray(String[]::new));
          table.write(page, () -> zones.forEach(z -> row(page, table, z, shown)));
        });
  }

  private static void row(Markup page, HtmlTable table, ZonePlan zone, List<Integer> shown) {
    SaltYears years = zone.years().orElseThrow();
    List<String> cells = new ArrayList<>();
    cells.add(zone.zone().name());
    cells.add(Figures.twoFigures(zone.meanEce().value()));
    shown.forEach(t -> cells.add(odds(years.planned().get(t - 1))));
    cells.add(odds(years.untreated().get(years.untreated().size() - 1)));
    cells.add(odds(years.undrained()));
    cells.add(reached(zone, years));
    table.row(page, cells.toArray(String[]::new));
  }

  private static String reached(ZonePlan zone, SaltYears years) {
    String target = Figures.twoFigures(zone.reclamation().targetEce());
    if (years.reached().isEmpty()) {
      return "not to " + target;
    }
    int season = years.reached().getAsInt();
    return (season == 0 ? "at once, " : "season " + season + ", ") + target;
  }

  private static String odds(Odds odds) {
    return Figures.interval(odds.p10(), odds.mean(), odds.p90());
  }
}
