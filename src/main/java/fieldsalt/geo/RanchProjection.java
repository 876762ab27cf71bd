package fieldsalt.geo;

import fieldsalt.geo.projection.Vertices;
import java.util.OptionalInt;
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
  default Geometry toMetres(Geometry lonLat) {
    return Vertices.move(
        lonLat,
        (longitude, latitude) -> {
          PlaceM at = toMetres(longitude, latitude);
          return new double[] {at.xM(), at.yM()};
        });
  }

  /** A copy in degrees (longitude first) of a geometry in metres. */
  default Geometry toLonLat(Geometry metres) {
    return Vertices.move(metres, this::toLonLat);
  }

  /** The EPSG code of the metric system; a local one has none. */
  OptionalInt epsg();

  /** A name for people, e.g. {@code WGS 84 / UTM zone 12N}. */
  String name();

  /** Whether it is tied to no place on earth. */
  default boolean isLocal() {
    return epsg().isEmpty();
  }

  /** Well-known text (version 1, ESRI spelling) of the metric system, for sidecar files. */
  String esriWkt();

  /** Well-known text (version 1, OGC spelling) of the metric system. */
  String wkt();
}
