package fieldsalt.geo.projection;

import fieldsalt.geo.datum.Ellipsoid;

/**
 * The transverse Mercator projection of the ellipsoid by Krueger's series in the third flattening
 * n, to n^6 (Karney 2011, Transverse Mercator with an accuracy of a few nanometers, Journal of
 * Geodesy 85:475-485, equations 7 to 12, 14, 19 to 21, 25, 35 and 36). There to within 5 nm up to
 * 3,900 km from the central meridian; further off it is refused.
 */
final class TransverseMercator {
  private static final double REACH_M = 3_900_000;
  private static final int ROUNDS = 6;

  /** Numerators and denominators of n^j, n^(j+1) ... n^6 in the j-th term (equation 35). */
  private static final double[][][] FORWARD = {
    {{1, 2}, {-2, 3}, {5, 16}, {41, 180}, {-127, 288}, {7891, 37800}},
    {{13, 48}, {-3, 5}, {557, 1440}, {281, 630}, {-1983433, 1935360}},
    {{61, 240}, {-103, 140}, {15061, 26880}, {167603, 181440}},
    {{49561, 161280}, {-179, 168}, {6601661, 7257600}},
    {{34729, 80640}, {-3418889, 1995840}},
    {{212378941, 319334400}}
  };

  /** The same of the way back (equation 36). */
  private static final double[][][] BACK = {
    {{-1, 2}, {2, 3}, {-37, 96}, {1, 360}, {81, 512}, {-96199, 604800}},
    {{-1, 48}, {-1, 15}, {437, 1440}, {-46, 105}, {1118711, 3870720}},
    {{-17, 480}, {37, 840}, {209, 4480}, {-5569, 90720}},
    {{-4397, 161280}, {11, 504}, {830251, 7257600}},
    {{-4583, 161280}, {108847, 3991680}},
    {{-20648693, 638668800}}
  };

  private final double e2;
  private final double e;
  private final double radiusM;
  private final double[] forward;
  private final double[] back;

  /**
   * On one ellipsoid.
   *
   * @param scale on the central meridian
   */
  TransverseMercator(Ellipsoid ellipsoid, double scale) {
    double n = ellipsoid.flattening() / (2 - ellipsoid.flattening());
    this.e2 = ellipsoid.eccentricitySquared();
    this.e = Math.sqrt(e2);
    double n2 = n * n;
    double circle = (1 + n2 / 4 * (1 + n2 / 16 * (1 + n2 / 4))) / (1 + n);
    this.radiusM = scale * circle * ellipsoid.semiMajorM();
    this.forward = coefficients(FORWARD, n);
    this.back = coefficients(BACK, n);
  }

  private static double[] coefficients(double[][][] series, double n) {
    double[] sums = new double[series.length];
    for (int j = 0; j < series.length; j++) {
      for (int power = series[j].length - 1; power >= 0; power--) {
        sums[j] = sums[j] * n + series[j][power][0] / series[j][power][1];
      }
      sums[j] *= Math.pow(n, j + 1);
    }
    return sums;
  }

  /** Metres {east of the central meridian, north of the equator} of a place in degrees. */
  double[] metres(double fromMeridian, double latitude) {
    double lambda = Math.toRadians(fromMeridian);
    double tau = conformal(Math.tan(Math.toRadians(latitude)));
    double cos = Math.cos(lambda);
    double xi = Math.atan2(tau, cos);
    double eta = asinh(Math.sin(lambda) / Math.sqrt(tau * tau + cos * cos));
    double[] moved = moved(forward, xi, eta);
    return new double[] {radiusM * moved[1], radiusM * moved[0]};
  }

  /** Degrees {from the central meridian, latitude} of a place in metres. */
  double[] degrees(double eastM, double northM) {
    double[] sphere = moved(back, northM / radiusM, eastM / radiusM);
    double sinh = Math.sinh(sphere[1]);
    double cos = Math.cos(sphere[0]);
    double tau = geodetic(Math.sin(sphere[0]) / Math.sqrt(sinh * sinh + cos * cos));
    return new double[] {Math.toDegrees(Math.atan2(sinh, cos)), Math.toDegrees(Math.atan(tau))};
  }

  /** The sum of the series added to (xi, eta), by Clenshaw's rule for complex angles. */
  private double[] moved(double[] series, double xi, double eta) {
    if (!(Math.abs(eta) * radiusM <= REACH_M && Math.abs(xi) <= Math.PI / 2)) {
      throw new OutOfReach("too far from the central meridian");
    }
    double sinRe = Math.sin(2 * xi) * Math.cosh(2 * eta);
    double sinIm = Math.cos(2 * xi) * Math.sinh(2 * eta);
    double cosRe = 2 * Math.cos(2 * xi) * Math.cosh(2 * eta);
    double cosIm = -2 * Math.sin(2 * xi) * Math.sinh(2 * eta);
    double re = 0;
    double im = 0;
    double reBefore = 0;
    double imBefore = 0;
    for (int j = series.length - 1; j >= 0; j--) {
      double reNext = cosRe * re - cosIm * im - reBefore + series[j];
      double imNext = cosRe * im + cosIm * re - imBefore;
      reBefore = re;
      imBefore = im;
      re = reNext;
      im = imNext;
    }
    return new double[] {xi + sinRe * re - sinIm * im, eta + sinRe * im + sinIm * re};
  }

  /** Tangent of the conformal latitude (equations 7 to 9). */
  private double conformal(double tau) {
    double sigma = Math.sinh(e * atanh(e * tau / secant(tau)));
    return tau * secant(sigma) - sigma * secant(tau);
  }

  /** Tangent of the latitude, by Newton's rounds (equations 19 to 21). */
  private double geodetic(double conformal) {
    double tau = conformal;
    for (int i = 0; i < ROUNDS; i++) {
      double here = conformal(tau);
      tau +=
          (conformal - here) / secant(here) * (1 + (1 - e2) * tau * tau) / ((1 - e2) * secant(tau));
    }
    return tau;
  }

  private static double secant(double tangent) {
    return Math.sqrt(1 + tangent * tangent);
  }

  private static double asinh(double x) {
    double size = Math.abs(x);
    return Math.copySign(Math.log1p(size + size * size / (1 + secant(size))), x);
  }

  private static double atanh(double x) {
    return Math.log1p(2 * x / (1 - x)) / 2;
  }
}
