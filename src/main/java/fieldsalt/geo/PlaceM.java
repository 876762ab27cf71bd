package fieldsalt.geo;

/** A place in the ranch's projection: metres east and north. */
public record PlaceM(double xM, double yM) {
  /** Distance in metres. */
  public double distanceM(PlaceM other) {
    return Math.hypot(xM - other.xM, yM - other.yM);
  }
}
