package fieldsalt.geo;

import java.text.ParseException;
import java.util.Locale;
import java.util.Optional;

/**
 * Projections that GeoTools 33.1 has not, or places elsewhere than PROJ 9.1.1 does: these are
 * computed here.
 */
final class OwnProjections {
  private OwnProjections() {}

  /**
   * The way back from the grid of a projected system, if its projection is one of these.
   *
   * @throws ParseException if a parameter is missing
   */
  static Optional<GridToDegrees> of(WktNode projected) throws ParseException {
    try {
      return find(projected);
    } catch (IllegalArgumentException e) {
      throw new ParseException(e.getMessage(), 0);
    }
  }

  private static Optional<GridToDegrees> find(WktNode projected) throws ParseException {
    Optional<WktNode> projection = projected.child("PROJECTION");
    if (projection.isEmpty()) {
      return Optional.empty();
    }
    String name = projection.get().name().toLowerCase(Locale.ROOT).replaceAll("[ ()-]+", "_");
    GridParameters given = GridParameters.of(projected);
    return switch (name) {
      case "krovak", "krovak_north_orientated_", "krovak_east_north" ->
          Optional.of(Krovak.of(given));
      case "igac_plano_cartesiano", "colombia_urban" -> Optional.of(ColombiaUrban.of(given));
      case "laborde_oblique_mercator", "laborde_madagascar" -> Optional.of(Laborde.of(given));
      case "equal_earth" -> Optional.of(EqualEarth.of(given));
      case CylindricalEqualArea.BEHRMANN,
          "cylindrical_equal_area",
          "lambert_cylindrical_equal_area" ->
          Optional.of(CylindricalEqualArea.of(given));
      default -> Optional.empty();
    };
  }
}
