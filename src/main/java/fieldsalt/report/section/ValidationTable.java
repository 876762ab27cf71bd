package fieldsalt.report.section;

import fieldsalt.report.markup.Figures;
import fieldsalt.report.markup.HtmlTable;
import fieldsalt.report.markup.Markup;
import fieldsalt.surface.fit.SurfaceDetails;
import fieldsalt.surface.fit.SurfaceDetails.LaboratoryCheck;
import fieldsalt.surface.fit.Validation;
import fieldsalt.surface.fit.Validation.StandardisedErrors;
import java.util.List;

/** The chosen method's figures against left-out sites, and each laboratory's against the others. */
final class ValidationTable {
  private final SurfaceDetails details;
  private final Figures figures;

  ValidationTable(SurfaceDetails details, Figures figures) {
    this.details = details;
    this.figures = figures;
  }

  void write(Markup page) {
    if (details.validation().isEmpty()) {
      return;
    }
    page.in(
        "details",
        () -> {
          page.line("summary", "More figures of the method used");
          validation(page);
          laboratories(page);
        });
  }

  private void validation(Markup page) {
    HtmlTable table =
        new HtmlTable(
            "Left-out sites; in brackets the band expected for so many sites. G: 1 if every interval holds what it"
                + " promises",
            "Scale",
            "Sites",
            "RMSE",
            "Mean absolute",
            "Mean error",
            "CRPS",
            "Mean squared standardised",
            "Median",
            "G");
    table.write(page, () -> details.validation().forEach(v -> row(page, table, v)));
  }

  private void row(Markup page, HtmlTable table, Validation v) {
    StandardisedErrors e = v.errors();
    table.row(
        page,
        v.unit().equals("ln") ? "ln " + figures.property() : v.unit(),
        String.valueOf(v.count()),
        Figures.decimals(v.rmse(), 2),
        Figures.decimals(v.mae(), 2),
        Figures.decimals(v.bias(), 2),
        Figures.decimals(v.crps(), 2),
        band(e.meanLow(), e.mean(), e.meanHigh()),
        band(e.medianLow(), e.median(), e.medianHigh()),
        Figures.decimals(v.goodness(), 2));
  }

  private static String band(double low, double value, double high) {
    return Figures.decimals(value, 2)
        + " ("
        + Figures.decimals(low, 2)
        + " to "
        + Figures.decimals(high, 2)
        + ")";
  }

  private void laboratories(Markup page) {
    List<LaboratoryCheck> checks =
        details.laboratories().stream().filter(l -> l.rows() > 0).toList();
    if (checks.size() < 2) {
      return;
    }
    HtmlTable table =
        new HtmlTable(
            "Each laboratory's readings predicted from those of the others, ln "
                + figures.property()
                + ". A mean error beyond twice its standard error does not fit in",
            "Laboratory",
            "Rows",
            "Mean error",
            "Its standard error",
            "RMSE",
            "Held by 90 % intervals");
    table.write(page, () -> checks.forEach(l -> row(page, table, l)));
  }

  private static void row(Markup page, HtmlTable table, LaboratoryCheck l) {
    table.row(
        page,
        l.laboratory().isBlank() ? "not named" : l.laboratory(),
        String.valueOf(l.rows()),
        Figures.decimals(l.bias(), 2),
        Figures.decimals(l.biasError(), 2),
        Figures.decimals(l.rmse(), 2),
        Figures.percent(l.coverage90()));
  }
}
