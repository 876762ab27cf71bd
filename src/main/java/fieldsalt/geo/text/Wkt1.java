package fieldsalt.geo.text;

import java.text.ParseException;
import java.util.List;
import java.util.Locale;

/**
 * What programs that write well-known text of version 1 mean by it, said so that the parser here
 * reads the same.
 */
final class Wkt1 {
  private static final double DEGREE = Math.PI / 180;

  /** Paris in grads; the same meridian is often written in degrees beside a unit of grads. */
  private static final double PARIS_GRADS = 2.5969213;

  private Wkt1() {}

  /**
   * The horizontal system of a text, mended.
   *
   * @throws ParseException if it holds none, or says that it means something else than it says
   */
  static WktNode mended(WktNode root) throws ParseException {
    WktNode node = root;
    if (root.keyword().equals("COMPD_CS")) {
      node = root.child("PROJCS", "GEOGCS").orElse(root);
    }
    if (node.keyword().equals("GEOGCS")) {
      return geographic(node);
    }
    return node.keyword().equals("PROJCS") ? projected(node) : node;
  }

  private static WktNode geographic(WktNode node) throws ParseException {
    WktNode plain = node.with("LINUNIT").with("AXIS");
    WktNode prime = node.child("PRIMEM").orElse(null);
    WktNode unit = node.child("UNIT").orElse(null);
    if (prime == null || unit == null) {
      return plain;
    }
    double grads = unit.number(1) / DEGREE;
    double longitude = prime.number(1);
    boolean inDegrees =
        Math.abs(grads - 1) > 1e-9 && Math.abs(longitude - PARIS_GRADS) > 1e-5 && longitude != 0;
    return inDegrees
        ? plain.with(
            "PRIMEM",
            WktNode.of("PRIMEM", prime.parts().get(0), Double.toString(longitude / grads)))
        : plain;
  }

  private static WktNode projected(WktNode node) throws ParseException {
    WktNode geographic = node.child("GEOGCS").orElseThrow(() -> new ParseException("no GEOGCS", 0));
    WktNode plain = eastFirst(node.with("GEOGCS", geographic(geographic)));
    WktNode projection =
        node.child("PROJECTION").orElseThrow(() -> new ParseException("no PROJECTION", 0));
    if (isWebMercator(node)) {
      return webMercator(plain);
    }
    return switch (projection.name().toLowerCase(Locale.ROOT)) {
      case "transverse_mercator_south_orientated", "transverse mercator (south orientated)" ->
          southOrientated(plain);
      case "polar_stereographic" -> polar(plain);
      default -> plain;
    };
  }

  /** Files store easting first whatever the text says of the system's axes. */
  private static WktNode eastFirst(WktNode node) {
    List<String> directions =
        node.nodes()
            .filter(n -> n.keyword().equals("AXIS"))
            .map(n -> n.parts().get(1).toString().toUpperCase(Locale.ROOT).replace("\"", ""))
            .toList();
    boolean usual = List.of("SOUTH", "WEST").stream().noneMatch(directions::contains);
    return usual || directions.size() != 2 ? node.with("AXIS") : node;
  }

  private static WktNode named(WktNode node, String projection) {
    return node.with("PROJECTION", WktNode.of("PROJECTION", new WktNode.Quoted(projection)));
  }

  private static WktNode axis(String name, String direction) {
    return WktNode.of("AXIS", new WktNode.Quoted(name), direction);
  }

  private static WktNode parameter(String name, double value) {
    return WktNode.of("PARAMETER", new WktNode.Quoted(name), Double.toString(value));
  }

  /** Southern Africa counts west and south; a .prj file does not say so, the registry does. */
  private static WktNode southOrientated(WktNode node) {
    WktNode here = named(node, "Transverse Mercator (South Orientated)");
    return here.child("AXIS").isPresent()
        ? here
        : here.and(List.of(axis("Y", "WEST"), axis("X", "SOUTH")));
  }

  /** Where the latitude of origin is not a pole, it is the parallel of true scale. */
  private static WktNode polar(WktNode node) {
    double parallel = node.parameter("latitude_of_origin").orElse(90.0);
    if (Math.abs(parallel) == 90) {
      return node;
    }
    WktNode here =
        named(node, parallel > 0 ? "Stereographic_North_Pole" : "Stereographic_South_Pole");
    return here.with(
        "PARAMETER",
        parameter("standard_parallel_1", parallel),
        parameter("central_meridian", node.parameter("central_meridian").orElse(0.0)),
        parameter("false_easting", node.parameter("false_easting").orElse(0.0)),
        parameter("false_northing", node.parameter("false_northing").orElse(0.0)));
  }

  /** Web maps: the text says Mercator, and an extension says that it means the sphere. */
  private static boolean isWebMercator(WktNode node) throws ParseException {
    for (WktNode extension : node.nodes().filter(n -> n.keyword().equals("EXTENSION")).toList()) {
      String meant = extension.parts().get(extension.parts().size() - 1).toString();
      if (meant.contains("+proj=merc") && meant.contains("+b=6378137")) {
        return true;
      }
      throw new ParseException("an extension that means " + meant, 0);
    }
    return false;
  }

  private static WktNode webMercator(WktNode node) {
    return named(node.with("EXTENSION"), "Mercator_Auxiliary_Sphere")
        .with(
            "PARAMETER",
            parameter("False_Easting", node.parameter("false_easting").orElse(0.0)),
            parameter("False_Northing", node.parameter("false_northing").orElse(0.0)),
            parameter("Central_Meridian", node.parameter("central_meridian").orElse(0.0)),
            parameter("Standard_Parallel_1", 0),
            parameter("Auxiliary_Sphere_Type", 0));
  }
}
