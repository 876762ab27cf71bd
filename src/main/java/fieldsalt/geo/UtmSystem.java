package fieldsalt.geo;

import java.util.OptionalInt;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.locationtech.jts.geom.Geometry;

/**
 * A UTM zone as a ranch's projection. A single place beyond its reach (a longitude whose sign is
 * wrong) is not refused: it comes out far from the ranch, where whoever asked can see it.
 */
final class UtmSystem implements RanchProjection {
  private final Utm utm;
  private final ProjectedSystem exact;

  UtmSystem(Utm utm, ProjectedSystem exact) {
    this.utm = utm;
    this.exact = exact;
  }

  @Override
  public PlaceM toMetres(double longitude, double latitude) {
    return utm.reaches(longitude, latitude)
        ? exact.toMetres(longitude, latitude)
        : utm.roughly(longitude, latitude);
  }

  @Override
  public double[] toLonLat(double xM, double yM) {
    return exact.toLonLat(xM, yM);
  }

  @Override
  public Geometry toMetres(Geometry lonLat) {
    return exact.toMetres(lonLat);
  }

  @Override
  public Geometry toLonLat(Geometry metres) {
    return exact.toLonLat(metres);
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
  public boolean isLocal() {
    return false;
  }

  @Override
  public CoordinateReferenceSystem crs() {
    return exact.crs();
  }

  @Override
  public String esriWkt() {
    return exact.esriWkt();
  }

  @Override
  public String wkt() {
    return utm.wkt();
  }
}
