package fieldsalt.read.field;

import fieldsalt.finding.Code;
import fieldsalt.finding.Place;
import fieldsalt.geo.PlaceM;
import fieldsalt.quantity.Texture;
import fieldsalt.read.file.Notes;
import fieldsalt.read.word.PlainText;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/** The ground around the sites, as the one field of a job that names no field file. */
public final class HullField {
  private static final double SHARE = 0.1;

  private HullField() {}

  /**
   * The hull of the places, widened by a tenth of its diagonal; empty without places.
   *
   * @param job its name, for the finding
   */
  public static Optional<FieldBoundary> around(List<PlaceM> places, String job, Notes notes) {
    if (places.isEmpty()) {
      return Optional.empty();
    }
    Coordinate[] points =
        places.stream().map(p -> new Coordinate(p.xM(), p.yM())).toArray(Coordinate[]::new);
    Geometry hull = new GeometryFactory().createMultiPointFromCoords(points).convexHull();
    double diagonalM = hull.getEnvelopeInternal().getDiameter();
    double widthM = Math.max(FieldFinder.REACH_M, SHARE * diagonalM);
    notes.finding(
        Code.HULL,
        Place.file(job),
        "no field boundaries",
        "the ground within "
            + PlainText.number(Math.rint(widthM))
            + " m of the hull of the sites is mapped");
    return Optional.of(
        new FieldBoundary(
            "sites",
            hull.buffer(widthM),
            Optional.empty(),
            Texture.UNKNOWN,
            OptionalDouble.empty()));
  }
}
