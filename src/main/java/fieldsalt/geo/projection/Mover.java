package fieldsalt.geo.projection;

/** From one system of coordinates to another: easting or longitude first in both. */
@FunctionalInterface
public interface Mover {
  /**
   * The place's coordinates in the other system.
   *
   * @throws OutOfReach if it has none there
   */
  double[] move(double x, double y);
}
