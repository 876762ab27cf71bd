package fieldsalt.geo;

/**
 * Lambert's cylindrical equal-area projection of the ellipsoid (Snyder 1987, Map Projections,
 * equations 10-13 to 10-20; IOGP method 9835).
 */
record CylindricalEqualArea(
    Ellipsoid ellipsoid, double parallel, double meridian, double eastingM, double northingM)
    implements GridToDegrees {

  /** What the projection is called where its standard parallel is 30 degrees. */
  static final String BEHRMANN = "behrmann";

  static CylindricalEqualArea of(GridParameters given) {
    return new CylindricalEqualArea(
        given.ellipsoid(),
        given.angle("standard_parallel_1", "latitude_of_1st_standard_parallel"),
        given.angle("central_meridian", "longitude_of_natural_origin"),
        given.falseEastingM(),
        given.falseNorthingM());
  }

  @Override
  public double[] degrees(double xM, double yM) {
    double e2 = ellipsoid.eccentricitySquared();
    double sin = Math.sin(parallel);
    double scale = Math.cos(parallel) / Math.sqrt(1 - e2 * sin * sin);
    double lambda = meridian + (xM - eastingM) / (ellipsoid.semiMajorM() * scale);
    double q = 2 * (yM - northingM) * scale / ellipsoid.semiMajorM();
    double phi = new EqualAreaLatitude(e2).latitude(q);
    return new double[] {Math.toDegrees(lambda), Math.toDegrees(phi)};
  }
}
