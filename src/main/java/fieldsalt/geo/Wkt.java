package fieldsalt.geo;

import java.text.ParseException;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.referencing.wkt.Parser;

/** Well-known text, read without asking any registry. */
final class Wkt {
  private Wkt() {}

  /** The horizontal system of a text of either version, as version 1 with its quirks mended. */
  static WktNode horizontal(String text) throws ParseException {
    WktNode root = WktNode.parse(text);
    return Wkt1.mended(Wkt2.is(root) ? Wkt2.toWkt1(root) : root);
  }

  /**
   * The system that the text describes, with the easting or longitude first: files store it first
   * whatever the text says of its axes.
   */
  static CoordinateReferenceSystem parse(String text) throws ParseException {
    return parse(horizontal(text));
  }

  static CoordinateReferenceSystem parse(WktNode mended) throws ParseException {
    Silence.begin();
    return (CoordinateReferenceSystem) new Parser().parseObject(mended.toString());
  }
}
