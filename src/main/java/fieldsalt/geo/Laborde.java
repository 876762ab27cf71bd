package fieldsalt.geo;

/** Laborde's oblique Mercator projection (IOGP Guidance Note 7-2, method 9813). */
record Laborde(
    Ellipsoid ellipsoid,
    double centreLatitude,
    double centreLongitude,
    double azimuth,
    double scale,
    double eastingM,
    double northingM)
    implements GridToDegrees {
  private static final int ROUNDS = 20;

  static Laborde of(GridParameters given) {
    return new Laborde(
        given.ellipsoid(),
        given.angle("latitude_of_center", "latitude_of_projection_centre"),
        given.angle("longitude_of_center", "longitude_of_projection_centre"),
        given.angle("azimuth", "azimuth_of_initial_line"),
        given.number("scale_factor", "scale_factor_on_initial_line"),
        given.falseEastingM(),
        given.falseNorthingM());
  }

  private record Complex(double re, double im) {
    Complex plus(Complex o) {
      return new Complex(re + o.re, im + o.im);
    }

    Complex times(Complex o) {
      return new Complex(re * o.re - im * o.im, re * o.im + im * o.re);
    }

    Complex times(double factor) {
      return new Complex(re * factor, im * factor);
    }

    Complex over(Complex o) {
      double square = o.re * o.re + o.im * o.im;
      return times(new Complex(o.re / square, -o.im / square));
    }
  }

  @Override
  public double[] degrees(double xM, double yM) {
    double e = Math.sqrt(ellipsoid.eccentricitySquared());
    ConformalSphere sphere = new ConformalSphere(e, centreLatitude);
    double radiusM = ellipsoid.semiMajorM() * scale * sphere.radius();
    Complex h = straight(new Complex((yM - northingM) / radiusM, (xM - eastingM) / radiusM));
    double l = -h.re();
    double p = 2 * Math.atan(Math.exp(h.im())) - Math.PI / 2;
    double s = sphere.centre();
    double u = Math.cos(p) * (Math.cos(l) * Math.cos(s) + Math.sin(l) * Math.sin(s));
    double w = Math.cos(p) * (Math.cos(l) * Math.sin(s) - Math.sin(l) * Math.cos(s));
    double d = Math.hypot(u, Math.sin(p));
    double lambda = centreLongitude + Math.atan2(Math.sin(p), u) / sphere.exponent();
    return new double[] {Math.toDegrees(lambda), Math.toDegrees(sphere.latitude(Math.atan(w / d)))};
  }

  /** Undoes the cubic that turns the scale's axis to the azimuth. */
  private Complex straight(Complex grid) {
    Complex g = new Complex(1 - Math.cos(2 * azimuth), Math.sin(2 * azimuth)).times(1 / 12.0);
    Complex h = grid;
    for (int i = 0; i < ROUNDS; i++) {
      Complex square = h.times(h);
      Complex above = grid.plus(g.times(square).times(h).times(2));
      Complex below = g.times(square).times(3).plus(new Complex(1, 0));
      h = above.over(below);
    }
    return h;
  }
}
