package fieldsalt.zones;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.read.FieldBoundary;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.coverage.CoverageValidator;
import org.locationtech.jts.geom.Geometry;

class ZoneBuilderTest {
  private static final Geometry SQUARE = Given.wkt("POLYGON ((0 0, 500 0, 500 500, 0 500, 0 0))");

  private static void assertTiles(ZoneMap map, FieldBoundary field) {
    Geometry[] shapes =
        map.zonesOf(field.name()).stream().map(Zone::shapeM).toArray(Geometry[]::new);
    assertThat(shapes).isNotEmpty();
    assertThat(CoverageValidator.isValid(shapes)).isTrue();
    double sum = 0;
    for (Geometry shape : shapes) {
      assertThat(shape.isValid()).isTrue();
      sum += shape.getArea();
    }
    double area = field.shapeM().getArea();
    assertThat(sum).isCloseTo(area, within(1e-6 * area));
  }

  @Test
  void aConeGivesRings() {
    FieldBoundary field = Given.field("north", SQUARE);
    ZoneMap map =
        Given.zones(
            field,
            5,
            (x, y) -> 1 + Math.hypot(x - 250, y - 250) / 50,
            Given.scheme(2.0, 3.0, 4.0),
            ZoneSettings.defaults());
    assertTiles(map, field);
    assertThat(map.findings()).isEmpty();
    List<Zone> zones = map.zones();
    assertThat(zones).extracting(Zone::klass).containsExactly(0, 1, 2, 3);
    assertThat(zones)
        .extracting(Zone::name)
        .containsExactly("north-1", "north-2", "north-3", "north-4");
    for (int k = 0; k < 3; k++) {
      double circle = 2 * Math.PI * 50 * (k + 1);
      double inner = k == 0 ? 0 : 2 * Math.PI * 50 * k;
      assertThat(zones.get(k).shapeM().getLength())
          .isCloseTo(circle + inner, within(0.03 * circle));
    }
  }
}
