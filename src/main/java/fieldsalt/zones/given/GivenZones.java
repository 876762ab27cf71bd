package fieldsalt.zones.given;

import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.InputProblem;
import fieldsalt.finding.InputProblem.Problem;
import fieldsalt.finding.Place;
import fieldsalt.read.field.FieldBoundary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.overlayng.UnaryUnionNG;
import org.locationtech.jts.operation.polygonize.Polygonizer;
import org.locationtech.jts.operation.union.UnaryUnionOp;

/**
 * Zones that exist (pivots, checks, irrigation blocks, zones of an earlier run edited in a GIS),
 * cut by the field boundaries. All lines are noded together, so that neighbours share them vertex
 * by vertex; slivers narrower than 10 cm, which rounding leaves, join a neighbour.
 */
public final class GivenZones {
  /** Vertices lie on whole micrometres. */
  private static final PrecisionModel GRID = new PrecisionModel(1e6);

  /** A face narrower than this is what rounding leaves. */
  private static final double SLIVER_M = 0.1;

  /** Ground in no zone that is told. */
  private static final double TOLD_M2 = 100;

  private final List<FieldBoundary> given;
  private final STRtree index = new STRtree();
  private final List<PreparedGeometry> prepared = new ArrayList<>();
  private final List<Finding> findings = new ArrayList<>();

  /**
   * @param given in the file's order, by name; several polygons of one name are one zone
   */
  public GivenZones(List<FieldBoundary> given) {
    this.given = List.copyOf(given);
    for (int g = 0; g < given.size(); g++) {
      index.insert(given.get(g).shapeM().getEnvelopeInternal(), g);
      prepared.add(PreparedGeometryFactory.prepare(given.get(g).shapeM()));
    }
    index.build();
  }

  /** What was found while fields were cut. */
  public List<Finding> findings() {
    return List.copyOf(findings);
  }

  /**
   * The zones of each field, by name in the file's order; a field without any is absent.
   *
   * @throws InputProblem naming every pair of zones that share ground
   */
  public Map<String, Map<String, Geometry>> in(List<FieldBoundary> fields) {
    Map<String, Map<String, Geometry>> byField = new LinkedHashMap<>();
    List<Problem> problems = new ArrayList<>();
    boolean[] met = new boolean[given.size()];
    for (FieldBoundary field : fields) {
      Map<String, Geometry> zones = in(field, met, problems);
      if (!zones.isEmpty()) {
        byField.put(field.name(), zones);
      }
    }
    if (!problems.isEmpty()) {
      throw new InputProblem(problems);
    }
    for (int g = 0; g < met.length; g++) {
      if (!met[g]) {
        findings.add(
            new Finding(
                Code.ZONE_OUTSIDE,
                new Place.Key("zones.file"),
                "the zone '" + given.get(g).name() + "' lies in no mapped field",
                "not used"));
      }
    }
    return withOwnNames(byField);
  }

  /** A zone that lies in several fields is one in each, under its name and the field's. */
  private static Map<String, Map<String, Geometry>> withOwnNames(
      Map<String, Map<String, Geometry>> byField) {
    Map<String, Long> times =
        byField.values().stream()
            .flatMap(zones -> zones.keySet().stream())
            .collect(Collectors.groupingBy(name -> name, Collectors.counting()));
    Map<String, Map<String, Geometry>> named = new LinkedHashMap<>();
    byField.forEach(
        (field, zones) -> {
          Map<String, Geometry> own = new LinkedHashMap<>();
          zones.forEach(
              (name, shape) ->
                  own.put(times.get(name) > 1 ? name + " (" + field + ")" : name, shape));
          named.put(field, own);
        });
    return named;
  }

  /** A piece of ground with the zones that claim it. */
  private record Face(Polygon shape, List<Integer> claims) {
    boolean isSliver() {
      return shape.getArea() < SLIVER_M * shape.getLength() / 2;
    }
  }

  private Map<String, Geometry> in(FieldBoundary field, boolean[] met, List<Problem> problems) {
    List<Integer> near = near(field);
    List<Face> faces = faces(field, near);
    Map<Integer, List<Polygon>> parts = new TreeMap<>();
    Map<String, Double> shared = new TreeMap<>();
    List<Face> slivers = new ArrayList<>();
    double empty = 0;
    for (Face face : faces) {
      List<String> names = face.claims.stream().map(g -> given.get(g).name()).distinct().toList();
      if (face.isSliver()) {
        slivers.add(face);
      } else if (names.size() > 1) {
        shared.merge(names.get(0) + "' and '" + names.get(1), face.shape.getArea(), Double::sum);
      } else if (names.isEmpty()) {
        empty += face.shape.getArea();
      } else {
        met[face.claims.get(0)] = true;
        parts.computeIfAbsent(face.claims.get(0), g -> new ArrayList<>()).add(face.shape);
      }
    }
    shared.forEach((names, m2) -> problems.add(overlap(field, names, m2)));
    tellEmpty(field, empty);
    slivers.forEach(face -> join(face, parts));
    return byName(parts);
  }

  private static Problem overlap(FieldBoundary field, String names, double m2) {
    return new Problem(
        "zones.file, field " + field.name(),
        String.format(Locale.ROOT, "%.3f ha in both '%s'", m2 / 1e4, names),
        "zones that share no ground",
        "Move their common line in your GIS, vertex on vertex.");
  }

  private void tellEmpty(FieldBoundary field, double m2) {
    if (m2 > TOLD_M2) {
      findings.add(
          new Finding(
              Code.GROUND_WITHOUT_ZONE,
              Place.field(field.name()),
              String.format(
                  Locale.ROOT,
                  "%.2f ha of it, %.0f %%, lie in no zone of the file",
                  m2 / 1e4,
                  100 * m2 / field.shapeM().getArea()),
              "no plan is made for them; draw zones there if they are cropped"));
    }
  }

  private List<Integer> near(FieldBoundary field) {
    List<Integer> near = new ArrayList<>();
    for (Object g : index.query(field.shapeM().getEnvelopeInternal())) {
      near.add((Integer) g);
    }
    near.sort(null);
    return near;
  }

  /** The field cut along the lines of all zones near it. */
  private List<Face> faces(FieldBoundary field, List<Integer> near) {
    GeometryFactory factory = field.shapeM().getFactory();
    List<Geometry> lines = new ArrayList<>(List.of(field.shapeM().getBoundary()));
    near.forEach(g -> lines.add(given.get(g).shapeM().getBoundary()));
    Geometry noded = UnaryUnionNG.union(factory.buildGeometry(lines), GRID);
    Polygonizer polygonizer = new Polygonizer();
    polygonizer.add(noded);
    PreparedGeometry inField = PreparedGeometryFactory.prepare(field.shapeM());
    List<Face> faces = new ArrayList<>();
    for (Object each : polygonizer.getPolygons()) {
      Polygon shape = (Polygon) each;
      Point inside = shape.getInteriorPoint();
      if (inField.contains(inside)) {
        faces.add(
            new Face(shape, near.stream().filter(g -> prepared.get(g).contains(inside)).toList()));
      }
    }
    return faces;
  }

  /** A sliver joins the zone with which it shares the longest line; with none it is left. */
  private static void join(Face sliver, Map<Integer, List<Polygon>> parts) {
    int best = -1;
    double longest = 0;
    for (Map.Entry<Integer, List<Polygon>> zone : parts.entrySet()) {
      double length = 0;
      for (Polygon part : zone.getValue()) {
        if (part.getEnvelopeInternal().intersects(sliver.shape.getEnvelopeInternal())) {
          length += part.getBoundary().intersection(sliver.shape.getBoundary()).getLength();
        }
      }
      if (length > longest) {
        longest = length;
        best = zone.getKey();
      }
    }
    if (best >= 0) {
      parts.get(best).add(sliver.shape);
    }
  }

  private Map<String, Geometry> byName(Map<Integer, List<Polygon>> parts) {
    Map<String, List<Polygon>> named = new LinkedHashMap<>();
    parts.forEach(
        (g, own) -> named.computeIfAbsent(given.get(g).name(), n -> new ArrayList<>()).addAll(own));
    Map<String, Geometry> zones = new LinkedHashMap<>();
    named.forEach((name, own) -> zones.put(name, UnaryUnionOp.union(own).norm()));
    return zones;
  }
}
