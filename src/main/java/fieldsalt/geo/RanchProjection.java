package fieldsalt.geo;

import java.util.OptionalInt;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.locationtech.jts.geom.Geometry;

/**
 * The one projection of a ranch: WGS 84 longitude and latitude to metres and back. A local system
 * ({@code crs: local}) has no longitude and latitude: it hands every coordinate through unchanged.
 */
public interface RanchProjection {
  /** Degrees to metres. */
  PlaceM toMetres(double longitude, double latitude);

  /** Metres to {longitude, latitude} in degrees. */
  double[] toLonLat(double xM, double yM);

  /** A copy in metres of a geometry in degrees (longitude first). */
  Geometry toMetres(Geometry lonLat);

  /** A copy in degrees (longitude first) of a geometry in metres. */
  Geometry toLonLat(Geometry metres);

  /** The EPSG code of the metric system, if it has one. */
  OptionalInt epsg();

  /** A name for people, e.g. {@code WGS 84 / UTM zone 12N}. */
  String name();

  boolean isLocal();

  /** The metric system as GeoTools knows it, for file headers; a local engineering CRS if local. */
  CoordinateReferenceSystem crs();

  /** Well-known text (version 1, ESRI spelling) of the metric system, for sidecar files. */
  String esriWkt();

  /** Well-known text (version 1, OGC spelling) of the metric system. */
  default String wkt() {
    return crs().toWKT();
  }
}
