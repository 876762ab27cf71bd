package fieldsalt.geo;

/**
 * The Equal Earth projection (Savric, Patterson and Jenny 2019, International Journal of
 * Geographical Information Science 33:454; IOGP method 1078).
 */
record EqualEarth(Ellipsoid ellipsoid, double meridian, double eastingM, double northingM)
    implements GridToDegrees {
  private static final double A1 = 1.340264;
  private static final double A2 = -0.081106;
  private static final double A3 = 0.000893;
  private static final double A4 = 0.003796;
  private static final int ROUNDS = 12;

  static EqualEarth of(GridParameters given) {
    return new EqualEarth(
        given.ellipsoid(),
        given.angle("central_meridian", "longitude_of_center", "longitude_of_natural_origin"),
        given.falseEastingM(),
        given.falseNorthingM());
  }

  @Override
  public double[] degrees(double xM, double yM) {
    EqualAreaLatitude equalArea = new EqualAreaLatitude(ellipsoid.eccentricitySquared());
    double pole = equalArea.q(Math.PI / 2);
    double radiusM = ellipsoid.semiMajorM() * Math.sqrt(pole / 2);
    double theta = theta((yM - northingM) / radiusM);
    double phi = equalArea.latitude(pole * 2 * Math.sin(theta) / Math.sqrt(3));
    double lambda =
        meridian + Math.sqrt(3) * (xM - eastingM) / radiusM * slope(theta) / (2 * Math.cos(theta));
    return new double[] {Math.toDegrees(lambda), Math.toDegrees(phi)};
  }

  private static double theta(double y) {
    double theta = y / A1;
    for (int i = 0; i < ROUNDS; i++) {
      double t2 = theta * theta;
      double t6 = t2 * t2 * t2;
      theta -= (theta * (A1 + A2 * t2 + t6 * (A3 + A4 * t2)) - y) / slope(theta);
    }
    return theta;
  }

  private static double slope(double theta) {
    double t2 = theta * theta;
    double t6 = t2 * t2 * t2;
    return A1 + 3 * A2 * t2 + t6 * (7 * A3 + 9 * A4 * t2);
  }
}
