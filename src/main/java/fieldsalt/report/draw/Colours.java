package fieldsalt.report.draw;

import fieldsalt.handover.input.Palette;

/** The product's ramp on the page. */
public final class Colours {
  private Colours() {}

  public static String ofClass(int klass, int classes) {
    return Palette.classes(classes).get(klass);
  }
}
