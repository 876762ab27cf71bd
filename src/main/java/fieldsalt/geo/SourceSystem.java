package fieldsalt.geo;

import fieldsalt.finding.InputProblem;
import fieldsalt.geo.datum.WayToWgs84;
import fieldsalt.geo.projection.OutOfReach;
import fieldsalt.geo.projection.TiedGrid;
import fieldsalt.geo.projection.Vertices;
import java.util.Locale;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/**
 * The coordinate system of a file, and the way from it to WGS 84 degrees: first to degrees on its
 * own datum, then by the shift that was published for the place.
 */
public final class SourceSystem {
  /**
   * How a place came to WGS 84.
   *
   * @param name of the shift, as the EPSG registry has it; empty if none was needed
   * @param accuracyM its stated accuracy, or what two published shifts for the place differ by if
   *     that is more, metres; empty if nobody states one
   */
  public record Tie(String name, OptionalDouble accuracyM) {
    private static final double FINE_M = 2;

    /** Whether a map of fields can be off by it visibly: more than 2 m, or nobody knows. */
    public boolean isCoarse() {
      return !name.isEmpty() && accuracyM.orElse(Double.MAX_VALUE) > FINE_M;
    }
  }

  private final TiedGrid grid;

  SourceSystem(TiedGrid grid) {
    this.grid = grid;
  }

  /** A name for people. */
  public String name() {
    return grid.name();
  }

  /**
   * How places near this one are tied to WGS 84.
   *
   * @param longitude degrees
   * @param latitude degrees
   * @throws InputProblem if no shift was published for there
   */
  public Tie tieAt(double longitude, double latitude) {
    WayToWgs84 way = way(longitude, latitude);
    return new Tie(way.name(), grid.ties().accuracyM(longitude, latitude));
  }

  /**
   * {longitude, latitude} in degrees of a place given in this system, easting or longitude first.
   *
   * @throws InputProblem if it has none
   */
  public double[] toLonLat(double x, double y) {
    try {
      double[] onDatum = onDatum(x, y);
      return shifted(way(onDatum[0], onDatum[1]), onDatum[0], onDatum[1]);
    } catch (OutOfReach e) {
      throw outside("(" + x + ", " + y + ")", e);
    }
  }

  private double[] onDatum(double x, double y) {
    double[] degrees = grid.way().toDegrees().move(x, y);
    if (!(Math.abs(degrees[0]) <= 360 && Math.abs(degrees[1]) <= 90)) {
      throw new OutOfReach("no place on earth");
    }
    if (!grid.way().plain() && Math.abs(degrees[0]) > 180) {
      degrees[0] = Math.IEEEremainder(degrees[0], 360);
    }
    return degrees;
  }

  private double[] shifted(WayToWgs84 way, double longitude, double latitude) {
    double[] lonLat = way.toWgs84(longitude, latitude);
    if (!(Math.abs(lonLat[0]) <= 180 && Math.abs(lonLat[1]) <= 90)) {
      throw outside("(" + longitude + ", " + latitude + ")", null);
    }
    return lonLat;
  }

  private WayToWgs84 way(double longitude, double latitude) {
    return grid.ties()
        .at(longitude, latitude)
        .orElseThrow(
            () ->
                new InputProblem(
                    "coordinate system " + name(),
                    String.format(
                        Locale.ROOT,
                        "a place near longitude %.3f, latitude %.3f",
                        longitude,
                        latitude),
                    "a place for which a shift from that system to WGS 84 was published",
                    "Check that this is the system the file was made in; if so save the file in"
                        + " WGS 84 (EPSG:4326) with a GIS program that has the shift there."));
  }

  /** {easting, northing} (longitude first) in this system of a place in WGS 84 degrees. */
  double[] ofLonLat(double longitude, double latitude) {
    double[] onDatum = way(longitude, latitude).fromWgs84(longitude, latitude);
    return grid.way().ofDegrees().move(onDatum[0], onDatum[1]);
  }

  /**
   * A copy of a geometry in WGS 84 degrees, longitude first; all of it by the shift for its middle.
   *
   * @throws InputProblem if a vertex has no place there
   */
  public Geometry toLonLat(Geometry geometry) {
    try {
      Geometry onDatum = Vertices.move(geometry, this::onDatum);
      Coordinate middle = onDatum.getEnvelopeInternal().centre();
      if (middle == null) {
        return onDatum;
      }
      WayToWgs84 way = way(middle.x, middle.y);
      return Vertices.move(onDatum, (x, y) -> shifted(way, x, y));
    } catch (OutOfReach e) {
      throw outside(e.getMessage(), e);
    }
  }

  private InputProblem outside(String what, Exception cause) {
    InputProblem problem =
        new InputProblem(
            "coordinates",
            what,
            "a place within reach of " + name(),
            "Check that easting or longitude comes first and that this is the system the file was"
                + " made in.");
    problem.initCause(cause);
    return problem;
  }
}
