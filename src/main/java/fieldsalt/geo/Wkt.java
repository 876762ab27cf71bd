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

  /** The projection that southern Africa uses, as .prj files and as GeoTools call it. */
  private static final String SOUTH_ORIENTATED = "\"Transverse_Mercator_South_Orientated\"";

  private static final String SOUTH_ORIENTATED_HERE = "\"Transverse Mercator (South Orientated)\"";

  private Wkt() {}

  /**
   * The system that the text describes, with the easting or longitude first: files store it first
   * whatever the text says of its axes.
   */
  static CoordinateReferenceSystem parse(String text) throws ParseException {
    Silence.begin();
    String eastFirst = NORTH_THEN_EAST.matcher(text).replaceAll("");
    String known = southOrientated(eastFirst);
    return (CoordinateReferenceSystem) new Parser().parseObject(known);
  }

  /** Such a system counts west and south; a .prj file does not say so, the registry does. */
  private static String southOrientated(String text) {
    String known = text.replace(SOUTH_ORIENTATED, SOUTH_ORIENTATED_HERE);
    if (known.equals(text) || text.contains("AXIS[")) {
      return known;
    }
    int end = known.lastIndexOf(']');
    return known.substring(0, end) + ",AXIS[\"Y\",WEST],AXIS[\"X\",SOUTH]]";
  }
}
