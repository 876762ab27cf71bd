package fieldsalt.read.field;

import fieldsalt.geo.PlaceM;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;

/** The fields of a ranch by place and by name, in a time that hardly grows with their number. */
public final class FieldFinder {
  /**
   * How far outside a boundary a site still belongs to the field: a receiver's error and a fence.
   */
  public static final double REACH_M = 15;

  private static final GeometryFactory POINTS = new GeometryFactory();

  private final List<FieldBoundary> fields;
  private final Map<String, FieldBoundary> byName = new HashMap<>();
  private final STRtree index = new STRtree();

  private record Entry(int order, FieldBoundary field, PreparedGeometry prepared) {}

  /**
   * A field found.
   *
   * @param distanceM 0 inside or on the boundary
   */
  public record Hit(FieldBoundary field, double distanceM) {}

  public FieldFinder(List<FieldBoundary> fields) {
    this.fields = List.copyOf(fields);
    for (FieldBoundary field : this.fields) {
      PreparedGeometry prepared = PreparedGeometryFactory.prepare(field.shapeM());
      Entry entry = new Entry(byName.size(), field, prepared);
      index.insert(field.shapeM().getEnvelopeInternal(), entry);
      byName.put(key(field.name()), field);
    }
    index.build();
  }

  private static String key(String name) {
    return name.toLowerCase(Locale.ROOT);
  }

  /** Every field, in the file's order. */
  public List<FieldBoundary> fields() {
    return fields;
  }

  /** The field of a name, blind to case. */
  public Optional<FieldBoundary> named(String name) {
    return Optional.ofNullable(byName.get(key(name)));
  }

  /** The first field (in the file's order) that covers a place, else the nearest within reach. */
  public Optional<Hit> find(PlaceM place) {
    Point point = POINTS.createPoint(new Coordinate(place.xM(), place.yM()));
    List<Entry> near = near(point);
    for (Entry entry : near) {
      if (entry.prepared().covers(point)) {
        return Optional.of(new Hit(entry.field(), 0));
      }
    }
    return near.stream()
        .map(e -> new Hit(e.field(), e.field().shapeM().distance(point)))
        .filter(hit -> hit.distanceM() <= REACH_M)
        .min(Comparator.comparingDouble(Hit::distanceM));
  }

  private List<Entry> near(Point point) {
    Envelope box = point.getEnvelopeInternal();
    box.expandBy(REACH_M);
    List<Entry> near = new ArrayList<>();
    for (Object entry : index.query(box)) {
      near.add((Entry) entry);
    }
    near.sort(Comparator.comparingInt(Entry::order));
    return near;
  }
}
