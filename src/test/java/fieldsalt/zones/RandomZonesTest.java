package fieldsalt.zones;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.surface.SurfaceMap;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.coverage.CoverageValidator;
import org.locationtech.jts.geom.Geometry;

/** 300 random surfaces on random fields. */
class RandomZonesTest {
  private static final int CASES = Integer.getInteger("cases", 300);

  @Test
  void zonesTileTheFieldAndCanBeFollowed() {
    List<Double> kept = new ArrayList<>();
    for (int seed = 0; seed < CASES; seed++) {
      RandomCase given = RandomCase.of(seed);
      SurfaceMap map = Given.map(given.field(), given.cellM(), given.ece());
      long t0 = System.nanoTime();
      ZoneMap zones =
          ZoneBuilder.build(
              List.of(map),
              List.of(given.field()),
              Map.of(given.field().name(), given.scheme()),
              ZoneSettings.defaults());
      long t1 = System.nanoTime();
      if (!zones.findings().isEmpty()) System.out.println(seed + " " + zones.findings());
      Geometry[] shapes = zones.zones().stream().map(Zone::shapeM).toArray(Geometry[]::new);
      double area = given.field().shapeM().getArea();
      assertThat(CoverageValidator.isValid(shapes)).as("seed " + seed).isTrue();
      double sum = 0;
      for (Geometry s : shapes) {
        sum += s.getArea();
      }
      assertThat(sum).isCloseTo(area, within(1e-6 * area));
      double worst = 0;
      double smallest = 1e9;
      for (Geometry s : shapes) {
        worst = Math.max(worst, Measured.narrowShare(s, given.field().shapeM(), 24));
        smallest = Math.min(smallest, s.getArea() / 1e4);
      }
      double k = Measured.keptShare(map, zones.zones(), given);
      kept.add(k);
      System.out.printf(
          "%d kind %d cell %.0f ha %.1f classes %d zones %d smallest %.2f narrow %.4f kept %.3f changed %.3f R2 %.3f ms %.0f%n",
          seed,
          seed % 8,
          given.cellM(),
          area / 1e4,
          given.scheme().labels().size(),
          shapes.length,
          smallest,
          worst,
          k,
          zones.changedHaByField().get(given.field().name()) / (area / 1e4),
          zones.varianceExplainedByField().get(given.field().name()),
          (t1 - t0) / 1e6);
    }
    Collections.sort(kept);
    System.out.println("median kept " + kept.get(kept.size() / 2));
  }
}
