package fieldsalt.geo;

import java.util.OptionalInt;

/** Metres on a flat plane that nobody has tied to the earth: everything passes unchanged. */
record LocalRanch() implements RanchProjection {
  @Override
  public PlaceM toMetres(double longitude, double latitude) {
    return new PlaceM(longitude, latitude);
  }

  @Override
  public double[] toLonLat(double xM, double yM) {
    return new double[] {xM, yM};
  }

  @Override
  public OptionalInt epsg() {
    return OptionalInt.empty();
  }

  @Override
  public String name() {
    return "local metres";
  }

  @Override
  public String esriWkt() {
    return "LOCAL_CS[\"local metres\",UNIT[\"Meter\",1.0]]";
  }

  @Override
  public String wkt() {
    return esriWkt();
  }
}
