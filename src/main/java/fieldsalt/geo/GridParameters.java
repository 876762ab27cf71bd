package fieldsalt.geo;

import java.text.ParseException;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * The parameters of a projected system's text, by lower-case name, in its own units.
 *
 * @param radians of the text's unit of angle
 * @param metres of its unit of length
 */
record GridParameters(
    Ellipsoid ellipsoid, Map<String, Double> values, double radians, double metres) {

  static GridParameters of(WktNode projected) throws ParseException {
    WktNode geographic = child(projected, "GEOGCS");
    WktNode spheroid = child(child(geographic, "DATUM"), "SPHEROID");
    Map<String, Double> values =
        projected
            .nodes()
            .filter(node -> node.keyword().equals("PARAMETER"))
            .collect(
                Collectors.toMap(
                    node -> node.name().toLowerCase(Locale.ROOT).replace(' ', '_'),
                    node -> Double.parseDouble(node.parts().get(1).toString()),
                    (first, second) -> second));
    return new GridParameters(
        new Ellipsoid(spheroid.number(1), spheroid.number(2)),
        values,
        child(geographic, "UNIT").number(1),
        child(projected, "UNIT").number(1));
  }

  private static WktNode child(WktNode node, String keyword) throws ParseException {
    return node.child(keyword)
        .orElseThrow(() -> new ParseException("no " + keyword + " in " + node.keyword(), 0));
  }

  /** The first of the names that the text has; refused if it has none. */
  double number(String... names) {
    for (String name : names) {
      Double value = values.get(name);
      if (value != null) {
        return value;
      }
    }
    throw new IllegalArgumentException("no parameter " + String.join(" or ", names));
  }

  double number(double otherwise, String name) {
    return values.getOrDefault(name, otherwise);
  }

  double angle(String... names) {
    return number(names) * radians;
  }

  double falseEastingM() {
    return number(0, "false_easting") * metres;
  }

  double falseNorthingM() {
    return number(0, "false_northing") * metres;
  }
}
