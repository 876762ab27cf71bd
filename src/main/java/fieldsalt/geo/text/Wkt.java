package fieldsalt.geo.text;

import java.text.ParseException;

/** Well-known text, read without asking any registry. */
public final class Wkt {
  private Wkt() {}

  /**
   * The horizontal system of a text of either version, as version 1 with its quirks mended.
   *
   * @throws ParseException if the text is damaged, or lacks what is needed
   */
  public static WktNode horizontal(String text) throws ParseException {
    WktNode root = WktNode.parse(text);
    return Wkt1.mended(Wkt2.is(root) ? Wkt2.toWkt1(root) : root);
  }
}
