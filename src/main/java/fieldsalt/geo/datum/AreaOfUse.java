package fieldsalt.geo.datum;

/** A box in degrees; west beyond east crosses the 180th meridian. */
record AreaOfUse(double west, double south, double east, double north) {
  static AreaOfUse of(double[] sides) {
    return new AreaOfUse(sides[0], sides[1], sides[2], sides[3]);
  }

  /** Whether the place lies in the box or not further than a margin from it. */
  boolean covers(double longitude, double latitude, double marginDegrees) {
    return latitude >= south - marginDegrees
        && latitude <= north + marginDegrees
        && fromWest(longitude + marginDegrees) <= widthDegrees() + 2 * marginDegrees;
  }

  double widthDegrees() {
    return east >= west ? east - west : east - west + 360;
  }

  private double fromWest(double longitude) {
    double from = (longitude - west) % 360;
    return from < 0 ? from + 360 : from;
  }

  double squareDegrees() {
    return widthDegrees() * (north - south);
  }
}
