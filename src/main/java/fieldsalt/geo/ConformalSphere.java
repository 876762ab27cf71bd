package fieldsalt.geo;

/**
 * Gauss's sphere, on which small shapes at a latitude are as on the ellipsoid (IOGP Guidance Note
 * 7-2, methods 9813 and 9819).
 */
record ConformalSphere(double eccentricity, double centreLatitude) {
  private static final int ROUNDS = 12;

  double exponent() {
    double e2 = eccentricity * eccentricity;
    return Math.sqrt(1 + e2 * Math.pow(Math.cos(centreLatitude), 4) / (1 - e2));
  }

  /** The centre's latitude on the sphere. */
  double centre() {
    return Math.asin(Math.sin(centreLatitude) / exponent());
  }

  /** The ellipsoid's radius at the centre over its semi-major axis. */
  double radius() {
    double sin = Math.sin(centreLatitude);
    double e2 = eccentricity * eccentricity;
    return Math.sqrt(1 - e2) / (1 - e2 * sin * sin);
  }

  private double stretched(double phi) {
    double es = eccentricity * Math.sin(phi);
    return Math.log(Math.tan(Math.PI / 4 + phi / 2))
        + eccentricity / 2 * Math.log((1 - es) / (1 + es));
  }

  /** The latitude on the ellipsoid of a latitude on the sphere, radians. */
  double latitude(double onSphere) {
    double constant =
        Math.log(Math.tan(Math.PI / 4 + centre() / 2)) - exponent() * stretched(centreLatitude);
    double wanted = (Math.log(Math.tan(Math.PI / 4 + onSphere / 2)) - constant) / exponent();
    double phi = 2 * Math.atan(Math.exp(wanted)) - Math.PI / 2;
    for (int i = 0; i < ROUNDS; i++) {
      double es = eccentricity * Math.sin(phi);
      double bent = wanted + eccentricity / 2 * Math.log((1 + es) / (1 - es));
      phi = 2 * Math.atan(Math.exp(bent)) - Math.PI / 2;
    }
    return phi;
  }
}
