package fieldsalt.geo;

import java.util.OptionalInt;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.referencing.crs.DefaultEngineeringCRS;
import org.locationtech.jts.geom.Geometry;

/** Metres on a flat plane that nobody has tied to the earth: everything passes unchanged. */
final class LocalSystem implements RanchProjection {
  @Override
  public PlaceM toMetres(double longitude, double latitude) {
    return new PlaceM(longitude, latitude);
  }

  @Override
  public double[] toLonLat(double xM, double yM) {
    return new double[] {xM, yM};
  }

  @Override
  public Geometry toMetres(Geometry lonLat) {
    return lonLat.copy();
  }

  @Override
  public Geometry toLonLat(Geometry metres) {
    return metres.copy();
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
  public boolean isLocal() {
    return true;
  }

  @Override
  public CoordinateReferenceSystem crs() {
    Silence.begin();
    return DefaultEngineeringCRS.CARTESIAN_2D;
  }

  @Override
  public String esriWkt() {
    return "LOCAL_CS[\"local metres\",UNIT[\"Meter\",1.0]]";
  }
}
