package fieldsalt.report.section;

import fieldsalt.quantity.UnitSystem.Amount;
import fieldsalt.report.draw.Axis;
import fieldsalt.report.draw.Chart;
import fieldsalt.report.draw.Curves;
import fieldsalt.report.draw.ReachDrawing;
import fieldsalt.report.input.PageInput;
import fieldsalt.report.input.PageSurface.AccuracyPoint;
import fieldsalt.report.input.PageSurface.VariogramBin;
import fieldsalt.report.markup.Figures;
import fieldsalt.report.markup.HtmlTable;
import fieldsalt.report.markup.Markup;
import fieldsalt.report.markup.Section;
import fieldsalt.surface.covariance.Anisotropy;
import fieldsalt.surface.fit.Accuracy;
import fieldsalt.surface.fit.SurfaceReport;
import fieldsalt.surface.fit.SurfaceReport.Candidate;
import fieldsalt.surface.fit.SurfaceReport.FittedVariogram;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** How sure the map is: in words, in numbers, and the variogram that it rests on. */
public final class SurenessSection implements Section {
  private final PageInput input;
  private final Figures figures;

  public SurenessSection(PageInput input, Figures figures) {
    this.input = input;
    this.figures = figures;
  }

  private SurfaceReport report() {
    return input.surface().report();
  }

  @Override
  public String id() {
    return "sure";
  }

  @Override
  public String title() {
    return "How sure the map is";
  }

  @Override
  public void body(Markup page) {
    page.line("p", Words.trust(input));
    page.line("p", "Why this method: " + Words.ended(report().whyChosen()));
    report().steering().ifPresent(s -> page.line("p", steering(s)));
    report().accuracy().ifPresent(a -> page.line("p", honest(a)));
    if (!report().candidates().isEmpty()) {
      numbers(page);
    }
    new ValidationTable(report().details(), figures).write(page);
    if (!input.isOverview()) {
      new ZoneQualityTable(input, figures).write(page);
    }
    Diagnosis.of(report(), figures).forEach(s -> page.line("p", s));
    page.in(
        "div",
        () -> {
          accuracy(page);
          variogram(page);
          reach(page);
        },
        "class",
        "charts");
  }

  /** Which fields follow a survey or raster, and by how much it helps there. */
  private static String steering(SurfaceReport.Steering s) {
    return String.join(" and ", s.drifts())
        + " steers the map of "
        + Figures.count(s.fields().size(), "field")
        + " ("
        + String.join(", ", s.fields())
        + "): there the map explains "
        + Figures.percent(Math.max(0, s.explained()))
        + " of how unseen sites differ from their field's mean; by the samples alone it would"
        + " explain "
        + Figures.percent(Math.max(0, s.explainedWithout()))
        + ".";
  }

  private static String honest(Accuracy c) {
    double short90 = 0.9 - c.coverage90();
    double band = 1.645 * Math.sqrt(0.09 / Math.max(1, c.sites()));
    String verdict =
        Math.abs(short90) <= band
            ? "as it should be for so many sites"
            : short90 > 0
                ? "fewer than they should: read its intervals as somewhat too narrow"
                : "more than they should: its intervals are on the wide side";
    return "Intervals made to hold 9 of 10 left-out sites held "
        + Figures.percent(c.coverage90())
        + " of them, "
        + verdict
        + ".";
  }

  private String scale() {
    boolean log = input.sites().scale() == fieldsalt.basis.site.Scale.LOG;
    return (log ? "ln " : "") + figures.property();
  }

  private void numbers(Markup page) {
    HtmlTable table =
        new HtmlTable(
            "Leave-one-out by site, on "
                + scale()
                + ". A standardised error squared should be 1 on average"
                + " and 0.45 in the middle",
            "Method",
            "Sites",
            "RMSE",
            "Mean error",
            "CRPS",
            "Mean squared standardised",
            "Median",
            "Held by 90 % intervals");
    table.write(page, () -> report().candidates().forEach(c -> row(page, table, c)));
  }

  private void row(Markup page, HtmlTable table, Candidate c) {
    String name = Words.method(c.method());
    table.row(
        page,
        c.method() == report().chosen() ? name + " (used)" : name,
        String.valueOf(c.sites()),
        Figures.decimals(c.rmse(), 2),
        Figures.decimals(c.bias(), 2),
        Figures.decimals(c.crps(), 3),
        Figures.decimals(c.meanSquaredStandardised(), 2),
        Figures.decimals(c.medianSquaredStandardised(), 2),
        Figures.percent(c.coverage90()));
  }

  private void accuracy(Markup page) {
    List<AccuracyPoint> points = input.surface().accuracy();
    if (points.isEmpty()) {
      return;
    }
    Axis across = new Axis("interval made to hold, %", 0, 100, false);
    Chart chart = new Chart(page, across, new Axis("held of the left-out sites, %", 0, 100, false));
    figure(
        page,
        () ->
            chart.draw(
                "Share of left-out sites held by intervals of 5 to 95 per cent",
                () -> {
                  chart.curve(DoubleUnaryOperator.identity(), "line prior");
                  chart.polyline(
                      points.stream()
                          .map(p -> new double[] {100 * p.chance(), 100 * p.share()})
                          .toList(),
                      "line posterior");
                }),
        "Whether the intervals keep their word: the full line should follow the dashed one. Below"
            + " it they are too narrow, above it too wide.");
  }

  private static void figure(Markup page, Runnable chart, String caption) {
    page.in(
        "figure",
        () -> {
          chart.run();
          page.line("figcaption", caption);
        });
  }

  private void variogram(Markup page) {
    List<VariogramBin> bins = input.surface().bins();
    if (bins.isEmpty()) {
      return;
    }
    FittedVariogram v = report().variogram();
    double far = bins.stream().mapToDouble(VariogramBin::distanceM).max().orElse(1);
    Axis across = Axis.fromZero("distance, " + figures.unit(Amount.LENGTH), length(far));
    Axis up =
        Axis.fromZero(
            "half squared difference of " + scale(),
            Math.max(
                Curves.semivariance(v, far),
                bins.stream().mapToDouble(VariogramBin::semivariance).max().orElse(1)));
    Chart chart = new Chart(page, across, up);
    figure(
        page,
        () ->
            chart.draw(
                "Sample variogram and fitted model",
                () -> {
                  double ratio = report().details().anisotropy().ratio();
                  if (ratio > 1) {
                    chart.curve(h -> Curves.semivariance(v, ratio * h / length(1)), "line prior");
                  }
                  chart.curve(h -> Curves.semivariance(v, h / length(1)), "line posterior");
                  bins.stream().filter(b -> b.semivariance() >= 0).forEach(b -> bin(chart, b));
                }),
        caption(v));
  }

  /** Only where salt reaches farther one way than across. */
  private void reach(Markup page) {
    Anisotropy anisotropy = report().details().anisotropy();
    if (anisotropy.ratio() > 1) {
      boolean local = input.ranch().projection().isLocal();
      double rangeM = report().variogram().rangeM();
      ReachDrawing drawing = new ReachDrawing(page, figures, anisotropy, rangeM, local);
      figure(page, drawing::draw, drawing.caption());
    }
  }

  private void bin(Chart chart, VariogramBin b) {
    chart.point(
        length(b.distanceM()),
        b.semivariance(),
        "dot",
        figures.amount(b.distanceM(), Amount.LENGTH)
            + ": "
            + Figures.decimals(b.semivariance(), 2)
            + ", "
            + Figures.count(b.pairs(), "pair"));
  }

  private String caption(FittedVariogram v) {
    String fitted =
        v.isDefault()
            ? "Too few sites to fit a variogram: a default was taken"
            : "Fitted by restricted likelihood to the readings with their known errors"
                + (v.averaged()
                    ? "; the map is averaged over the models that fit about as well"
                    : "");
    return fitted
        + ". Model: "
        + v.model().name()
        + ", partial sill "
        + Figures.decimals(v.partialSill(), 2)
        + ", distance parameter "
        + range(v)
        + ", variation at shorter range than the sites "
        + Figures.decimals(v.microScale(), 2)
        + ". "
        + (report().details().anisotropy().ratio() > 1
            ? "Full line: along the longest reach; dashed: across it. "
            : "")
        + "Dots: how much readings differ at a distance"
        + (report().details().anisotropy().ratio() > 1 ? " in any direction" : "")
        + ", their known errors taken off.";
  }

  private double length(double metres) {
    return figures.system().of(metres, Amount.LENGTH);
  }

  private String range(FittedVariogram v) {
    boolean known = v.rangeLowM() > 0 && v.rangeHighM() > v.rangeLowM();
    return known
        ? figures.amount(v.rangeLowM(), v.rangeM(), v.rangeHighM(), Amount.LENGTH)
        : figures.amount(v.rangeM(), Amount.LENGTH);
  }
}
