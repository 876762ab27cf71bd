package fieldsalt.geo;

import java.util.Locale;

/**
 * A zone of the Universal Transverse Mercator system on WGS 84, without the exceptions for Norway
 * and Svalbard.
 *
 * @param zone 1 to 60
 */
record Utm(int zone, boolean south) {
  static final double MAX_LATITUDE = 84;
  private static final double METRES_PER_DEGREE = 111_320;

  Utm {
    if (zone < 1 || zone > 60) {
      throw new IllegalArgumentException("UTM zones run from 1 to 60, was " + zone);
    }
  }

  static Utm at(double longitude, double latitude) {
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

  int epsg() {
    return (south ? 32700 : 32600) + zone;
  }

  double centralMeridian() {
    return zone * 6 - 183;
  }

  /** Whether the projection is exact there: within 15 degrees of the central meridian. */
  boolean reaches(double longitude, double latitude) {
    return Math.abs(fromMeridian(longitude)) <= 15 && Math.abs(latitude) <= MAX_LATITUDE;
  }

  private double fromMeridian(double longitude) {
    return Math.IEEEremainder(longitude - centralMeridian(), 360);
  }

  /** Roughly where a place beyond the projection's reach is: thousands of kilometres away. */
  PlaceM roughly(double longitude, double latitude) {
    return new PlaceM(
        500_000 + fromMeridian(longitude) * METRES_PER_DEGREE,
        (south ? 10_000_000 : 0) + latitude * METRES_PER_DEGREE);
  }

  String name() {
    return "WGS 84 / UTM zone " + zone + (south ? "S" : "N");
  }

  /**
   * Well-known text version 1 as the EPSG registry's terms give it, longitude and easting first.
   */
  String wkt() {
    return String.format(
        Locale.ROOT,
        "PROJCS[\"%s\",%s,PROJECTION[\"Transverse_Mercator\"],"
            + "PARAMETER[\"latitude_of_origin\",0],PARAMETER[\"central_meridian\",%.0f],"
            + "PARAMETER[\"scale_factor\",0.9996],PARAMETER[\"false_easting\",500000],"
            + "PARAMETER[\"false_northing\",%d],UNIT[\"metre\",1,AUTHORITY[\"EPSG\",\"9001\"]],"
            + "AXIS[\"Easting\",EAST],AXIS[\"Northing\",NORTH],AUTHORITY[\"EPSG\",\"%d\"]]",
        name(),
        Wgs84.WKT,
        centralMeridian(),
        south ? 10_000_000 : 0,
        epsg());
  }

  String esriWkt() {
    return String.format(
        Locale.ROOT,
        "PROJCS[\"WGS_1984_UTM_Zone_%d%s\",%s,PROJECTION[\"Transverse_Mercator\"],"
            + "PARAMETER[\"False_Easting\",500000.0],PARAMETER[\"False_Northing\",%d.0],"
            + "PARAMETER[\"Central_Meridian\",%.1f],PARAMETER[\"Scale_Factor\",0.9996],"
            + "PARAMETER[\"Latitude_Of_Origin\",0.0],UNIT[\"Meter\",1.0]]",
        zone,
        south ? "S" : "N",
        Wgs84.ESRI_WKT,
        south ? 10_000_000 : 0,
        centralMeridian());
  }
}
