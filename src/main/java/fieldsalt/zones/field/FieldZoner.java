package fieldsalt.zones.field;

import fieldsalt.classes.ClassScheme;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.zones.clean.PartZoner;
import fieldsalt.zones.clean.Piece;
import fieldsalt.zones.lattice.Cutter;
import fieldsalt.zones.lattice.InsideNodes;
import fieldsalt.zones.lattice.Nodes;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.locationtech.jts.coverage.CoveragePolygonValidator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.index.strtree.STRtree;

/** Zones of one field. */
public final class FieldZoner {
  /** Lattice points that one part may have; a larger field is drawn on every second cell, etc. */
  private static final int MOST_NODES = 6_000_000;

  /** Lattice steps that the half width should have. */
  private static final double STEPS_PER_HALF_WIDTH = 3;

  private static final GeometryFactory GEOMETRY = new GeometryFactory();

  private final FieldBoundary field;
  private final FieldMap map;
  private final ClassScheme scheme;
  private final Optional<SecondCriterion> second;
  private final ZoneSettings settings;
  private final ValueScale scale;
  private final Cutter cutter;
  private final List<Finding> findings = new ArrayList<>();
  private double insideM2;
  private double changedM2;

  public FieldZoner(
      FieldBoundary field,
      FieldMap map,
      ClassScheme scheme,
      Optional<SecondCriterion> second,
      ZoneSettings settings) {
    this.field = field;
    this.map = map;
    this.scheme = scheme;
    this.second = second;
    this.settings = settings;
    scale = ValueScale.of(map.map());
    cutter =
        new Cutter(
            scheme.breaks().stream().mapToDouble(scale::apply).toArray(),
            second
                .map(s -> s.breaks().stream().mapToDouble(b -> b).toArray())
                .orElse(new double[0]));
  }

  public List<Finding> findings() {
    return findings;
  }

  public double changedHa() {
    double ha = field.shapeM().getArea() / 10_000;
    return insideM2 == 0 ? 0 : ha * changedM2 / insideM2;
  }

  /** Named zones in the order of their numbers. */
  public List<Zone> zones() {
    List<Piece> pieces = settings.followFieldMean() ? List.of(whole()) : pieces();
    if (!isValid(pieces)) {
      pieces = List.of(whole());
      changedM2 = 0;
      findings.add(
          new Finding(
              Code.ZONES_FALLBACK,
              Place.field(field.name()),
              "the zones did not fit together without gap or overlap",
              "the whole field is one zone; redraw its boundary without needle-thin parts"));
    }
    return named(pieces);
  }

  private boolean isValid(List<Piece> pieces) {
    Geometry[] shapes = pieces.stream().map(Piece::shape).toArray(Geometry[]::new);
    double area = DoubleStream.of(areas(shapes)).sum();
    double whole = field.shapeM().getArea();
    return Math.abs(area - whole) <= 1e-6 * whole
        && pieces.parallelStream().allMatch(p -> !p.shape().isEmpty() && p.shape().isValid())
        && (shapes.length == 1 || isCoverage(shapes));
  }

  /** As {@code CoverageValidator}: each shape against those whose boxes touch its own. */
  private static boolean isCoverage(Geometry[] shapes) {
    STRtree index = new STRtree();
    for (Geometry shape : shapes) {
      index.insert(shape.getEnvelopeInternal(), shape);
    }
    index.build();
    return Arrays.stream(shapes).parallel().allMatch(shape -> fits(shape, index));
  }

  private static boolean fits(Geometry shape, STRtree index) {
    List<Geometry> beside = new ArrayList<>();
    for (Object found : index.query(shape.getEnvelopeInternal())) {
      if (found != shape) {
        beside.add((Geometry) found);
      }
    }
    return CoveragePolygonValidator.validate(shape, beside.toArray(Geometry[]::new)).isEmpty();
  }

  private static double[] areas(Geometry[] shapes) {
    return Arrays.stream(shapes).mapToDouble(Geometry::getArea).toArray();
  }

  private Piece whole() {
    double[] values = map.values(scale);
    double mean = DoubleStream.of(values).average().orElse(Double.NaN);
    if (values.length == 0) {
      findings.add(
          new Finding(
              Code.ZONES_NO_DATA,
              Place.field(field.name()),
              "the map has no value in this field",
              "the whole field is one zone of the lowest class; take samples there"));
    }
    double other = second.map(s -> secondMean(s)).orElse(0.0);
    int klass = values.length == 0 ? 0 : cutter.classOf(mean, other);
    return new Piece(field.shapeM().norm(), klass, values.length == 0 ? 0 : mean);
  }

  private double secondMean(SecondCriterion criterion) {
    return java.util.stream.IntStream.range(0, criterion.values().length)
        .filter(i -> map.isOfField(i) && Float.isFinite(criterion.values()[i]))
        .mapToDouble(i -> criterion.values()[i])
        .average()
        .orElse(0);
  }

  private List<Piece> pieces() {
    double minAreaM2 = settings.minAreaHa() * 10_000;
    if (field.shapeM().getArea() < minAreaM2) {
      return List.of(whole());
    }
    List<Piece> large = new ArrayList<>();
    List<Polygon> small = new ArrayList<>();
    for (int g = 0; g < field.shapeM().getNumGeometries(); g++) {
      Polygon part = (Polygon) field.shapeM().getGeometryN(g);
      if (part.getArea() < minAreaM2) {
        small.add(part);
      } else {
        Optional<List<Piece>> zones = zonesOf(part, minAreaM2);
        if (zones.isEmpty()) {
          return List.of(whole());
        }
        large.addAll(zones.get());
      }
    }
    return large.isEmpty() ? List.of(whole()) : withSmallParts(large, small);
  }

  private Optional<List<Piece>> zonesOf(Polygon part, double minAreaM2) {
    Optional<Nodes> nodes = nodes(part);
    if (nodes.isEmpty()) {
      return Optional.empty();
    }
    List<Piece> pieces = new PartZoner(nodes.get(), part, minAreaM2).zones(settings.minWidthM());
    count(nodes.get());
    return Optional.of(pieces);
  }

  private void count(Nodes nodes) {
    double nodeM2 = nodes.lattice().stepM() * nodes.lattice().stepM();
    for (int i = 0; i < nodes.inside().length; i++) {
      insideM2 += nodes.inside()[i] ? nodeM2 : 0;
      changedM2 += nodes.inside()[i] && nodes.klass()[i] != nodes.given()[i] ? nodeM2 : 0;
    }
  }

  private Optional<Nodes> nodes(Polygon part) {
    double cell = map.map().grid().cellM();
    double boxCells =
        (part.getEnvelopeInternal().getWidth() / cell + 7)
            * (part.getEnvelopeInternal().getHeight() / cell + 7);
    int stride = (int) Math.ceil(Math.sqrt(boxCells / MOST_NODES));
    double wanted =
        Math.ceil(STEPS_PER_HALF_WIDTH * cell / Math.max(settings.minWidthM() / 2, cell / 4));
    double affordable = Math.floor(Math.sqrt(MOST_NODES / boxCells));
    int times = (int) Math.max(1, Math.min(wanted, affordable));
    double reachM = settings.minWidthM() / 2 + 3 * cell * stride;
    return CellWindow.of(map, part, scale, second, new CellWindow.Extent(stride, reachM))
        .map(w -> w.finer(times))
        .map(
            w ->
                Nodes.of(
                    w.cells(), cutter, w.value(), w.second(), InsideNodes.walled(w.cells(), part)));
  }

  /** Parts of the field below the least area join the zone closest to them, as one multipolygon. */
  private List<Piece> withSmallParts(List<Piece> zones, List<Polygon> small) {
    List<Piece> result = new ArrayList<>(zones);
    for (Polygon part : small) {
      Optional<Nodes> nodes = nodes(part);
      int best = nodes.map(n -> closest(result, n, part)).orElse(0);
      Piece to = result.get(best);
      nodes.ifPresent(
          n -> {
            Arrays.fill(n.klass(), to.klass());
            count(n);
          });
      result.set(best, new Piece(multi(to.shape(), part), to.klass(), to.value()));
    }
    return result;
  }

  /** The zone closest in value, of those that are alike by the second criterion if any is. */
  private int closest(List<Piece> zones, Nodes nodes, Polygon part) {
    Coordinate centre = part.getInteriorPoint().getCoordinate();
    int node = nodes.lattice().nearest(centre.x, centre.y);
    int second = cutter.second(nodes.klass()[node]);
    boolean any = zones.stream().anyMatch(z -> cutter.second(z.klass()) == second);
    return IntStream.range(0, zones.size())
        .filter(i -> !any || cutter.second(zones.get(i).klass()) == second)
        .boxed()
        .min(Comparator.comparingDouble(i -> Math.abs(zones.get(i).value() - nodes.value()[node])))
        .orElse(0);
  }

  private static Geometry multi(Geometry shape, Polygon part) {
    List<Polygon> parts = new ArrayList<>();
    for (int g = 0; g < shape.getNumGeometries(); g++) {
      parts.add((Polygon) shape.getGeometryN(g));
    }
    parts.add(part);
    return GEOMETRY.createMultiPolygon(parts.toArray(Polygon[]::new)).norm();
  }

  /** Numbered by class from the lowest up, within a class from the north-west to the south-east. */
  private List<Zone> named(List<Piece> pieces) {
    List<Piece> sorted = new ArrayList<>(pieces);
    sorted.sort(
        Comparator.comparingInt(Piece::klass)
            .thenComparingDouble(p -> southEast(p.shape()))
            .thenComparing((a, b) -> a.shape().compareTo(b.shape())));
    List<Zone> zones = new ArrayList<>();
    for (Piece piece : sorted) {
      int first = cutter.first(piece.klass());
      zones.add(
          new Zone(
              field.name() + "-" + (zones.size() + 1),
              field.name(),
              first,
              label(first, cutter.second(piece.klass())),
              piece.shape()));
    }
    return zones;
  }

  private static double southEast(Geometry shape) {
    return shape.getCentroid().getX() - shape.getCentroid().getY();
  }

  private String label(int first, int secondClass) {
    String label = scheme.labels().get(first);
    String more = second.map(s -> s.labels().get(secondClass)).orElse("");
    return more.isEmpty() ? label : label + ", " + more;
  }
}
