package fieldsalt.zones.degree;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.zones.Given;
import fieldsalt.zones.Measured;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.coverage.CoverageValidator;
import org.locationtech.jts.geom.Geometry;

class LonLatZonesTest {
  private static void assertTiles(Measured.Rounded rounded, double share) {
    assertThat(CoverageValidator.isValid(rounded.zones())).isTrue();
    assertThat(Measured.decimals(rounded.zones())).isLessThanOrEqualTo(7);
    assertThat(rounded.field().symDifference(rounded.union()).getArea())
        .isLessThan(share * rounded.field().getArea());
  }

  /**
   * An edge that climbs by nearly one step a step: a rounded place beside the line's end lies up to
   * half a step off the line for many metres.
   */
  @Test
  void aLongStripAslantKeepsItsArea() {
    Geometry strip =
        Given.wkt(
            "POLYGON ((500000 4400000, 500220.33 4400285.2, 500224.33 4400282.1, 500004 4399996.9,"
                + " 500000 4400000))");
    for (int k = 0; k < 20; k++) {
      double x = 500_000 + 220.33 * (0.3 + 0.02 * k);
      double y = 4_400_000 + 285.2 * (0.3 + 0.02 * k);
      Geometry cut =
          Given.wkt("LINESTRING (%f %f, %f %f)".formatted(x - 4, y + 3.1, x + 8, y - 6.2));
      assertTiles(Measured.rounded(strip, halves(strip, cut)), 1e-4);
    }
  }

  /** The line between two zones meets the boundary at so flat an angle that both round together. */
  @Test
  void aLineThatLeavesTheBoundaryAtAFlatAngleIsCutTogetherWithIt() {
    Geometry field =
        Given.wkt(
            "POLYGON ((500000 4400000, 500300 4400013, 500290 4400300, 500010 4400290, 500000"
                + " 4400000))");
    Geometry low =
        Given.wkt(
            "POLYGON ((500000 4400000, 500300 4400013, 500200 4400008.67, 500100 4400150, 500000"
                + " 4400000))");
    Geometry rest = field.difference(low);
    assertTiles(Measured.rounded(field, List.of(low, rest)), 1e-5);
  }

  private static List<Geometry> halves(Geometry shape, Geometry cut) {
    Geometry lines = shape.getBoundary().union(cut);
    var polygonizer = new org.locationtech.jts.operation.polygonize.Polygonizer();
    polygonizer.add(lines);
    List<Geometry> halves = new java.util.ArrayList<>();
    for (Object half : polygonizer.getPolygons()) {
      halves.add((Geometry) half);
    }
    assertThat(halves).hasSize(2);
    return halves;
  }
}
