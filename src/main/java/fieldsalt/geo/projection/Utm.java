package fieldsalt.geo.projection;

import fieldsalt.geo.datum.Ellipsoid;
import fieldsalt.geo.text.WktNode;
import java.text.ParseException;
import java.util.Locale;
import java.util.Optional;

/**
 * A zone of the Universal Transverse Mercator system on WGS 84, without the exceptions for Norway
 * and Svalbard.
 *
 * @param zone 1 to 60
 */
public record Utm(int zone, boolean south) {
  /** Degrees of latitude north and south that the system covers. */
  public static final double MAX_LATITUDE = 84;

  private static final double REACH_DEGREES = 15;
  private static final double ROUNDING_DEGREES = 1e-6;
  private static final double METRES_PER_DEGREE = 111_320;
  private static final double SCALE = 0.9996;
  private static final int MERIDIAN_M = 500_000;
  private static final int SOUTH_M = 10_000_000;
  private static final TransverseMercator GRID = new TransverseMercator(Ellipsoid.WGS84, SCALE);

  public Utm {
    if (zone < 1 || zone > 60) {
      throw new IllegalArgumentException("UTM zones run from 1 to 60, was " + zone);
    }
  }

  /** The zone of a place in degrees. */
  public static Utm at(double longitude, double latitude) {
    int zone = Math.min(60, (int) Math.floor((longitude + 180) / 6) + 1);
    return new Utm(zone, latitude < 0);
  }

  /** Whether an EPSG code is one of the 120 of WGS 84 / UTM. */
  static boolean isCode(int epsg) {
    return (epsg > 32600 && epsg <= 32660) || (epsg > 32700 && epsg <= 32760);
  }

  static Utm ofCode(int epsg) {
    return new Utm(epsg % 100, epsg > 32700);
  }

  /** The zone whose grid a text describes; none if it is another grid, or turned. */
  static Optional<Utm> ofText(WktNode projected) throws ParseException {
    double zone = (number(projected, "central_meridian") + 183) / 6;
    double equatorM = number(projected, "false_northing");
    boolean is =
        isTransverseMercatorInMetres(projected)
            && number(projected, "latitude_of_origin") == 0
            && number(projected, "scale_factor") == SCALE
            && number(projected, "false_easting") == MERIDIAN_M
            && (equatorM == 0 || equatorM == SOUTH_M)
            && (zone == Math.rint(zone) && zone >= 1 && zone <= 60);
    return is ? Optional.of(new Utm((int) zone, equatorM > 0)) : Optional.empty();
  }

  private static double number(WktNode projected, String parameter) {
    return projected.parameter(parameter).orElse(Double.NaN);
  }

  private static boolean isTransverseMercatorInMetres(WktNode projected) throws ParseException {
    Optional<WktNode> projection = projected.child("PROJECTION");
    Optional<WktNode> unit = projected.child("UNIT");
    return projection.isPresent()
        && projection.get().name().replace(' ', '_').equalsIgnoreCase("Transverse_Mercator")
        && projected.child("AXIS").isEmpty()
        && unit.isPresent()
        && unit.get().number(1) == 1;
  }

  /** Its EPSG code. */
  public int epsg() {
    return (south ? 32700 : 32600) + zone;
  }

  private int centralMeridian() {
    return zone * 6 - 183;
  }

  private int equatorM() {
    return south ? SOUTH_M : 0;
  }

  /** Whether a place in degrees is within 15 degrees of the central meridian. */
  public boolean reaches(double longitude, double latitude) {
    return Math.abs(fromMeridian(longitude)) <= REACH_DEGREES + ROUNDING_DEGREES
        && Math.abs(latitude) <= MAX_LATITUDE + ROUNDING_DEGREES;
  }

  private double fromMeridian(double longitude) {
    return Math.IEEEremainder(longitude - centralMeridian(), 360);
  }

  /**
   * {easting, northing} in metres of a place in degrees.
   *
   * @throws OutOfReach beyond 3,900 km from the central meridian
   */
  public double[] metres(double longitude, double latitude) {
    double[] at = GRID.metres(fromMeridian(longitude), latitude);
    return new double[] {MERIDIAN_M + at[0], equatorM() + at[1]};
  }

  /**
   * {longitude, latitude} in degrees of a place in metres.
   *
   * @throws OutOfReach beyond 3,900 km from the central meridian, and beyond the poles
   */
  public double[] degrees(double xM, double yM) {
    double[] at = GRID.degrees(xM - MERIDIAN_M, yM - equatorM());
    return new double[] {Math.IEEEremainder(centralMeridian() + at[0], 360), at[1]};
  }

  /** Roughly where a place beyond the zone's reach is: thousands of kilometres away. */
  public double[] roughMetres(double longitude, double latitude) {
    return new double[] {
      MERIDIAN_M + fromMeridian(longitude) * METRES_PER_DEGREE,
      equatorM() + latitude * METRES_PER_DEGREE
    };
  }

  /** The way back of {@link #roughMetres}. */
  public double[] roughDegrees(double xM, double yM) {
    return new double[] {
      Math.IEEEremainder(centralMeridian() + (xM - MERIDIAN_M) / METRES_PER_DEGREE, 360),
      (yM - equatorM()) / METRES_PER_DEGREE
    };
  }

  /** A name for people, as the EPSG registry has it. */
  public String name() {
    return "WGS 84 / UTM zone " + zone + (south ? "S" : "N");
  }

  /**
   * Well-known text version 1 as the EPSG registry's terms give it, longitude and easting first.
   */
  public String wkt() {
    return String.format(
        Locale.ROOT,
        "PROJCS[\"%s\",%s,PROJECTION[\"Transverse_Mercator\"],"
            + "PARAMETER[\"latitude_of_origin\",0],PARAMETER[\"central_meridian\",%d],"
            + "PARAMETER[\"scale_factor\",0.9996],PARAMETER[\"false_easting\",500000],"
            + "PARAMETER[\"false_northing\",%d],UNIT[\"metre\",1,AUTHORITY[\"EPSG\",\"9001\"]],"
            + "AXIS[\"Easting\",EAST],AXIS[\"Northing\",NORTH],AUTHORITY[\"EPSG\",\"%d\"]]",
        name(),
        Wgs84.WKT,
        centralMeridian(),
        equatorM(),
        epsg());
  }

  /** Well-known text version 1 as .prj files have it. */
  public String esriWkt() {
    return String.format(
        Locale.ROOT,
        "PROJCS[\"WGS_1984_UTM_Zone_%d%s\",%s,PROJECTION[\"Transverse_Mercator\"],"
            + "PARAMETER[\"False_Easting\",500000.0],PARAMETER[\"False_Northing\",%d.0],"
            + "PARAMETER[\"Central_Meridian\",%d.0],PARAMETER[\"Scale_Factor\",0.9996],"
            + "PARAMETER[\"Latitude_Of_Origin\",0.0],UNIT[\"Meter\",1.0]]",
        zone,
        south ? "S" : "N",
        Wgs84.ESRI_WKT,
        equatorM(),
        centralMeridian());
  }
}
