package fieldsalt.geo.datum;

/**
 * An ellipsoid of revolution, and the way between degrees on it and metres from the earth's centre.
 *
 * @param semiMajorM metres
 * @param inverseFlattening 0 for a sphere
 */
public record Ellipsoid(double semiMajorM, double inverseFlattening) {
  public static final Ellipsoid WGS84 = new Ellipsoid(6378137, 298.257223563);
  private static final double SAME_AXIS_M = 1;
  private static final double SAME_FLATTENING = 0.01;
  private static final int ROUNDS = 6;

  /** Flattening, 0 for a sphere. */
  public double flattening() {
    return inverseFlattening == 0 ? 0 : 1 / inverseFlattening;
  }

  /** The first eccentricity, squared. */
  public double eccentricitySquared() {
    double flattening = flattening();
    return flattening * (2 - flattening);
  }

  /** Whether the two are one within what printed digits leave open. */
  public boolean isNearly(Ellipsoid other) {
    return Math.abs(semiMajorM - other.semiMajorM) < SAME_AXIS_M
        && Math.abs(inverseFlattening - other.inverseFlattening) < SAME_FLATTENING;
  }

  /** {x, y, z} in metres of a place on the ellipsoid itself. */
  double[] fromCentre(double longitude, double latitude) {
    double e2 = eccentricitySquared();
    double sin = Math.sin(Math.toRadians(latitude));
    double cos = Math.cos(Math.toRadians(latitude));
    double n = semiMajorM / Math.sqrt(1 - e2 * sin * sin);
    double lambda = Math.toRadians(longitude);
    return new double[] {
      n * cos * Math.cos(lambda), n * cos * Math.sin(lambda), n * (1 - e2) * sin
    };
  }

  /**
   * {longitude, latitude} in degrees of a point near the ellipsoid, its height left out. Latitude
   * by fixed-point rounds, each of which gains more than two digits near the ground.
   */
  double[] degrees(double[] fromCentreM) {
    double e2 = eccentricitySquared();
    double p = Math.hypot(fromCentreM[0], fromCentreM[1]);
    double phi = Math.atan2(fromCentreM[2], p * (1 - e2));
    for (int i = 0; i < ROUNDS; i++) {
      double sin = Math.sin(phi);
      double n = semiMajorM / Math.sqrt(1 - e2 * sin * sin);
      phi = Math.atan2(fromCentreM[2] + e2 * n * sin, p);
    }
    double lambda = Math.atan2(fromCentreM[1], fromCentreM[0]);
    return new double[] {Math.toDegrees(lambda), Math.toDegrees(phi)};
  }
}
