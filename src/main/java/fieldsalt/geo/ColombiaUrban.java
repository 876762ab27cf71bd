package fieldsalt.geo;

/**
 * Colombia Urban: a plane at the height of a town (IOGP Guidance Note 7-2, method 1052).
 *
 * @param originHeightM of the plane above the ellipsoid
 */
record ColombiaUrban(
    Ellipsoid ellipsoid,
    double originLatitude,
    double originLongitude,
    double originHeightM,
    double eastingM,
    double northingM)
    implements GridToDegrees {

  static ColombiaUrban of(GridParameters given) {
    return new ColombiaUrban(
        given.ellipsoid(),
        given.angle("latitude_of_center", "latitude_of_origin", "latitude_of_natural_origin"),
        given.angle("longitude_of_center", "central_meridian", "longitude_of_natural_origin"),
        given.number("height", "projection_plane_origin_height", "projection_plane_height")
            * given.metres(),
        given.falseEastingM(),
        given.falseNorthingM());
  }

  @Override
  public double[] degrees(double xM, double yM) {
    double a = ellipsoid.semiMajorM();
    double e2 = ellipsoid.eccentricitySquared();
    double sin = Math.sin(originLatitude);
    double w = 1 - e2 * sin * sin;
    double meridianRadius = a * (1 - e2) / Math.pow(w, 1.5);
    double primeRadius = a / Math.sqrt(w);
    double bend = Math.tan(originLatitude) / (2 * meridianRadius * primeRadius);
    double widen = 1 + originHeightM / a;
    double northRadius = meridianRadius * (1 + originHeightM / (a * (1 - e2)));
    double east = (xM - eastingM) / widen;
    double phi = originLatitude + (yM - northingM) / northRadius - bend * east * east;
    double here = a / Math.sqrt(1 - e2 * Math.sin(phi) * Math.sin(phi));
    double lambda = originLongitude + east / (here * Math.cos(phi));
    return new double[] {Math.toDegrees(lambda), Math.toDegrees(phi)};
  }
}
