package fieldsalt.zones;

import fieldsalt.classes.ClassScheme;
import fieldsalt.read.field.FieldBoundary;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.AffineTransformation;

/** A random field with a random surface: holes, parts, slivers, 3 to 9 classes. */
record RandomCase(FieldBoundary field, double cellM, DoubleBinaryOperator ece, ClassScheme scheme) {
  private static final GeometryFactory GEOMETRY = new GeometryFactory();

  static RandomCase of(int seed) {
    Random random = new Random(7919L * seed + 17);
    double west = 300_000 + random.nextInt(300_000);
    double south = 4_000_000 + random.nextInt(500_000);
    double size = 250 + random.nextDouble() * 900;
    Geometry shape = shape(random, seed % 8, size);
    shape = AffineTransformation.rotationInstance(random.nextDouble() * 6.28).transform(shape);
    shape = AffineTransformation.translationInstance(west, south).transform(shape);
    double cell = List.of(5.0, 5.0, 10.0, 12.0).get(random.nextInt(4));
    int classes = 3 + seed % 7;
    DoubleBinaryOperator log = logSurface(random, west, south, size);
    return new RandomCase(
        Given.field("f" + seed, shape),
        cell,
        (x, y) -> Math.exp(log.applyAsDouble(x, y)),
        scheme(random, classes));
  }

  private static Geometry shape(Random random, int kind, double size) {
    Geometry blob = blob(random, 0, 0, size / 2, 5 + random.nextInt(40));
    return switch (kind) {
      case 1 -> blob.difference(blob(random, size / 10, 0, size / 8, 9));
      case 2 ->
          blob.union(blob(random, size * 1.3, size * 0.2, size / 4, 12))
              .union(blob(random, -size, size, size / 30, 6));
      case 3 -> blob.union(bar(-size, -4, size, 4));
      case 4 -> bar(-size / 2, -size / 3, size / 2, size / 3);
      case 5 -> bar(-size / 2, -10, size / 2, 10).union(blob(random, 0, 0, size / 5, 14));
      case 6 ->
          blob.difference(bar(-size, -1, size / 10, 1))
              .difference(blob(random, 0, size / 5, size / 12, 20));
      case 7 -> bar(-size / 2, -size / 2, size / 2, size / 2).difference(wedge(size));
      default -> blob;
    };
  }

  private static Geometry bar(double x0, double y0, double x1, double y1) {
    return Given.wkt(
        "POLYGON ((%f %f, %f %f, %f %f, %f %f, %f %f))"
            .formatted(x0, y0, x1, y0, x1, y1, x0, y1, x0, y0));
  }

  /** A needle cut into the field from its edge. */
  private static Geometry wedge(double size) {
    return Given.wkt(
        "POLYGON ((%f 0, %f 20, %f -20, %f 0))".formatted(size / 4, -size, -size, size / 4));
  }

  private static Geometry blob(Random random, double x, double y, double radius, int corners) {
    List<Double> angles = new ArrayList<>();
    for (int i = 0; i < corners; i++) {
      angles.add(2 * Math.PI * (i + 0.8 * random.nextDouble()) / corners);
    }
    Collections.sort(angles);
    List<Coordinate> ring = new ArrayList<>();
    for (double angle : angles) {
      double r = radius * (0.7 + 0.3 * random.nextDouble());
      ring.add(new Coordinate(x + r * Math.cos(angle), y + r * Math.sin(angle)));
    }
    ring.add(ring.get(0).copy());
    return GEOMETRY.createPolygon(ring.toArray(Coordinate[]::new));
  }

  /** A sum of waves: like a kriged map of a range of a quarter to one field's size. */
  private static DoubleBinaryOperator logSurface(
      Random random, double west, double south, double size) {
    int waves = 12;
    double[][] w = new double[waves][];
    for (int k = 0; k < waves; k++) {
      double length = size * (0.35 + random.nextDouble());
      double angle = random.nextDouble() * 2 * Math.PI;
      double f = 2 * Math.PI / length;
      w[k] =
          new double[] {
            f * Math.cos(angle),
            f * Math.sin(angle),
            random.nextDouble() * 6.28,
            0.1 + 0.2 * random.nextDouble()
          };
    }
    return (x, y) -> {
      double sum = 1.3;
      for (double[] k : w) {
        sum += k[3] * Math.cos(k[0] * (x - west) + k[1] * (y - south) + k[2]);
      }
      return sum;
    };
  }

  /** Limits spread over the middle of the surface's distribution. */
  private static ClassScheme scheme(Random random, int classes) {
    List<Double> limits = new ArrayList<>();
    for (int k = 1; k < classes; k++) {
      limits.add(Math.exp(1.3 + 1.6 * (k + 0.3 * random.nextDouble() - classes / 2.0) / classes));
    }
    return Given.scheme(limits.toArray(Double[]::new));
  }
}
