package fieldsalt.report.draw;

import fieldsalt.quantity.UnitSystem.Amount;
import fieldsalt.report.markup.Figures;
import fieldsalt.report.markup.Markup;

/** Scale bar, north arrow and hatching of a map. */
public final class Furniture {
  /**
   * Slanting lines, dark with a pale edge, so that they show on every shade of the ramp; dots
   * likewise.
   */
  public static final String PATTERNS =
      "<pattern id=\"undecided\" width=\"9\" height=\"9\" patternUnits=\"userSpaceOnUse\""
          + " patternTransform=\"rotate(45)\"><path d=\"M2 0V9\" class=\"hatch-edge\"/>"
          + "<path d=\"M2 0V9\" class=\"hatch-line\"/></pattern>"
          + "<pattern id=\"beyond\" width=\"9\" height=\"9\" patternUnits=\"userSpaceOnUse\""
          + " patternTransform=\"rotate(-45)\"><path d=\"M2 0V9\" class=\"hatch-edge\"/>"
          + "<path d=\"M2 0V9\" class=\"hatch-line\"/></pattern>"
          + "<pattern id=\"sodic\" width=\"12\" height=\"12\" patternUnits=\"userSpaceOnUse\">"
          + "<circle cx=\"3\" cy=\"3\" r=\"1.7\" class=\"dots\"/>"
          + "<circle cx=\"9\" cy=\"9\" r=\"1.7\" class=\"dots\"/></pattern>\n";

  private final Markup page;
  private final Frame frame;
  private final Figures figures;

  public Furniture(Markup page, Frame frame, Figures figures) {
    this.page = page;
    this.frame = frame;
    this.figures = figures;
  }

  public void draw(boolean local) {
    scaleBar();
    if (!local) {
      north();
    }
  }

  private void scaleBar() {
    double unitsM = 1 / figures.system().of(1, Amount.LENGTH);
    double fit = frame.width() / 5 / frame.perM() / unitsM;
    double length = Axis.niceStep(fit);
    double bar = length * unitsM * frame.perM();
    double y = frame.height() - 10;
    page.empty(
        "path",
        "d",
        "M12 "
            + Chart.number(y - 6)
            + "V"
            + Chart.number(y)
            + "H"
            + Chart.number(12 + bar)
            + "V"
            + Chart.number(y - 6),
        "class",
        "scale");
    String text = Figures.decimals(length, 0) + " " + figures.unit(Amount.LENGTH);
    page.line(
        "text", text, "x", Chart.number(18 + bar), "y", Chart.number(y), "class", "furniture");
  }

  private void north() {
    double x = frame.width() - 22;
    page.in(
        "g",
        () -> {
          page.line("title", "North is up");
          page.empty("path", "d", "M" + x + " 12l7 22l-7 -5l-7 5Z", "class", "north");
          page.line(
              "text",
              "N",
              "x",
              Chart.number(x),
              "y",
              "50",
              "text-anchor",
              "middle",
              "class",
              "furniture");
        });
  }
}
