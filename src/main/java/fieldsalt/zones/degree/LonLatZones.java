package fieldsalt.zones.degree;

import fieldsalt.zones.line.Faces;
import fieldsalt.zones.line.LabelledLine;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.locationtech.jts.coverage.CoverageUnion;
import org.locationtech.jts.coverage.CoverageValidator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateFilter;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/**
 * Zones in degrees, rounded together: after rounding they still share every vertex, without gap or
 * overlap, and a vertex of the field's boundary is rounded as it is for the field alone. Vertices
 * that zones added to the boundary are slid along it, by up to some decimetres, to where a rounded
 * place lies on the straight line between the boundary's rounded vertices.
 */
public final class LonLatZones {
  /** Decimals of a degree: about 1 cm. */
  public static final int DECIMALS = 7;

  private static final int MOST_DECIMALS = 10;

  /** Metres to {longitude, latitude}. */
  public interface ToLonLat {
    double[] lonLat(double xM, double yM);
  }

  private record Directed(Coordinate from, Coordinate to) {}

  private final List<Geometry> zones;
  private final Map<Directed, Integer> zoneRightOf = new HashMap<>();
  private final BoundaryRounding rounding;

  private LonLatZones(List<Geometry> zones, Geometry field, ToLonLat toLonLat, double perDegree) {
    this.zones = zones;
    for (int z = 0; z < zones.size(); z++) {
      for (LinearRing ring : rings(zones.get(z))) {
        Coordinate[] c = ring.getCoordinates();
        for (int i = 1; i < c.length; i++) {
          zoneRightOf.put(new Directed(c[i - 1], c[i]), z);
        }
      }
    }
    rounding = new BoundaryRounding(field, toLonLat, perDegree);
    zoneRightOf
        .keySet()
        .forEach(
            side -> {
              if (!zoneRightOf.containsKey(new Directed(side.to(), side.from()))) {
                rounding.onBoundary(side.from());
                rounding.onBoundary(side.to());
              }
            });
    rounding.settle();
  }

  /**
   * A coverage in degrees, rounded to {@link #DECIMALS} decimals; to more where zones would vanish,
   * which takes a field of a few centimetres. Zones that are no coverage come back unrounded.
   *
   * @param zonesM valid coverage of a field in metres, vertices shared exactly
   * @param fieldM what the zones tile
   * @return normalised geometries in degrees in the order of the zones, a valid coverage
   */
  public static List<Geometry> round(List<Geometry> zonesM, Geometry fieldM, ToLonLat toLonLat) {
    if (zonesM.isEmpty()) {
      return List.of();
    }
    List<Geometry> normal = zonesM.stream().map(Geometry::norm).toList();
    for (int decimals = DECIMALS; decimals <= MOST_DECIMALS; decimals++) {
      Optional<List<Geometry>> rounded =
          new LonLatZones(normal, fieldM, toLonLat, Math.pow(10, decimals)).rounded();
      if (rounded.isPresent()) {
        return rounded.get();
      }
    }
    return normal.stream().map(zone -> inDegrees(zone, toLonLat)).toList();
  }

  private static Geometry inDegrees(Geometry zone, ToLonLat toLonLat) {
    Geometry degrees = zone.copy();
    degrees.apply(
        (CoordinateFilter)
            c -> {
              double[] lonLat = toLonLat.lonLat(c.x, c.y);
              c.x = lonLat[0];
              c.y = lonLat[1];
            });
    degrees.geometryChanged();
    return degrees;
  }

  private Optional<List<Geometry>> rounded() {
    List<LabelledLine> outline = new ArrayList<>();
    List<LabelledLine> inner = new ArrayList<>();
    for (int z = 0; z < zones.size(); z++) {
      for (LinearRing ring : rings(zones.get(z))) {
        runs(ring.getCoordinates(), z, outline, inner);
      }
    }
    Faces faces = Faces.of(outline, inner, Optional.empty(), rounding.perDegree());
    return grouped(faces).filter(LonLatZones::isCoverage);
  }

  private static boolean isCoverage(List<Geometry> shapes) {
    return shapes.stream().allMatch(Geometry::isValid)
        && CoverageValidator.isValid(shapes.toArray(Geometry[]::new));
  }

  private static List<LinearRing> rings(Geometry shape) {
    List<LinearRing> rings = new ArrayList<>();
    for (int g = 0; g < shape.getNumGeometries(); g++) {
      Polygon polygon = (Polygon) shape.getGeometryN(g);
      rings.add(polygon.getExteriorRing());
      for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
        rings.add(polygon.getInteriorRingN(h));
      }
    }
    return rings;
  }

  /** Cuts a ring into runs with one neighbour each; a run between two zones is taken once. */
  private void runs(
      Coordinate[] ring, int zone, List<LabelledLine> outline, List<LabelledLine> inner) {
    int n = ring.length - 1;
    int start = 0;
    while (start < n - 1 && across(ring, start) == across(ring, (start + n - 1) % n)) {
      start++;
    }
    for (int done = 0; done < n; ) {
      int other = across(ring, (start + done) % n);
      List<Coordinate> run = new ArrayList<>();
      run.add(rounding.place(ring[(start + done) % n]));
      while (done < n && across(ring, (start + done) % n) == other) {
        Coordinate next = ring[(start + done + 1) % n];
        if (other == LabelledLine.OUT) {
          run.addAll(rounding.between(ring[(start + done) % n], next));
        }
        run.add(rounding.place(next));
        done++;
      }
      if (other == LabelledLine.OUT) {
        add(outline, run, other, zone);
      } else if (zone < other) {
        add(inner, run, other, zone);
      }
    }
  }

  private int across(Coordinate[] ring, int i) {
    return zoneRightOf.getOrDefault(new Directed(ring[i + 1], ring[i]), LabelledLine.OUT);
  }

  private static void add(List<LabelledLine> lines, List<Coordinate> run, int left, int right) {
    List<Coordinate> distinct = new ArrayList<>();
    for (Coordinate c : run) {
      if (distinct.isEmpty() || !c.equals2D(distinct.get(distinct.size() - 1))) {
        distinct.add(c);
      }
    }
    if (distinct.size() > 1) {
      lines.add(new LabelledLine(distinct.toArray(Coordinate[]::new), left, right));
    }
  }

  /** Faces by zone, a face that no line labels with the neighbour it touches longest. */
  private Optional<List<Geometry>> grouped(Faces faces) {
    TreeMap<Integer, List<Geometry>> byZone = new TreeMap<>();
    for (int f = 0; f < faces.faces().size(); f++) {
      int label = faces.faces().get(f).label();
      int zone = label >= 0 ? label : longestNeighbour(faces, f);
      byZone.computeIfAbsent(zone, k -> new ArrayList<>()).add(faces.faces().get(f).shape());
    }
    if (byZone.size() != zones.size() || byZone.firstKey() != 0) {
      return Optional.empty();
    }
    List<Geometry> shapes = new ArrayList<>();
    byZone.values().forEach(parts -> shapes.add(union(parts)));
    return Optional.of(shapes);
  }

  private static int longestNeighbour(Faces faces, int face) {
    int best = -1;
    double most = 0;
    for (Faces.Contact contact : faces.contacts()) {
      int other = contact.a() == face ? contact.b() : contact.b() == face ? contact.a() : -1;
      if (other >= 0 && faces.faces().get(other).label() >= 0 && contact.length() > most) {
        most = contact.length();
        best = faces.faces().get(other).label();
      }
    }
    return best;
  }

  private static Geometry union(List<Geometry> parts) {
    return (parts.size() == 1 ? parts.get(0) : CoverageUnion.union(parts.toArray(Geometry[]::new)))
        .norm();
  }
}
