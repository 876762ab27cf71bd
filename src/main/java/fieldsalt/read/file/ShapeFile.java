package fieldsalt.read.file;

import fieldsalt.finding.InputProblem;
import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/**
 * Polygons of a Shapefile (ESRI 1998): shells run clockwise, holes the other way; a hole belongs to
 * the smallest shell around it.
 */
public final class ShapeFile {
  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final int HEADER = 100;

  private final String file;
  private final ByteBuffer bytes;

  private ShapeFile(String file, byte[] bytes) {
    this.file = file;
    this.bytes = ByteBuffer.wrap(bytes);
  }

  public static boolean isOne(InputFile file) {
    return file.startsWith(0, 0, 0x27, 0x0A);
  }

  /**
   * The features of a Shapefile.
   *
   * @param dbf its table; empty if there is none
   * @param prj the text of its projection; without it the coordinates must be degrees
   */
  public static GeoFeature.Collection read(
      InputFile shp, Optional<InputFile> dbf, Optional<InputFile> cpg, Optional<String> prj) {
    try {
      List<Optional<Geometry>> shapes = new ShapeFile(shp.name(), shp.bytes()).shapes();
      List<Map<String, String>> rows = dbf.map(d -> DbfRows.rows(d, cpg)).orElse(List.of());
      List<GeoFeature> features = new ArrayList<>();
      for (int i = 0; i < shapes.size(); i++) {
        features.add(
            new GeoFeature(i + 1, shapes.get(i), i < rows.size() ? rows.get(i) : Map.of()));
      }
      return new GeoFeature.Collection(shp.name(), features, prj);
    } catch (RuntimeException e) {
      if (e instanceof InputProblem known) {
        throw known;
      }
      throw new InputProblem(
              shp.name(),
              "a Shapefile that is cut off or broken",
              "whole .shp and .dbf files",
              "Export it again, or as GeoJSON.")
          .because(e);
    }
  }

  private List<Optional<Geometry>> shapes() {
    List<Optional<Geometry>> shapes = new ArrayList<>();
    int at = HEADER;
    while (at + 12 <= bytes.capacity()) {
      int words = bytes.order(ByteOrder.BIG_ENDIAN).getInt(at + 4);
      if (words < 2 || at + 8 + 2L * words > bytes.capacity()) {
        throw new BufferUnderflowException();
      }
      shapes.add(shape(at + 8, shapes.size() + 1));
      at += 8 + 2 * words;
    }
    return shapes;
  }

  private Optional<Geometry> shape(int start, int number) {
    bytes.order(ByteOrder.LITTLE_ENDIAN).position(start);
    int kind = bytes.getInt();
    if (kind == 0) {
      return Optional.empty();
    }
    if (kind == 1 || kind == 11 || kind == 21) {
      return Optional.of(FACTORY.createPoint(coordinate()));
    }
    if (kind != 5 && kind != 15 && kind != 25) {
      return Optional.of(FACTORY.createMultiPoint());
    }
    bytes.position(start + 36);
    int parts = bytes.getInt();
    int points = bytes.getInt();
    if (parts < 0 || points < 0 || 16L * points + 4L * parts > bytes.remaining()) {
      throw new BufferUnderflowException();
    }
    int[] starts = new int[parts + 1];
    for (int i = 0; i < parts; i++) {
      starts[i] = bytes.getInt();
    }
    starts[parts] = points;
    return Optional.of(polygons(rings(starts, number)));
  }

  private List<LinearRing> rings(int[] starts, int number) {
    List<LinearRing> rings = new ArrayList<>();
    for (int i = 0; i + 1 < starts.length; i++) {
      if (starts[i] < 0 || starts[i + 1] < starts[i] || starts[i + 1] > starts[starts.length - 1]) {
        throw new BufferUnderflowException();
      }
      Coordinate[] ring = new Coordinate[starts[i + 1] - starts[i]];
      for (int j = 0; j < ring.length; j++) {
        ring[j] = coordinate();
      }
      if (ring.length > 0) {
        rings.add(Rings.ring(ring, file + " feature " + number));
      }
    }
    return rings;
  }

  private Coordinate coordinate() {
    double x = bytes.getDouble();
    double y = bytes.getDouble();
    if (!Double.isFinite(x) || !Double.isFinite(y)) {
      throw new IllegalArgumentException("a coordinate that is no number");
    }
    return new Coordinate(x, y);
  }

  private static Geometry polygons(List<LinearRing> rings) {
    List<LinearRing> shells = new ArrayList<>();
    List<LinearRing> holes = new ArrayList<>();
    for (LinearRing ring : rings) {
      (Orientation.isCCW(ring.getCoordinates()) ? holes : shells).add(ring);
    }
    if (shells.isEmpty()) {
      // a program that winds rings the other way: every ring is a shell unless it lies in another
      shells.addAll(outer(holes));
      holes.removeAll(shells);
    }
    List<Polygon> polygons = new ArrayList<>();
    for (LinearRing shell : shells) {
      LinearRing[] own =
          holes.stream().filter(h -> shell.equals(around(h, shells))).toArray(LinearRing[]::new);
      polygons.add(FACTORY.createPolygon(shell, own));
    }
    return polygons.size() == 1
        ? polygons.get(0)
        : FACTORY.createMultiPolygon(polygons.toArray(Polygon[]::new));
  }

  private static List<LinearRing> outer(List<LinearRing> rings) {
    return rings.stream()
        .filter(r -> rings.stream().noneMatch(o -> !o.equals(r) && covers(o, r)))
        .toList();
  }

  private static LinearRing around(LinearRing hole, List<LinearRing> shells) {
    LinearRing best = shells.get(0);
    double least = Double.POSITIVE_INFINITY;
    for (LinearRing shell : shells) {
      double area = shell.getEnvelopeInternal().getArea();
      if (covers(shell, hole) && area < least) {
        best = shell;
        least = area;
      }
    }
    return best;
  }

  private static boolean covers(LinearRing shell, LinearRing ring) {
    return shell.getEnvelopeInternal().covers(ring.getEnvelopeInternal())
        && FACTORY.createPolygon(shell).covers(ring.getPointN(0));
  }
}
