package fieldsalt.report.section;

import fieldsalt.plan.field.CropYields;
import fieldsalt.report.input.PageInput;
import fieldsalt.report.input.PageZone;
import fieldsalt.report.markup.Figures;
import fieldsalt.report.markup.HtmlTable;
import fieldsalt.report.markup.Markup;
import fieldsalt.report.markup.Section;
import java.util.ArrayList;
import java.util.List;

/** What other crops would bring: each by field, the largest first, with source and confidence. */
public final class CropsSection implements Section {
  private final PageInput input;

  public CropsSection(PageInput input) {
    this.input = input;
  }

  @Override
  public String id() {
    return "crops";
  }

  @Override
  public String title() {
    return "What else could grow";
  }

  @Override
  public boolean isNeeded() {
    return input.plan().filter(p -> !p.crops().isEmpty()).isPresent();
  }

  private List<CropYields> crops() {
    return input.plan().orElseThrow().crops();
  }

  @Override
  public void body(Markup page) {
    page.line(
        "p",
        "Expected yield as the salt is now, as a share of the same crop's on good ground. It says"
            + " how well a crop stands this salt, not what it earns.");
    page.in(
        "details",
        () -> {
          page.line("summary", "Crops by field and zone");
          table(page);
        });
  }

  private void table(Markup page) {
    List<String> columns = new ArrayList<>(List.of("Crop", "Ranch"));
    columns.addAll(fields());
    columns.add("Worst and best zone");
    columns.add("Source");
    HtmlTable table = new HtmlTable("Expected relative yield", columns.toArray(String[]::new));
    table.write(page, () -> crops().forEach(c -> row(page, table, c)));
  }

  private List<String> fields() {
    return input.isOverview() ? List.of() : List.copyOf(input.schemes().keySet());
  }

  private void row(Markup page, HtmlTable table, CropYields c) {
    List<String> cells = new ArrayList<>(List.of(c.crop().name()));
    if (c.ranchPct().isEmpty()) {
      cells.add("rated " + c.crop().ratingInWords());
      fields().forEach(f -> cells.add("–"));
      cells.add("no numbers published");
    } else {
      cells.add(percent(c.ranchPct().get()));
      fields().forEach(f -> cells.add(percent(mean(c, f))));
      cells.add(ends(c));
    }
    cells.add(c.crop().source() + confidence(c));
    table.row(page, cells.toArray(String[]::new));
  }

  private static String confidence(CropYields c) {
    return c.crop().isSeenInPrint() ? "" : " (not checked against print)";
  }

  private static String percent(double pct) {
    return Figures.percent(pct / 100);
  }

  /** Mean over a field's zones by area. */
  private double mean(CropYields c, String field) {
    double sum = 0;
    double area = 0;
    for (int z = 0; z < c.zonePct().size(); z++) {
      PageZone zone = input.zones().get(z);
      if (zone.zone().field().equals(field)) {
        sum += c.zonePct().get(z) * zone.zone().areaHa();
        area += zone.zone().areaHa();
      }
    }
    return area > 0 ? sum / area : Double.NaN;
  }

  private static String ends(CropYields c) {
    double least = c.zonePct().stream().mapToDouble(d -> d).min().orElse(Double.NaN);
    double most = c.zonePct().stream().mapToDouble(d -> d).max().orElse(Double.NaN);
    return percent(least) + " and " + percent(most);
  }
}
