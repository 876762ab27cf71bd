package fieldsalt.geo.projection;

import fieldsalt.geo.datum.Ellipsoid;
import fieldsalt.geo.datum.WaysToWgs84;
import fieldsalt.geo.text.WktNode;
import java.text.ParseException;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * The systems of WGS 84 that need no coordinate library: longitude and latitude in degrees, and
 * UTM; by code or by the text that programs write of them.
 */
public final class Wgs84 {
  static final String WKT =
      "GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\",SPHEROID[\"WGS 84\",6378137,298.257223563,"
          + "AUTHORITY[\"EPSG\",\"7030\"]],AUTHORITY[\"EPSG\",\"6326\"]],"
          + "PRIMEM[\"Greenwich\",0,AUTHORITY[\"EPSG\",\"8901\"]],"
          + "UNIT[\"degree\",0.0174532925199433,AUTHORITY[\"EPSG\",\"9122\"]],"
          + "AXIS[\"Longitude\",EAST],AXIS[\"Latitude\",NORTH],AUTHORITY[\"EPSG\",\"4326\"]]";

  static final String ESRI_WKT =
      "GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\",SPHEROID[\"WGS_1984\",6378137.0,298.257223563]],"
          + "PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]]";

  private static final int EPSG = 4326;
  private static final Pattern DATUM =
      Pattern.compile(
          "(D_)?(WGS[ _]?(19)?84|World[ _]Geodetic[ _]System[ _]1984)", Pattern.CASE_INSENSITIVE);

  private Wgs84() {}

  /** Longitude and latitude in degrees. */
  public static TiedGrid degrees() {
    return new TiedGrid("WGS 84", GridWay.PLAIN, WaysToWgs84.same());
  }

  /** The system of an EPSG code, if it is one of these. */
  public static Optional<TiedGrid> ofCode(int code) {
    if (code == EPSG) {
      return Optional.of(degrees());
    }
    return Utm.isCode(code) ? Optional.of(grid(Utm.ofCode(code))) : Optional.empty();
  }

  /** The system that a text describes, if it is one of these. */
  public static Optional<TiedGrid> ofText(WktNode node) throws ParseException {
    Optional<WktNode> base = node.child("GEOGCS");
    if (base.isPresent()) {
      return isDegrees(base.get()) ? Utm.ofText(node).map(Wgs84::grid) : Optional.empty();
    }
    return isDegrees(node) ? Optional.of(degrees()) : Optional.empty();
  }

  private static TiedGrid grid(Utm utm) {
    return new TiedGrid(utm.name(), GridWay.of(utm::degrees, utm::metres), WaysToWgs84.same());
  }

  private static boolean isDegrees(WktNode geographic) throws ParseException {
    Optional<WktNode> datum = geographic.child("DATUM");
    Optional<WktNode> spheroid = datum.flatMap(d -> d.child("SPHEROID"));
    Optional<WktNode> unit = geographic.child("UNIT");
    Optional<WktNode> meridian = geographic.child("PRIMEM");
    return spheroid.isPresent()
        && DATUM.matcher(datum.get().name()).matches()
        && datum.get().child("TOWGS84").isEmpty()
        && new Ellipsoid(spheroid.get().number(1), spheroid.get().number(2))
            .isNearly(Ellipsoid.WGS84)
        && unit.isPresent()
        && Math.abs(Math.toDegrees(unit.get().number(1)) - 1) < 1e-12
        && (meridian.isEmpty() || meridian.get().number(1) == 0);
  }
}
