package fieldsalt.geo;

/** Latitudes that keep areas true (Snyder 1987, Map Projections, equations 3-12 and 3-16). */
record EqualAreaLatitude(double eccentricitySquared) {
  private static final int ROUNDS = 12;

  /** The quantity q, twice the area in a band from the equator over a squared and longitude. */
  double q(double phi) {
    double sin = Math.sin(phi);
    if (eccentricitySquared == 0) {
      return 2 * sin;
    }
    return (1 - eccentricitySquared) * (sin / (1 - eccentricitySquared * sin * sin) + logs(sin));
  }

  private double logs(double sin) {
    double e = Math.sqrt(eccentricitySquared);
    return Math.log((1 + e * sin) / (1 - e * sin)) / (2 * e);
  }

  /** The latitude that has this q, radians; NaN beyond the poles. */
  double latitude(double q) {
    double phi = Math.asin(q / 2);
    for (int i = 0; i < ROUNDS && Math.cos(phi) > 1e-9; i++) {
      double sin = Math.sin(phi);
      double w = 1 - eccentricitySquared * sin * sin;
      phi += w * w / (2 * Math.cos(phi)) * (q - q(phi)) / (1 - eccentricitySquared);
    }
    return phi;
  }
}
