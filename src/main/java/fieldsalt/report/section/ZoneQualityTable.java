package fieldsalt.report.section;

import fieldsalt.quantity.UnitSystem.Amount;
import fieldsalt.report.input.PageInput;
import fieldsalt.report.input.PageZoning;
import fieldsalt.report.markup.Figures;
import fieldsalt.report.markup.HtmlTable;
import fieldsalt.report.markup.Markup;
import fieldsalt.surface.fit.SurfaceMethod;
import java.util.OptionalDouble;

/** How good the zones are, field by field. */
final class ZoneQualityTable {
  private final PageInput input;
  private final Figures figures;

  ZoneQualityTable(PageInput input, Figures figures) {
    this.input = input;
    this.figures = figures;
  }

  void write(Markup page) {
    if (input.zoning().isEmpty()) {
      return;
    }
    page.line("h3", "How good the zones are");
    page.line("p", explained());
    HtmlTable table =
        new HtmlTable(
            "Share of the variance of " + scale() + " that the zones account for, and their lines",
            "Field",
            "On the map",
            "At the sites",
            "Reading error there",
            "Line uncertain",
            "Joined to a neighbour");
    table.write(page, () -> input.zoning().forEach(z -> row(page, table, z)));
    input.zoning().forEach(z -> z.sodicity().ifPresent(s -> sodicity(page, z.field(), s)));
  }

  private static void sodicity(Markup page, String field, PageZoning.BySodicity s) {
    String drawn =
        s.method() == SurfaceMethod.MEAN
            ? ": nothing predicts it better than the field's mean, so all zones are of one class"
            : ", drawn by " + Words.method(s.method());
    page.in(
        "p",
        () ->
            page.textWithName(
                "Sodicity of field %s: "
                    + s.property()
                    + " at "
                    + Figures.count(s.sites(), "site")
                    + drawn
                    + ".",
                field));
  }

  private String scale() {
    boolean log = input.sites().scale() == fieldsalt.basis.site.Scale.LOG;
    return (log ? "ln " : "") + figures.property();
  }

  private static String explained() {
    return "On the map: the share of the map's variance that lies between zones; the map is"
        + " smoother than the soil, so this flatters. At the sites: how much smaller the squared"
        + " error gets when each reading is predicted by the mean of the other sites of its zone"
        + " and not of its whole field (100 % would be perfect, 0 or less no help; the zones'"
        + " lines were drawn with that reading, only the means were not). Reading error: the part"
        + " of the variance between readings that their own known error makes and no zone can"
        + " predict. Line uncertain: the chance to be above the nearest limit is 20 to 80 %."
        + " Joined: pieces too small or too thin for the machine, which have their neighbour's"
        + " class.";
  }

  private void row(Markup page, HtmlTable table, PageZoning z) {
    table.row(
        page,
        z.field(),
        Figures.percent(z.explainedOnMap()),
        share(z.atSites().predictedShare()) + ", " + Figures.count(z.atSites().sites(), "site"),
        share(z.atSites().errorShare()),
        area(z.uncertainHa(), z.areaHa()),
        area(z.changedHa(), z.areaHa()));
  }

  private static String share(OptionalDouble share) {
    return share.isPresent() ? Figures.percent(share.getAsDouble()) : "not known";
  }

  private String area(double ha, double of) {
    return figures.amount(ha, Amount.AREA) + ", " + Figures.percent(ha / of);
  }
}
