package fieldsalt.sample;

import org.locationtech.jts.geom.Coordinate;

/**
 * Where the invented ranch lies: in the open North Pacific, on the central meridian of UTM zone 5.
 * Local metres east and north of its corner become longitude and latitude by the radii of the WGS
 * 84 ellipsoid there, true to a few centimetres over the ranch.
 */
final class OpenSea {
  static final double LONGITUDE = -153.01;
  static final double LATITUDE = 30.0;
  private static final double AXIS_M = 6_378_137;
  private static final double E2 = 0.006694379990141317;

  private OpenSea() {}

  /** {longitude, latitude} in degrees. */
  static double[] lonLat(double xM, double yM) {
    double sin = Math.sin(Math.toRadians(LATITUDE));
    double w = 1 - E2 * sin * sin;
    double alongMeridian = AXIS_M * (1 - E2) / (w * Math.sqrt(w));
    double alongParallel = AXIS_M / Math.sqrt(w) * Math.cos(Math.toRadians(LATITUDE));
    return new double[] {
      LONGITUDE + Math.toDegrees(xM / alongParallel), LATITUDE + Math.toDegrees(yM / alongMeridian)
    };
  }

  static double[] lonLat(Coordinate metres) {
    return lonLat(metres.x, metres.y);
  }
}
