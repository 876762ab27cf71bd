package fieldsalt.geo;

/** A map projection read backwards. */
@FunctionalInterface
interface GridToDegrees {
  /** {longitude from the system's meridian, latitude} in degrees of a place in metres. */
  double[] degrees(double xM, double yM);
}
