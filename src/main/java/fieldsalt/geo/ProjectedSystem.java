package fieldsalt.geo;

import fieldsalt.finding.InputProblem;
import java.util.OptionalInt;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.NoninvertibleTransformException;
import org.geotools.api.referencing.operation.TransformException;
import org.locationtech.jts.geom.Geometry;

/** A metric projection with its transform from WGS 84 longitude and latitude. */
final class ProjectedSystem implements RanchProjection {
  private final String name;
  private final OptionalInt epsg;
  private final CoordinateReferenceSystem crs;
  private final MathTransform toMetres;
  private final MathTransform toDegrees;
  private final String esriWkt;

  ProjectedSystem(
      String name,
      OptionalInt epsg,
      CoordinateReferenceSystem crs,
      MathTransform toMetres,
      String esriWkt) {
    this.name = name;
    this.epsg = epsg;
    this.crs = crs;
    this.toMetres = toMetres;
    this.toDegrees = inverse(toMetres);
    this.esriWkt = esriWkt;
  }

  private static MathTransform inverse(MathTransform transform) {
    try {
      return transform.inverse();
    } catch (NoninvertibleTransformException e) {
      throw new IllegalArgumentException("a projection must have an inverse", e);
    }
  }

  @Override
  public PlaceM toMetres(double longitude, double latitude) {
    try {
      double[] at = Vertices.transform(longitude, latitude, toMetres);
      return new PlaceM(at[0], at[1]);
    } catch (TransformException e) {
      throw outside("longitude " + longitude + ", latitude " + latitude, e);
    }
  }

  @Override
  public double[] toLonLat(double xM, double yM) {
    try {
      return Vertices.transform(xM, yM, toDegrees);
    } catch (TransformException e) {
      throw outside("x " + xM + " m, y " + yM + " m", e);
    }
  }

  @Override
  public Geometry toMetres(Geometry lonLat) {
    return move(lonLat, toMetres);
  }

  @Override
  public Geometry toLonLat(Geometry metres) {
    return move(metres, toDegrees);
  }

  private Geometry move(Geometry geometry, MathTransform transform) {
    try {
      return Vertices.transform(geometry, transform);
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
            "Check that longitude comes first, that its sign is right (west is negative), and that"
                + " the coordinate system is the one the file was made in.");
    problem.initCause(cause);
    return problem;
  }

  @Override
  public OptionalInt epsg() {
    return epsg;
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public boolean isLocal() {
    return false;
  }

  @Override
  public CoordinateReferenceSystem crs() {
    return crs;
  }

  @Override
  public String esriWkt() {
    return esriWkt;
  }
}
