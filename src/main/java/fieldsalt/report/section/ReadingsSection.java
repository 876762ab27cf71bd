package fieldsalt.report.section;

import fieldsalt.report.draw.Axis;
import fieldsalt.report.draw.Chart;
import fieldsalt.report.draw.SurveyPicture;
import fieldsalt.report.input.PageInput;
import fieldsalt.report.input.PageReadings.Factor;
import fieldsalt.report.input.PageReadings.Kind;
import fieldsalt.report.input.PageReadings.Pair;
import fieldsalt.report.input.PageReadings.PairPlot;
import fieldsalt.report.markup.Figures;
import fieldsalt.report.markup.HtmlTable;
import fieldsalt.report.markup.Markup;
import fieldsalt.report.markup.Section;
import fieldsalt.surface.fit.SurfaceReport;

/** What was done to each kind of reading, and what the pairs taught about its factor. */
public final class ReadingsSection implements Section {
  private final PageInput input;
  private final Figures figures;

  public ReadingsSection(PageInput input, Figures figures) {
    this.input = input;
    this.figures = figures;
  }

  @Override
  public String id() {
    return "readings";
  }

  @Override
  public String title() {
    return "What was done to the readings";
  }

  @Override
  public void body(Markup page) {
    page.line(
        "p",
        "Crop tables are made on the saturated paste (ECe). Every other reading is multiplied by"
            + " a published factor first. Where a soil was read both ways, the pair corrects the"
            + " factor for this ranch and these laboratories.");
    HtmlTable table =
        new HtmlTable(
            "ECe = factor x EC; in brackets the interval that holds the factor 9 times in 10",
            "Kind",
            "Rows",
            "Relation",
            "Published factor",
            "Pairs",
            "Factor with the pairs",
            "One more pair brings");
    table.write(page, () -> input.readings().kinds().forEach(k -> row(page, table, k)));
    page.in("div", () -> input.readings().pairs().forEach(p -> plot(page, p)), "class", "charts");
    survey(page);
  }

  private static void row(Markup page, HtmlTable table, Kind k) {
    boolean paste = k.prior().sdLn() == 0 && k.prior().value() == 1;
    table.row(
        page,
        k.name(),
        String.valueOf(k.rows()),
        spaced(k.relation()),
        paste ? "1, by definition" : factor(k.prior()),
        String.valueOf(k.pairs()),
        k.pairs() == 0 ? "no pair: as published" : factor(k.posterior()),
        paste
            ? "–"
            : "± "
                + Figures.percent(1.645 * k.sdAfterOneMore())
                + " instead of ± "
                + Figures.percent(1.645 * k.posterior().sdLn()));
  }

  /** {@code SlavichPetterson1993} to {@code Slavich Petterson 1993}. */
  static String spaced(String relation) {
    return relation.replaceAll("(?<=[a-z])(?=[A-Z0-9])", " ");
  }

  private static String factor(Factor f) {
    return Figures.interval(f.low(), f.value(), f.high());
  }

  private void plot(Markup page, PairPlot plot) {
    if (plot.points().isEmpty()) {
      return;
    }
    page.in(
        "figure",
        () -> {
          chart(page, plot);
          page.in(
              "figcaption",
              () ->
                  page.textWithName(
                          "%s against the saturated paste of the same soil. ", plot.name())
                      .text(
                          "Dashed: published factor, with its band. Full: with the pairs, with its"
                              + " band. The bands hold the true line 9 times in 10."));
        });
  }

  private static void chart(Markup page, PairPlot plot) {
    Axis across =
        Axis.logarithmic(
            "reading, dS/m",
            plot.points().stream().mapToDouble(Pair::ec).min().orElse(1),
            plot.points().stream().mapToDouble(Pair::ec).max().orElse(1));
    Axis up =
        Axis.logarithmic(
            "ECe by paste, dS/m",
            plot.points().stream().mapToDouble(Pair::paste).min().orElse(1),
            plot.points().stream().mapToDouble(Pair::paste).max().orElse(1));
    Chart chart = new Chart(page, across, up);
    chart.draw(
        "Pairs of readings of " + plot.name() + " and saturated paste",
        () -> {
          lines(chart, plot.prior(), "prior");
          lines(chart, plot.posterior(), "posterior");
          plot.points().forEach(p -> point(chart, p));
        });
  }

  private static void lines(Chart chart, Factor f, String kind) {
    chart.band(ec -> ec * f.low(), ec -> ec * f.high(), "band " + kind);
    chart.curve(ec -> ec * f.value(), "line " + kind);
  }

  private static void point(Chart chart, Pair p) {
    chart.point(
        p.ec(),
        p.paste(),
        p.odd() ? "dot odd" : "dot",
        p.site()
            + ": "
            + Figures.twoFigures(p.ec())
            + " and "
            + Figures.twoFigures(p.paste())
            + " dS/m");
  }

  private void survey(Markup page) {
    int points = input.settings().surveyPoints();
    if (points == 0) {
      return;
    }
    SurfaceReport report = input.surface().report();
    boolean tested = report.details().drift().isPresent();
    String rest =
        report.steering().isPresent()
            ? "steers the map of " + String.join(", ", report.steering().get().fields()) + "."
            : tested
                ? "was read and tested, but does not steer the map: the samples alone predict a"
                    + " left-out sample as well."
                : "was read and checked; it does not steer the map.";
    page.line(
        "p",
        "The survey of apparent conductivity (" + Figures.count(points, "reading") + ") " + rest);
    SurveyPicture.of(input.ranch()).ifPresent(p -> surveyMap(page, p));
  }

  private void surveyMap(Markup page, SurveyPicture survey) {
    page.in(
        "figure",
        () -> {
          new MapDrawing(input, figures, page, survey.fields()).survey(survey);
          page.line("figcaption", survey.caption());
        },
        "class",
        "wide");
  }
}
