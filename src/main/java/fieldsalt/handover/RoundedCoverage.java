package fieldsalt.handover;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.locationtech.jts.coverage.CoverageUnion;
import org.locationtech.jts.coverage.CoverageValidator;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.geom.util.LinearComponentExtracter;
import org.locationtech.jts.noding.NodedSegmentString;
import org.locationtech.jts.noding.SegmentString;
import org.locationtech.jts.noding.snapround.SnapRoundingNoder;
import org.locationtech.jts.operation.polygonize.Polygonizer;

/**
 * Snaps all lines of polygons that tile a field onto a grid together, and gives the faces between
 * them back to the polygons: what rounding alone would have made touch or cross is clean again.
 */
final class RoundedCoverage {
  private final List<Geometry> exact;
  private final double scale;
  private final GeometryFactory factory = new GeometryFactory();

  private RoundedCoverage(List<Geometry> exact, double scale) {
    this.exact = exact;
    this.scale = scale;
  }

  /** Whether polygons are valid and none overlaps, gaps aside, or misses a neighbour's vertex. */
  static boolean isSound(List<Geometry> polygons) {
    Geometry[] all = polygons.stream().filter(g -> !g.isEmpty()).toArray(Geometry[]::new);
    for (Geometry polygon : all) {
      if (!polygon.isValid()) {
        return false;
      }
    }
    return CoverageValidator.isValid(all);
  }

  /**
   * The polygons on the grid, in the order given.
   *
   * @param scale cells of the grid per unit
   */
  static List<Geometry> snapped(List<Geometry> exact, double scale) {
    return new RoundedCoverage(exact, scale).snapped();
  }

  private List<Geometry> snapped() {
    List<List<Geometry>> faces = new ArrayList<>();
    exact.forEach(polygon -> faces.add(new ArrayList<>()));
    for (Polygon face : faces()) {
      int owner = owner(face.getInteriorPoint());
      if (owner >= 0) {
        faces.get(owner).add(face);
      }
    }
    return faces.stream().map(this::union).toList();
  }

  /** In normal form: the library's order of rings and of their first vertices is its own affair. */
  private Geometry union(List<Geometry> faces) {
    return faces.isEmpty()
        ? factory.createPolygon()
        : CoverageUnion.union(faces.toArray(new Geometry[0])).norm();
  }

  private Collection<Polygon> faces() {
    List<SegmentString> lines = new ArrayList<>();
    for (Geometry polygon : exact) {
      for (Object line : LinearComponentExtracter.getLines(polygon)) {
        lines.add(new NodedSegmentString(((LineString) line).getCoordinates(), null));
      }
    }
    SnapRoundingNoder noder = new SnapRoundingNoder(new PrecisionModel(scale));
    noder.computeNodes(lines);
    Polygonizer polygonizer = new Polygonizer();
    List<Geometry> pieces = new ArrayList<>();
    for (Object line : noder.getNodedSubstrings()) {
      pieces.add(factory.createLineString(((SegmentString) line).getCoordinates()));
    }
    polygonizer.add(factory.buildGeometry(pieces).union());
    List<Polygon> faces = new ArrayList<>();
    for (Object face : polygonizer.getPolygons()) {
      faces.add((Polygon) face);
    }
    return faces;
  }

  /** The polygon that holds a point, or the nearest within two cells of the grid; else -1. */
  private int owner(Point at) {
    int nearest = -1;
    double least = 2 / scale;
    for (int i = 0; i < exact.size(); i++) {
      double distance = exact.get(i).distance(at);
      if (distance < least) {
        least = distance;
        nearest = i;
      }
      if (distance == 0) {
        return i;
      }
    }
    return nearest;
  }
}
