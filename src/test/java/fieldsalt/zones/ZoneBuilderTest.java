package fieldsalt.zones;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.zones.field.Zone;
import fieldsalt.zones.field.ZoneMap;
import fieldsalt.zones.field.ZoneSettings;
import java.util.List;
import java.util.Map;
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

  @Test
  void boundariesThatNoMergeMadeFollowTheClassLine() {
    RandomCase rings =
        new RandomCase(
            Given.field("north", SQUARE),
            5,
            (x, y) -> 1 + Math.hypot(x - 240, y - 260) / 50,
            Given.scheme(2.0, 3.0, 4.0));
    SurfaceMap map = Given.map(rings.field(), rings.cellM(), rings.ece());
    ZoneMap zones =
        RanchZones.build(
            List.of(map),
            List.of(rings.field()),
            Map.of("north", rings.scheme()),
            ZoneSettings.defaults());
    assertThat(zones.changedHaByField().get("north")).isZero();
    assertThat(new ClassLines(map, rings).distances(zones.zones(), true))
        .hasSizeGreaterThan(100)
        .allMatch(cells -> cells < 0.1);
  }

  @Test
  void aPartBelowTheLeastAreaThatJoinsAnotherClassCountsAsChanged() {
    FieldBoundary field =
        Given.field(
            "north",
            Given.wkt(
                "MULTIPOLYGON (((0 0, 300 0, 300 200, 0 200, 0 0)),"
                    + " ((400 0, 450 0, 450 50, 400 50, 400 0)))"));
    ZoneMap zones =
        Given.zones(
            field, 5, (x, y) -> x < 350 ? 1 : 9, Given.scheme(4.0), ZoneSettings.defaults());
    assertThat(zones.zones()).hasSize(1);
    assertThat(zones.changedHaByField().get("north")).isCloseTo(0.25, within(0.01));
  }

  @Test
  void aTongueNarrowerThanTheMachineGoesWhateverItsWidthInCells() {
    for (double width = 20; width < 23.9; width += 0.35) {
      double half = width / 2;
      ZoneMap zones =
          Given.zones(
              Given.field("north", SQUARE),
              12,
              (x, y) -> 4 * Math.exp((half - Math.abs(y - x / 3 - 150) * 0.948683) / 20),
              Given.scheme(4.0),
              ZoneSettings.defaults());
      for (Zone zone : zones.zones()) {
        assertThat(Measured.narrowShare(zone.shapeM(), SQUARE, 24)).isLessThan(0.01);
      }
    }
  }
}
