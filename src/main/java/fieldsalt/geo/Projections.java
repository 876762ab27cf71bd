package fieldsalt.geo;

import fieldsalt.finding.InputProblem;
import fieldsalt.geo.projection.Utm;
import java.util.Locale;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/**
 * Where every projection comes from. Longitude or easting is first always. WGS 84 in degrees or UTM
 * is computed here; the system of any other file is looked up in the registry that comes with the
 * program.
 */
public final class Projections {
  private static final double WIDEST_DEGREES = 12;

  private Projections() {}

  /**
   * The UTM zone of WGS 84 that holds a place (the exceptions for Norway and Svalbard are not
   * made).
   *
   * @param longitude degrees, -180 to 180
   * @param latitude degrees
   * @throws InputProblem beyond 84 degrees of latitude, or if the numbers are no place on earth
   */
  public static RanchProjection utmFor(double longitude, double latitude) {
    if (!(Math.abs(longitude) <= 180 && Math.abs(latitude) <= 90)) {
      throw notAPlace(longitude, latitude);
    }
    if (Math.abs(latitude) > Utm.MAX_LATITUDE) {
      throw new InputProblem(
          "coordinates",
          String.format(Locale.ROOT, "latitude %.4f", latitude),
          "a latitude between -84 and 84",
          "Check that longitude comes first and latitude second.");
    }
    return new UtmRanch(Utm.at(longitude, latitude));
  }

  /**
   * The UTM zone for the middle of a box in degrees.
   *
   * @throws InputProblem if the box crosses the 180th meridian, or is too wide for one zone
   */
  public static RanchProjection utmFor(Envelope degrees) {
    if (degrees.isNull()) {
      throw new IllegalArgumentException("an empty box has no UTM zone");
    }
    if (degrees.getWidth() > 180) {
      throw new InputProblem(
          "coordinates",
          String.format(
              Locale.ROOT, "longitudes from %.4f to %.4f", degrees.getMinX(), degrees.getMaxX()),
          "a ranch that does not cross the 180th meridian",
          "Split the ranch there and map the two sides by themselves, or mend the longitude whose"
              + " sign is wrong.");
    }
    if (degrees.getWidth() > WIDEST_DEGREES) {
      throw new InputProblem(
          "coordinates",
          String.format(
              Locale.ROOT, "longitudes from %.4f to %.4f", degrees.getMinX(), degrees.getMaxX()),
          "fields that lie within one UTM zone's reach (12 degrees of longitude)",
          "Map the far field by itself, or mend the longitude whose sign or digits are wrong.");
    }
    return utmFor(degrees.centre().x, degrees.centre().y);
  }

  private static InputProblem notAPlace(double longitude, double latitude) {
    return new InputProblem(
        "coordinates",
        "longitude " + longitude + ", latitude " + latitude,
        "a longitude within -180 to 180 and a latitude within -90 to 90, in degrees",
        "If the numbers are metres name their system: crs: EPSG:n.");
  }

  /** A flat plane in metres that is tied to no place on earth. */
  public static RanchProjection local() {
    return new LocalRanch();
  }

  /**
   * The system in which a file's coordinates stand.
   *
   * @param wktOrCode {@code EPSG:n} (or {@code n}), or well-known text as in a .prj file
   * @throws InputProblem if it cannot be understood, or its datum cannot be tied to WGS 84
   */
  public static SourceSystem source(String wktOrCode) {
    return SourceSystems.of(wktOrCode);
  }

  /**
   * A copy of a geometry in WGS 84 degrees, longitude first, moved vertex by vertex.
   *
   * @param geometry in the system named, easting or longitude first
   * @param wktOrCode as for {@link #source}
   * @throws InputProblem as for {@link #source}, or if a vertex lies outside the system's reach
   */
  public static Geometry toLonLat(Geometry geometry, String wktOrCode) {
    return source(wktOrCode).toLonLat(geometry);
  }
}
