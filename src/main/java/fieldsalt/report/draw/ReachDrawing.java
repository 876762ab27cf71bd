package fieldsalt.report.draw;

import fieldsalt.quantity.UnitSystem.Amount;
import fieldsalt.report.markup.Figures;
import fieldsalt.report.markup.Markup;
import fieldsalt.surface.covariance.Anisotropy;
import java.util.Locale;

/**
 * Which way salt reaches farthest, as inline SVG: an ellipse of the distance parameter in every
 * direction, north up, with an arrow along its long axis.
 */
public final class ReachDrawing {
  private static final double WIDTH = 440;
  private static final double HEIGHT = 300;
  private static final double X = WIDTH / 2;
  private static final double Y = HEIGHT / 2 + 8;

  /** Half the long axis. */
  private static final double REACH = 112;

  private static final double NORTH = 128;
  private static final double ARC = 62;
  private static final double HEAD = 9;

  private final Markup page;
  private final Figures figures;
  private final Anisotropy reach;
  private final double rangeM;
  private final boolean local;

  /**
   * @param reach with a ratio above 1
   * @param rangeM distance parameter along the azimuth
   * @param local whether up is y and not north
   */
  public ReachDrawing(
      Markup page, Figures figures, Anisotropy reach, double rangeM, boolean local) {
    this.page = page;
    this.figures = figures;
    this.reach = reach;
    this.rangeM = rangeM;
    this.local = local;
  }

  public void draw() {
    String described = "Ellipse of the reach: " + words();
    page.in(
        "svg",
        () -> {
          page.line("title", described);
          north();
          ellipse();
          arc();
          arrow();
          labels();
        },
        "class",
        "chart",
        "viewBox",
        "0 0 " + Chart.number(WIDTH) + " " + Chart.number(HEIGHT),
        "role",
        "img");
  }

  public String caption() {
    return "Salt reaches farthest along "
        + words()
        + ". The ellipse is the model's distance parameter in every direction.";
  }

  private String words() {
    return degrees()
        + (local ? " (clockwise from the direction of y), " : " (clockwise from north), ")
        + Figures.twoFigures(reach.ratio())
        + " times as far as across";
  }

  private String degrees() {
    return String.format(Locale.ROOT, "%.0f°", reach.azimuthDeg());
  }

  /** A place so far from the middle, in a direction clockwise from up. */
  private static double[] at(double azimuthDeg, double length) {
    double angle = Math.toRadians(azimuthDeg);
    return new double[] {X + length * Math.sin(angle), Y - length * Math.cos(angle)};
  }

  private void north() {
    path("M" + place(at(0, 0)) + "L" + place(at(0, NORTH)), "grid");
    path("M" + place(at(90, NORTH)) + "L" + place(at(270, NORTH)), "grid");
    text(local ? "y" : "N", at(0, NORTH + 8), "middle");
  }

  private void ellipse() {
    page.empty(
        "ellipse",
        "cx",
        Chart.number(X),
        "cy",
        Chart.number(Y),
        "rx",
        Chart.number(REACH / reach.ratio()),
        "ry",
        Chart.number(REACH),
        "transform",
        "rotate(" + Chart.number(reach.azimuthDeg()) + " " + place(new double[] {X, Y}) + ")",
        "class",
        "reach");
  }

  private void arc() {
    if (reach.azimuthDeg() >= 1) {
      String sweep = "A" + place(new double[] {ARC, ARC}) + " 0 0 1 ";
      path("M" + place(at(0, ARC)) + sweep + place(at(reach.azimuthDeg(), ARC)), "reach-arc");
    }
  }

  /** From end to end of the long axis, with a head at both. */
  private void arrow() {
    double azimuth = reach.azimuthDeg();
    path(
        "M" + place(at(azimuth + 180, REACH)) + "L" + place(at(azimuth, REACH)),
        "reach-arrow",
        "along");
    head(azimuth);
    head(azimuth + 180);
  }

  private void head(double azimuth) {
    double[] tip = at(azimuth, REACH);
    double[] back = at(azimuth, REACH - HEAD);
    double sideX = (back[1] - tip[1]) / 2;
    double sideY = (tip[0] - back[0]) / 2;
    path(
        "M"
            + place(new double[] {back[0] + sideX, back[1] + sideY})
            + "L"
            + place(tip)
            + "L"
            + place(new double[] {back[0] - sideX, back[1] - sideY}),
        "reach-arrow");
  }

  private void labels() {
    double azimuth = reach.azimuthDeg();
    text(figures.amount(rangeM, Amount.LENGTH), at(azimuth, REACH + 16), side(azimuth));
    double across = azimuth + 90;
    double half = REACH / reach.ratio() + 12;
    text(figures.amount(rangeM / reach.ratio(), Amount.LENGTH), at(across, half), side(across));
    text(degrees(), at(azimuth / 2, ARC + 12), side(azimuth / 2));
  }

  /** Text right of the middle begins at its place, left of it ends there. */
  private static String side(double azimuth) {
    double sin = Math.sin(Math.toRadians(azimuth));
    return sin > 0.2 ? "start" : sin < -0.2 ? "end" : "middle";
  }

  private void text(String text, double[] at, String anchor) {
    page.line(
        "text",
        text,
        "x",
        Chart.number(at[0]),
        "y",
        Chart.number(at[1] + 4),
        "text-anchor",
        anchor,
        "class",
        "reach-text");
  }

  private void path(String path, String kind) {
    page.empty("path", "d", path, "class", kind);
  }

  private void path(String path, String kind, String id) {
    page.empty("path", "id", "reach-" + id, "d", path, "class", kind);
  }

  private static String place(double[] at) {
    return Chart.number(at[0]) + " " + Chart.number(at[1]);
  }
}
