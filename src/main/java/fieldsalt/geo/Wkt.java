package fieldsalt.geo;

import java.text.ParseException;
import java.util.regex.Pattern;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.referencing.wkt.Parser;

/** Well-known text, version 1, read without asking any registry. */
final class Wkt {
  private static final Pattern NORTH_THEN_EAST =
      Pattern.compile(
          ",\\s*AXIS\\s*\\[\\s*\"[^\"]*\"\\s*,\\s*\"?NORTH\"?\\s*\\]"
              + "\\s*,\\s*AXIS\\s*\\[\\s*\"[^\"]*\"\\s*,\\s*\"?EAST\"?\\s*\\]",
          Pattern.CASE_INSENSITIVE);

  private Wkt() {}

  /**
   * The system that the text describes, with the easting or longitude first: files store it first
   * whatever the text says of its axes.
   */
  static CoordinateReferenceSystem parse(String text) throws ParseException {
    Silence.begin();
    String eastFirst = NORTH_THEN_EAST.matcher(text).replaceAll("");
    return (CoordinateReferenceSystem) new Parser().parseObject(eastFirst);
  }
}
