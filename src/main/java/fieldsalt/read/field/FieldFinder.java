package fieldsalt.read.field;

import fieldsalt.geo.PlaceM;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;

/** Finds the field that a place lies in, or the nearest within some metres. */
public final class FieldFinder {
  private static final GeometryFactory POINTS = new GeometryFactory();

  private final STRtree index = new STRtree();
  private final double reachM;

  private record Entry(int order, String name, Geometry shape, PreparedGeometry prepared) {}

  /**
   * A field found.
   *
   * @param distanceM 0 inside or on the boundary
   */
  public record Hit(String field, double distanceM) {}

  public FieldFinder(List<FieldBoundary> fields, double reachM) {
    this.reachM = reachM;
    int order = 0;
    for (FieldBoundary field : fields) {
      Geometry shape = field.shapeM();
      index.insert(
          shape.getEnvelopeInternal(),
          new Entry(order++, field.name(), shape, PreparedGeometryFactory.prepare(shape)));
    }
    index.build();
  }

  /** The first field (in the file's order) that covers a place, else the nearest within reach. */
  public Optional<Hit> find(PlaceM place) {
    Point point =
        POINTS.createPoint(new org.locationtech.jts.geom.Coordinate(place.xM(), place.yM()));
    Envelope box = point.getEnvelopeInternal();
    box.expandBy(reachM);
    List<Entry> near = new ArrayList<>();
    for (Object entry : index.query(box)) {
      near.add((Entry) entry);
    }
    near.sort(Comparator.comparingInt(Entry::order));
    for (Entry entry : near) {
      if (entry.prepared().covers(point)) {
        return Optional.of(new Hit(entry.name(), 0));
      }
    }
    return near.stream()
        .map(e -> new Hit(e.name(), e.shape().distance(point)))
        .filter(hit -> hit.distanceM() <= reachM)
        .min(Comparator.comparingDouble(Hit::distanceM));
  }
}
