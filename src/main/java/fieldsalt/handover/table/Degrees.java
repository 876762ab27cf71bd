package fieldsalt.handover.table;

import fieldsalt.finding.InputProblem;
import fieldsalt.geo.RanchProjection;
import fieldsalt.zones.degree.LonLatZones;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateList;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;

/**
 * Shapes in metres to the coordinates of RFC 7946: longitude and latitude with 7 decimals (about a
 * centimetre), shells against the clock, holes with it, no vertex twice in a row. In a local system
 * the numbers are metres with 6 decimals, as zones have them.
 */
public final class Degrees {
  static final int DECIMALS = 7;
  private final RanchProjection projection;
  private final double scale;
  private final GeometryFactory factory = new GeometryFactory();

  public Degrees(RanchProjection projection) {
    this.projection = projection;
    this.scale = projection.isLocal() ? 1e6 : 1e7;
  }

  /**
   * The rounded shape in degrees.
   *
   * @throws InputProblem if it crosses the 180th meridian
   */
  public Geometry of(Geometry metres) {
    Geometry degrees = projection.toLonLat(metres);
    refuseAntimeridian(degrees);
    return degrees instanceof Point point ? point(point) : polygons(degrees);
  }

  /**
   * The rounded shapes of zones that tile a field: they still do.
   *
   * @throws InputProblem if one crosses the 180th meridian
   */
  public List<Geometry> ofZones(List<Geometry> zonesM, Geometry fieldM) {
    if (projection.isLocal()) {
      return zonesM.stream().map(this::of).toList();
    }
    refuseAntimeridian(projection.toLonLat(fieldM));
    return LonLatZones.round(zonesM, fieldM, projection::toLonLat).stream()
        .map(this::polygons)
        .toList();
  }

  private void refuseAntimeridian(Geometry degrees) {
    if (!projection.isLocal() && degrees.getEnvelopeInternal().getWidth() > 180) {
      throw new InputProblem(
          "coordinates",
          "a shape on both sides of the 180th meridian",
          "a ranch on one side of it",
          "Split the field there and map the two sides by themselves.");
    }
  }

  private Geometry point(Point point) {
    return factory.createPoint(round(point.getCoordinate()));
  }

  private Geometry polygons(Geometry degrees) {
    List<Polygon> parts = new ArrayList<>();
    for (int i = 0; i < degrees.getNumGeometries(); i++) {
      Polygon part = polygon((Polygon) degrees.getGeometryN(i));
      if (!part.isEmpty()) {
        parts.add(part);
      }
    }
    return parts.size() == 1
        ? parts.get(0)
        : factory.createMultiPolygon(parts.toArray(new Polygon[0]));
  }

  private Polygon polygon(Polygon polygon) {
    LinearRing shell = ring(polygon.getExteriorRing(), true);
    List<LinearRing> holes = new ArrayList<>();
    for (int i = 0; i < polygon.getNumInteriorRing() && !shell.isEmpty(); i++) {
      LinearRing hole = ring(polygon.getInteriorRingN(i), false);
      if (!hole.isEmpty()) {
        holes.add(hole);
      }
    }
    return factory.createPolygon(shell, holes.toArray(new LinearRing[0]));
  }

  private LinearRing ring(LinearRing ring, boolean againstTheClock) {
    CoordinateList kept = new CoordinateList();
    for (Coordinate at : ring.getCoordinates()) {
      kept.add(round(at), false);
    }
    Coordinate[] points = kept.toCoordinateArray();
    if (points.length < 4) {
      return factory.createLinearRing();
    }
    LinearRing rounded = factory.createLinearRing(points);
    return Orientation.isCCW(points) == againstTheClock ? rounded : rounded.reverse();
  }

  private Coordinate round(Coordinate at) {
    return new Coordinate(Math.round(at.x * scale) / scale, Math.round(at.y * scale) / scale);
  }
}
