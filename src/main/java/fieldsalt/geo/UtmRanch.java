package fieldsalt.geo;

import fieldsalt.geo.projection.OutOfReach;
import fieldsalt.geo.projection.Utm;
import java.util.OptionalInt;

/**
 * A UTM zone as a ranch's projection. A place beyond its reach (a longitude whose sign is wrong) is
 * not refused: it comes out far from the ranch, where whoever asked can see it, and back.
 */
record UtmRanch(Utm utm) implements RanchProjection {
  @Override
  public PlaceM toMetres(double longitude, double latitude) {
    double[] at =
        utm.reaches(longitude, latitude)
            ? utm.metres(longitude, latitude)
            : utm.roughMetres(longitude, latitude);
    return new PlaceM(at[0], at[1]);
  }

  @Override
  public double[] toLonLat(double xM, double yM) {
    try {
      double[] at = utm.degrees(xM, yM);
      return utm.reaches(at[0], at[1]) ? at : utm.roughDegrees(xM, yM);
    } catch (OutOfReach e) {
      return utm.roughDegrees(xM, yM);
    }
  }

  @Override
  public OptionalInt epsg() {
    return OptionalInt.of(utm.epsg());
  }

  @Override
  public String name() {
    return utm.name();
  }

  @Override
  public String esriWkt() {
    return utm.esriWkt();
  }

  @Override
  public String wkt() {
    return utm.wkt();
  }
}
