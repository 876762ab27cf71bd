package fieldsalt.report.draw;

import fieldsalt.report.markup.Markup;

/** A small square of colour, drawn (not a background) so that it prints. */
public final class Swatch {
  private Swatch() {}

  public static void write(Markup page, String colour, String said) {
    page.in(
        "svg",
        () ->
            page.empty(
                "rect", "x", "1", "y", "1", "width", "18", "height", "14", "fill", colour, "stroke",
                "#5b5346"),
        "class",
        "swatch",
        "viewBox",
        "0 0 20 16",
        "role",
        "img",
        "aria-label",
        said);
  }
}
