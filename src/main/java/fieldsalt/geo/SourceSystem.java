package fieldsalt.geo;

import fieldsalt.finding.InputProblem;
import java.util.Locale;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.TransformException;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/** The coordinate system of a file, and the way from it to WGS 84 degrees. */
public final class SourceSystem {
  private final String name;
  private final MathTransform toDegrees;
  private final boolean shiftNeglected;
  private final Envelope shiftHoldsIn;

  /**
   * A system.
   *
   * @param shiftHoldsIn degrees in which the datum shift is good, a null envelope if it is good
   *     wherever the system is
   */
  SourceSystem(
      String name, MathTransform toDegrees, boolean shiftNeglected, Envelope shiftHoldsIn) {
    this.name = name;
    this.toDegrees = toDegrees;
    this.shiftNeglected = shiftNeglected;
    this.shiftHoldsIn = shiftHoldsIn;
  }

  /** A name for people. */
  public String name() {
    return name;
  }

  /** Whether a datum shift of a metre or two between this system and WGS 84 was taken as zero. */
  public boolean shiftNeglected() {
    return shiftNeglected;
  }

  /**
   * {longitude, latitude} in degrees of a place given in this system, easting or longitude first.
   *
   * @throws InputProblem if it has none
   */
  public double[] toLonLat(double x, double y) {
    try {
      return onEarth(Vertices.transform(x, y, toDegrees), x, y);
    } catch (TransformException e) {
      throw outside("(" + x + ", " + y + ")", e);
    }
  }

  private double[] onEarth(double[] lonLat, double x, double y) {
    if (Math.abs(lonLat[0]) > 180 || Math.abs(lonLat[1]) > 90) {
      throw outside("(" + x + ", " + y + ")", null);
    }
    if (!shiftHoldsIn.isNull() && !shiftHoldsIn.contains(lonLat[0], lonLat[1])) {
      throw new InputProblem(
          "coordinate system " + name,
          String.format(
              Locale.ROOT, "a place near longitude %.3f, latitude %.3f", lonLat[0], lonLat[1]),
          "a place where this program knows the shift of that system to WGS 84",
          "Save the file in WGS 84 (EPSG:4326) with a GIS program that knows the shift there: with"
              + " the one known here it would be off by tens of metres.");
    }
    return lonLat;
  }

  /** {easting, northing} (longitude first) in this system of a place in WGS 84 degrees. */
  double[] ofLonLat(double longitude, double latitude) throws TransformException {
    return Vertices.transform(longitude, latitude, toDegrees.inverse());
  }

  /**
   * A copy of a geometry in WGS 84 degrees, longitude first.
   *
   * @throws InputProblem if a vertex has no place there
   */
  public Geometry toLonLat(Geometry geometry) {
    try {
      Geometry moved = Vertices.transform(geometry, toDegrees);
      for (var vertex : moved.getCoordinates()) {
        onEarth(new double[] {vertex.x, vertex.y}, vertex.x, vertex.y);
      }
      return moved;
    } catch (TransformException e) {
      throw outside(e.getMessage(), e);
    }
  }

  private InputProblem outside(String what, Exception cause) {
    InputProblem problem =
        new InputProblem(
            "coordinates",
            what,
            "a place within reach of " + name,
            "Check that easting or longitude comes first and that this is the system the file was"
                + " made in.");
    if (cause != null) {
      problem.initCause(cause);
    }
    return problem;
  }
}
