package fieldsalt.geo.text;

import java.text.ParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Turns well-known text of version 2 (ISO 19162) into version 1, as far as systems of maps go. */
final class Wkt2 {
  private static final Set<String> KEYWORDS =
      Set.of(
          "PROJCRS",
          "PROJECTEDCRS",
          "GEOGCRS",
          "GEOGRAPHICCRS",
          "GEODCRS",
          "GEODETICCRS",
          "BOUNDCRS",
          "COMPOUNDCRS");
  private static final double DEGREE = Math.PI / 180;
  private static final WktNode DEGREE_UNIT =
      WktNode.of("UNIT", new WktNode.Quoted("degree"), Double.toString(DEGREE));

  private Wkt2() {}

  static boolean is(WktNode node) {
    return KEYWORDS.contains(node.keyword());
  }

  /**
   * The horizontal system in version 1.
   *
   * @throws ParseException if something needed is missing or of a kind that maps do not use
   */
  static WktNode toWkt1(WktNode node) throws ParseException {
    return switch (node.keyword()) {
      case "COMPOUNDCRS" -> toWkt1(node.nodes().filter(Wkt2::is).findFirst().orElseThrow());
      case "BOUNDCRS" ->
          toWkt1(child(node, "SOURCECRS").nodes().filter(Wkt2::is).findFirst().orElseThrow());
      case "PROJCRS", "PROJECTEDCRS" -> projected(node);
      default -> geographic(node, angleUnit(node));
    };
  }

  private static WktNode child(WktNode node, String... keywords) throws ParseException {
    return node.child(keywords)
        .orElseThrow(() -> new ParseException("no " + keywords[0] + " in " + node.keyword(), 0));
  }

  private static WktNode angleUnit(WktNode geographic) throws ParseException {
    WktNode holder = geographic.child("ANGLEUNIT").isPresent() ? geographic : null;
    if (holder == null) {
      holder = geographic.child("AXIS").orElse(geographic);
    }
    WktNode unit = holder.child("ANGLEUNIT", "UNIT").orElse(DEGREE_UNIT);
    return WktNode.of("UNIT", unit.parts().get(0), Double.toString(unit.number(1)));
  }

  private static WktNode geographic(WktNode node, WktNode unit) throws ParseException {
    WktNode datum = child(node, "DATUM", "GEODETICDATUM", "ENSEMBLE");
    WktNode ellipsoid = child(datum, "ELLIPSOID", "SPHEROID");
    String name = datum.name().replaceFirst(" ensemble$", "");
    List<Object> parts = new ArrayList<>();
    parts.add(node.parts().get(0));
    parts.add(
        WktNode.of(
            "DATUM",
            new WktNode.Quoted(name),
            WktNode.of(
                "SPHEROID",
                ellipsoid.parts().get(0),
                Double.toString(ellipsoid.number(1) * unitOf(ellipsoid, 1)),
                Double.toString(ellipsoid.number(2)))));
    parts.add(meridian(node, unit.number(1)));
    parts.add(unit);
    node.child("ID")
        .ifPresent(id -> parts.add(WktNode.of("AUTHORITY", id.parts().get(0), code(id))));
    return new WktNode("GEOGCS", parts);
  }

  private static WktNode.Quoted code(WktNode id) {
    return new WktNode.Quoted(id.parts().get(1).toString().replace("\"", ""));
  }

  private static WktNode meridian(WktNode node, double unit) throws ParseException {
    WktNode given = node.child("PRIMEM", "PRIMEMERIDIAN").orElse(null);
    if (given == null) {
      return WktNode.of("PRIMEM", new WktNode.Quoted("Greenwich"), "0");
    }
    double radians = given.number(1) * unitOf(given, DEGREE);
    return WktNode.of("PRIMEM", given.parts().get(0), Double.toString(radians / unit));
  }

  private static double unitOf(WktNode node, double otherwise) throws ParseException {
    WktNode unit = node.child("ANGLEUNIT", "LENGTHUNIT", "SCALEUNIT", "UNIT").orElse(null);
    return unit == null ? otherwise : unit.number(1);
  }

  private static WktNode projected(WktNode node) throws ParseException {
    WktNode conversion = child(node, "CONVERSION");
    double metres = lengthUnit(node);
    List<Object> parts = new ArrayList<>();
    parts.add(node.parts().get(0));
    parts.add(geographic(child(node, "BASEGEOGCRS", "BASEGEODCRS"), DEGREE_UNIT));
    parts.add(WktNode.of("PROJECTION", child(conversion, "METHOD", "PROJECTION").parts().get(0)));
    for (WktNode parameter : conversion.nodes().toList()) {
      if (parameter.keyword().equals("PARAMETER")) {
        parts.add(parameter(parameter, metres));
      }
    }
    parts.add(WktNode.of("UNIT", new WktNode.Quoted("unit"), Double.toString(metres)));
    parts.addAll(axes(node));
    return new WktNode("PROJCS", parts);
  }

  private static double lengthUnit(WktNode node) throws ParseException {
    WktNode holder = node.child("LENGTHUNIT").isPresent() ? node : child(node, "AXIS");
    return child(holder, "LENGTHUNIT", "UNIT").number(1);
  }

  /** In degrees, or in the unit of the grid, or a plain number. */
  private static WktNode parameter(WktNode given, double metres) throws ParseException {
    WktNode unit = given.child("ANGLEUNIT", "LENGTHUNIT", "SCALEUNIT", "UNIT").orElse(null);
    double value = given.number(1);
    if (unit != null) {
      double factor = unit.number(1);
      value *=
          switch (unit.keyword()) {
            case "ANGLEUNIT" -> Math.abs(factor / DEGREE - 1) < 1e-12 ? 1 : factor / DEGREE;
            case "LENGTHUNIT" -> factor / metres;
            default -> factor;
          };
    }
    return WktNode.of("PARAMETER", given.parts().get(0), Double.toString(value));
  }

  private static List<WktNode> axes(WktNode node) {
    return node.nodes()
        .filter(n -> n.keyword().equals("AXIS"))
        .map(n -> WktNode.of("AXIS", n.parts().get(0), n.parts().get(1).toString()))
        .toList();
  }
}
