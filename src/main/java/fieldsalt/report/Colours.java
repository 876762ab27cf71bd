package fieldsalt.report;

import fieldsalt.handover.Palette;

/** The product's ramp on the page. */
final class Colours {
  private Colours() {}

  static String ofClass(int klass, int classes) {
    return Palette.classes(classes).get(klass);
  }
}
