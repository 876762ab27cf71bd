package fieldsalt.read;

/**
 * Where a row says it was taken.
 *
 * @param degrees whether a and b are longitude and latitude; else x and y in the job's system
 */
record Spot(boolean degrees, double a, double b) {
  static Spot lonLat(double longitude, double latitude) {
    return new Spot(true, longitude, latitude);
  }
}
