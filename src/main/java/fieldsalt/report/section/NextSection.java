package fieldsalt.report.section;

import fieldsalt.report.input.PageInput;
import fieldsalt.report.input.PageSurface.NextMeasurement;
import fieldsalt.report.markup.Figures;
import fieldsalt.report.markup.HtmlTable;
import fieldsalt.report.markup.Markup;
import fieldsalt.report.markup.Section;
import java.util.List;

/** The list of what to measure next. */
public final class NextSection implements Section {
  private final PageInput input;

  public NextSection(PageInput input) {
    this.input = input;
  }

  @Override
  public String id() {
    return "next";
  }

  @Override
  public String title() {
    return "What to measure next";
  }

  @Override
  public boolean isNeeded() {
    return !input.surface().next().isEmpty();
  }

  @Override
  public void body(Markup page) {
    page.line(
        "p",
        "Readings in doubt first, then by worth: the share, by hectares, of what is not known that"
            + " each settles. The list ends where a measurement would lower its field's error by"
            + " less than 1 per cent. The places are on the map (triangles) and in next.csv.");
    HtmlTable table =
        new HtmlTable(
            "Standard error of mean ECe after this and the measurements above it, per cent",
            "Order",
            "Measure",
            "Because",
            "Worth",
            "Ranch mean",
            "Zone known worst");
    List<NextMeasurement> next = input.surface().next();
    table.write(
        page,
        () -> {
          for (int i = 0; i < next.size(); i++) {
            row(page, table, i + 1, next.get(i));
          }
        });
  }

  private static void row(Markup page, HtmlTable table, int order, NextMeasurement n) {
    table.row(
        page,
        String.valueOf(order),
        n.what(),
        n.why(),
        Double.isNaN(n.worthPct()) ? "–" : percent(n.worthPct()),
        percent(n.ranchErrorPct()),
        percent(n.worstZoneErrorPct()));
  }

  private static String percent(double pct) {
    return Figures.decimals(pct, 1) + Figures.GAP + "%";
  }
}
