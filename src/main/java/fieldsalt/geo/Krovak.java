package fieldsalt.geo;

/**
 * Krovak's oblique conic projection (IOGP Guidance Note 7-2, methods 9819 and 1041). Its grid
 * counts south and west, its variant east and north, and files have the two numbers in either
 * order. That leaves no doubt: the grid was laid so that all of Czechia and Slovakia is further
 * south than west of its origin.
 *
 * @param axisColatitude of the cone's axis
 * @param parallel on the turned sphere, where the scale is given
 */
record Krovak(
    Ellipsoid ellipsoid,
    double centreLatitude,
    double meridian,
    double axisColatitude,
    double parallel,
    double scale)
    implements GridToDegrees {

  /**
   * From a text.
   *
   * @throws IllegalArgumentException if it counts from a false origin (the modified projection)
   */
  static Krovak of(GridParameters given) {
    if (given.falseEastingM() != 0 || given.falseNorthingM() != 0) {
      throw new IllegalArgumentException("a false easting or northing");
    }
    return new Krovak(
        given.ellipsoid(),
        given.angle("latitude_of_center", "latitude_of_projection_centre"),
        given.angle("longitude_of_center", "longitude_of_origin"),
        given.angle("azimuth", "co-latitude_of_cone_axis"),
        given.angle("pseudo_standard_parallel_1", "latitude_of_pseudo_standard_parallel"),
        given.number("scale_factor", "scale_factor_on_pseudo_standard_parallel"));
  }

  @Override
  public double[] degrees(double xM, double yM) {
    double southM = Math.max(Math.abs(xM), Math.abs(yM));
    double westM = Math.min(Math.abs(xM), Math.abs(yM));
    double e2 = ellipsoid.eccentricitySquared();
    ConformalSphere sphere = new ConformalSphere(Math.sqrt(e2), centreLatitude);
    double n = Math.sin(parallel);
    double radiusM = scale * ellipsoid.semiMajorM() * sphere.radius() / Math.tan(parallel);
    double turned = Math.atan2(westM, southM) / n;
    double ratio = Math.pow(radiusM / Math.hypot(southM, westM), 1 / n);
    double t = 2 * Math.atan(ratio * Math.tan(Math.PI / 4 + parallel / 2)) - Math.PI / 2;
    double u =
        Math.asin(
            Math.cos(axisColatitude) * Math.sin(t)
                - Math.sin(axisColatitude) * Math.cos(t) * Math.cos(turned));
    double v = Math.asin(Math.cos(t) * Math.sin(turned) / Math.cos(u));
    double lambda = meridian - v / sphere.exponent();
    return new double[] {Math.toDegrees(lambda), Math.toDegrees(sphere.latitude(u))};
  }
}
