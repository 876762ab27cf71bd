package fieldsalt.geo.projection;

/**
 * The way from a system's coordinates to degrees from Greenwich on its own datum, and back.
 *
 * @param plain the coordinates are such degrees already
 */
public record GridWay(Mover toDegrees, Mover ofDegrees, boolean plain) {
  /** Coordinates that are such degrees already. */
  public static final GridWay PLAIN =
      new GridWay((x, y) -> new double[] {x, y}, (x, y) -> new double[] {x, y}, true);

  /** Of a grid. */
  public static GridWay of(Mover toDegrees, Mover ofDegrees) {
    return new GridWay(toDegrees, ofDegrees, false);
  }

  /** Of a grid that is only read. */
  public static GridWay back(Mover toDegrees) {
    return of(
        toDegrees,
        (longitude, latitude) -> {
          throw new OutOfReach("no way to this grid");
        });
  }
}
