package fieldsalt.report.draw;

import fieldsalt.report.markup.Markup;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;

/** A small chart as inline SVG: axes with ticks and units, points, lines, a band. */
public final class Chart {
  private static final double WIDTH = 440;
  private static final double HEIGHT = 300;
  private static final double LEFT = 58;
  private static final double RIGHT = 14;
  private static final double TOP = 12;
  private static final double BOTTOM = 48;
  private static final int STEPS = 80;

  private final Markup page;
  private final Axis across;
  private final Axis up;

  public Chart(Markup page, Axis across, Axis up) {
    this.page = page;
    this.across = across;
    this.up = up;
  }

  /**
   * Draws it.
   *
   * @param described what it shows, for those who do not see it
   */
  public void draw(String described, Runnable content) {
    page.in(
        "svg",
        () -> {
          page.line("title", described);
          axes();
          content.run();
        },
        "class",
        "chart",
        "viewBox",
        "0 0 " + number(WIDTH) + " " + number(HEIGHT),
        "role",
        "img");
  }

  private void axes() {
    for (double tick : across.ticks()) {
      line(x(tick), TOP, x(tick), HEIGHT - BOTTOM, "grid");
      label(tickText(tick), x(tick), HEIGHT - BOTTOM + 17, "middle");
    }
    for (double tick : up.ticks()) {
      line(LEFT, y(tick), WIDTH - RIGHT, y(tick), "grid");
      label(tickText(tick), LEFT - 6, y(tick) + 4, "end");
    }
    label(across.label(), (LEFT + WIDTH - RIGHT) / 2, HEIGHT - 8, "middle");
    String turn = "rotate(-90 14 " + number((TOP + HEIGHT - BOTTOM) / 2) + ")";
    page.line(
        "text",
        up.label(),
        "x",
        "14",
        "y",
        number((TOP + HEIGHT - BOTTOM) / 2),
        "text-anchor",
        "middle",
        "transform",
        turn);
  }

  private static String tickText(double tick) {
    String text = String.format(Locale.ROOT, "%.4f", tick);
    return text.replaceFirst("\\.?0+$", "");
  }

  private void label(String text, double x, double y, String anchor) {
    page.line("text", text, "x", number(x), "y", number(y), "text-anchor", anchor);
  }

  void line(double x1, double y1, double x2, double y2, String kind) {
    page.empty(
        "line",
        "x1",
        number(x1),
        "y1",
        number(y1),
        "x2",
        number(x2),
        "y2",
        number(y2),
        "class",
        kind);
  }

  /** A dot; what one reads when pointing at it. */
  public void point(double across, double up, String kind, String tip) {
    page.in(
        "circle",
        () -> page.line("title", tip),
        "cx",
        number(x(across)),
        "cy",
        number(y(up)),
        "r",
        "4.5",
        "class",
        kind);
  }

  /** A curve, as far as it stays between the ends of the upward axis. */
  public void curve(DoubleUnaryOperator f, String kind) {
    StringBuilder path = new StringBuilder();
    boolean drawing = false;
    for (int i = 0; i <= STEPS; i++) {
      double value = f.applyAsDouble(across(i));
      boolean inside = value >= up.from() && value <= up.to();
      if (inside) {
        path.append(drawing ? "L" : "M").append(place(across(i), value));
      }
      drawing = inside;
    }
    page.empty("path", "d", path.toString(), "class", kind);
  }

  /** What lies between two curves. */
  public void band(DoubleUnaryOperator low, DoubleUnaryOperator high, String kind) {
    StringBuilder path = new StringBuilder();
    for (int i = 0; i <= STEPS; i++) {
      path.append(i == 0 ? "M" : "L").append(place(across(i), high.applyAsDouble(across(i))));
    }
    for (int i = STEPS; i >= 0; i--) {
      path.append("L").append(place(across(i), low.applyAsDouble(across(i))));
    }
    page.empty("path", "d", path + "Z", "class", kind);
  }

  /** A line through points. */
  public void polyline(List<double[]> points, String kind) {
    StringBuilder path = new StringBuilder();
    points.forEach(p -> path.append(path.isEmpty() ? "M" : "L").append(place(p[0], p[1])));
    page.empty("path", "d", path.toString(), "class", kind);
  }

  private double across(int step) {
    double share = step / (double) STEPS;
    return across.log()
        ? across.from() * Math.pow(across.to() / across.from(), share)
        : across.from() + share * (across.to() - across.from());
  }

  private String place(double across, double up) {
    return number(x(across)) + " " + number(y(up));
  }

  private double x(double value) {
    return LEFT + across.at(value) * (WIDTH - LEFT - RIGHT);
  }

  private double y(double value) {
    return HEIGHT - BOTTOM - up.at(value) * (HEIGHT - TOP - BOTTOM);
  }

  /** A coordinate: a tenth is finer than any screen. */
  public static String number(double value) {
    return String.format(Locale.ROOT, "%.1f", value).replaceFirst("\\.0$", "");
  }
}
