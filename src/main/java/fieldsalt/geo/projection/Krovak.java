package fieldsalt.geo.projection;

import fieldsalt.geo.datum.Ellipsoid;
import fieldsalt.geo.text.WktNode;
import java.text.ParseException;
import java.util.Locale;
import java.util.Optional;

/**
 * Krovak's oblique conic projection (IOGP Guidance Note 7-2, methods 9819 and 1041), which the
 * coordinate library has not. Its grid counts south and west, its variant east and north, and files
 * have the two numbers in either order. That leaves no doubt: the grid was laid so that all of
 * Czechia and Slovakia is further south than west of its origin.
 *
 * @param axisColatitude of the cone's axis
 * @param parallel on the turned sphere, where the scale is given
 */
public record Krovak(
    Ellipsoid ellipsoid,
    double centreLatitude,
    double meridian,
    double axisColatitude,
    double parallel,
    double scale) {
  private static final int ROUNDS = 12;

  /**
   * The grid of a text; none if its projection is another.
   *
   * @throws ParseException if a parameter is missing, or it counts from a false origin (the
   *     modified projection)
   */
  public static Optional<Krovak> ofText(WktNode projected) throws ParseException {
    String name = projected.child("PROJECTION").map(WktNode::name).orElse("");
    String plain = name.toLowerCase(Locale.ROOT).replaceAll("[ ()_-]+", " ").strip();
    if (!plain.matches("krovak( north orientated| east north)?")) {
      return Optional.empty();
    }
    if (projected.parameter("false_easting").orElse(0.0) != 0
        || projected.parameter("false_northing").orElse(0.0) != 0) {
      throw new ParseException("a false easting or northing", 0);
    }
    WktNode geographic = projected.child("GEOGCS").orElseThrow();
    WktNode spheroid = geographic.child("DATUM").flatMap(d -> d.child("SPHEROID")).orElseThrow();
    double unit = geographic.child("UNIT").orElseThrow().number(1);
    return Optional.of(
        new Krovak(
            new Ellipsoid(spheroid.number(1), spheroid.number(2)),
            unit * value(projected, "latitude_of_center", "latitude_of_projection_centre"),
            unit * value(projected, "longitude_of_center", "longitude_of_origin"),
            unit * value(projected, "azimuth", "co-latitude_of_cone_axis"),
            unit
                * value(
                    projected,
                    "pseudo_standard_parallel_1",
                    "latitude_of_pseudo_standard_parallel"),
            value(projected, "scale_factor", "scale_factor_on_pseudo_standard_parallel")));
  }

  private static double value(WktNode projected, String... names) throws ParseException {
    return projected
        .parameter(names)
        .orElseThrow(() -> new ParseException("no parameter " + String.join(" or ", names), 0));
  }

  /** {longitude from the system's meridian, latitude} in degrees of a place in metres. */
  public double[] degrees(double xM, double yM) {
    double southM = Math.max(Math.abs(xM), Math.abs(yM));
    double westM = Math.min(Math.abs(xM), Math.abs(yM));
    double n = Math.sin(parallel);
    double turned = Math.atan2(westM, southM) / n;
    double ratio = Math.pow(apexM() / Math.hypot(southM, westM), 1 / n);
    double t = 2 * Math.atan(ratio * Math.tan(Math.PI / 4 + parallel / 2)) - Math.PI / 2;
    double u =
        Math.asin(
            Math.cos(axisColatitude) * Math.sin(t)
                - Math.sin(axisColatitude) * Math.cos(t) * Math.cos(turned));
    double v = Math.asin(Math.cos(t) * Math.sin(turned) / Math.cos(u));
    double lambda = meridian - v / exponent();
    return new double[] {Math.toDegrees(lambda), Math.toDegrees(latitude(u))};
  }

  /** From the apex of the cone to the parallel, metres. */
  private double apexM() {
    double e2 = ellipsoid.eccentricitySquared();
    double sin = Math.sin(centreLatitude);
    double radiusM = ellipsoid.semiMajorM() * Math.sqrt(1 - e2) / (1 - e2 * sin * sin);
    return scale * radiusM / Math.tan(parallel);
  }

  /** Of longitudes on Gauss's sphere, on which small shapes at the centre are as on the earth. */
  private double exponent() {
    double e2 = ellipsoid.eccentricitySquared();
    return Math.sqrt(1 + e2 * Math.pow(Math.cos(centreLatitude), 4) / (1 - e2));
  }

  /** The latitude on the ellipsoid of a latitude on the sphere, radians. */
  private double latitude(double onSphere) {
    double centre = Math.asin(Math.sin(centreLatitude) / exponent());
    double constant = stretched(centre, 0) - exponent() * stretched(centreLatitude, eccentricity());
    double wanted = (stretched(onSphere, 0) - constant) / exponent();
    double phi = 2 * Math.atan(Math.exp(wanted)) - Math.PI / 2;
    for (int i = 0; i < ROUNDS; i++) {
      double bent = wanted + stretched(phi, 0) - stretched(phi, eccentricity());
      phi = 2 * Math.atan(Math.exp(bent)) - Math.PI / 2;
    }
    return phi;
  }

  private double eccentricity() {
    return Math.sqrt(ellipsoid.eccentricitySquared());
  }

  /** Mercator's ordinate of a latitude. */
  private static double stretched(double phi, double e) {
    double es = e * Math.sin(phi);
    return Math.log(Math.tan(Math.PI / 4 + phi / 2)) + e / 2 * Math.log((1 - es) / (1 + es));
  }
}
