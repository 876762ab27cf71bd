package fieldsalt.handover;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.geo.Projections;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.coverage.CoverageValidator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.overlayng.CoverageUnion;
import org.locationtech.jts.triangulate.VoronoiDiagramBuilder;

/** Zones that tile a field still do after rounding to the last decimal. */
class RoundedCoverageTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private static Geometry local(String wkt) {
    return SmallRanch.wkt(wkt);
  }

  private static double area(List<Geometry> zones) {
    return zones.stream().mapToDouble(Geometry::getArea).sum();
  }

  private static void assertCoverage(List<Geometry> zones) {
    assertThat(CoverageValidator.isValid(zones.toArray(new Geometry[0]))).isTrue();
    assertThat(zones).allMatch(Geometry::isValid);
    Geometry whole = CoverageUnion.union(FACTORY.buildGeometry(zones));
    assertThat(whole.getArea()).isCloseTo(area(zones), within(1e-9 * area(zones)));
  }

  /** A sliver thinner than the last decimal: one neighbour gets a vertex on the other's edge. */
  @Test
  void aSliverThinnerThanTheLastDecimalDoesNotBreakTheTiling() {
    List<Geometry> zones =
        List.of(
            local("POLYGON((0 0, 0 -40, 100 -40, 100 0.0004, 0 0))"),
            local("POLYGON((0 0, 100 0.0004, 50 0.0003, 0 0))"),
            local("POLYGON((0 0, 50 0.0003, 100 0.0004, 100 40, 0 40, 0 0))"));
    Degrees degrees = new Degrees(Projections.local());
    List<Geometry> plain = zones.stream().map(degrees::of).toList();
    assertThat(RoundedCoverage.isSound(plain)).as("the case is one").isFalse();
    List<Geometry> rounded = degrees.ofCoverage(zones);
    assertThat(rounded.get(1).isEmpty()).as("nothing is left of the sliver").isTrue();
    assertCoverage(List.of(rounded.get(0), rounded.get(2)));
    assertThat(area(rounded)).isCloseTo(100 * 80, within(1e-6));
  }

  @Test
  void cellsOfEverySizeStillTileTheSquare() {
    Degrees degrees = new Degrees(SmallRanch.UTM);
    int snapped = 0;
    for (int seed = 1; seed <= 40; seed++) {
      Random random = new Random(seed);
      double side = seed % 2 == 0 ? 600 : 3;
      List<Geometry> zones = voronoi(random, side);
      List<Geometry> rounded = degrees.ofCoverage(zones);
      boolean simple = RoundedCoverage.isSound(zones.stream().map(degrees::of).toList());
      snapped += simple ? 0 : 1;
      assertCoverage(rounded.stream().filter(g -> !g.isEmpty()).toList());
      Geometry square =
          degrees.of(
              FACTORY.toGeometry(
                  new Envelope(
                      SmallRanch.X, SmallRanch.X + side, SmallRanch.Y, SmallRanch.Y + side)));
      double tolerance = side > 100 ? 1e-5 : 0.02;
      assertThat(area(rounded)).isCloseTo(square.getArea(), within(tolerance * square.getArea()));
    }
    assertThat(snapped).as("some needed the snapping").isPositive();
  }

  private static List<Geometry> voronoi(Random random, double side) {
    List<Coordinate> sites = new ArrayList<>();
    for (int i = 0; i < 120; i++) {
      sites.add(
          new Coordinate(
              SmallRanch.X + side * random.nextDouble(),
              SmallRanch.Y + side * random.nextDouble()));
    }
    VoronoiDiagramBuilder builder = new VoronoiDiagramBuilder();
    builder.setSites(sites);
    Envelope box =
        new Envelope(SmallRanch.X, SmallRanch.X + side, SmallRanch.Y, SmallRanch.Y + side);
    builder.setClipEnvelope(box);
    Geometry cells = builder.getDiagram(FACTORY);
    Geometry square = FACTORY.toGeometry(box);
    List<Geometry> zones = new ArrayList<>();
    for (int i = 0; i < cells.getNumGeometries(); i++) {
      zones.add(cells.getGeometryN(i).intersection(square));
    }
    return zones;
  }
}
