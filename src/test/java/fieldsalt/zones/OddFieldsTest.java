package fieldsalt.zones;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.read.field.FieldBoundary;
import fieldsalt.zones.field.Zone;
import fieldsalt.zones.field.ZoneMap;
import fieldsalt.zones.field.ZoneSettings;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.coverage.CoverageValidator;
import org.locationtech.jts.geom.Geometry;

/** Fields with little or no ground, or little or no data. */
class OddFieldsTest {
  private static final FieldBoundary FIELD =
      Given.field("north", Given.wkt("POLYGON ((0 0, 400 0, 400 300, 0 300, 0 0))"));

  private static void assertTiles(ZoneMap zones, FieldBoundary field) {
    Geometry[] shapes = zones.zones().stream().map(Zone::shapeM).toArray(Geometry[]::new);
    assertThat(CoverageValidator.isValid(shapes)).isTrue();
    double sum = zones.zones().stream().mapToDouble(z -> z.shapeM().getArea()).sum();
    assertThat(sum).isCloseTo(field.shapeM().getArea(), within(1e-6 * sum));
  }

  @Test
  void aMapNoBetterThanTheMeanGivesOneZoneOfTheMeansClass() {
    ZoneMap zones =
        Given.zones(
            FIELD,
            5,
            (x, y) -> x < 200 ? 1 : 9,
            Given.scheme(2.5, 4.0),
            ChangedZones.withFollowFieldMean(ZoneSettings.defaults(), true));
    assertThat(zones.zones()).hasSize(1);
    assertThat(zones.zones().get(0).klass()).isEqualTo(1);
    assertTiles(zones, FIELD);
  }

  @Test
  void cellsWithoutValueTakeThatOfTheNearestCell() {
    ZoneMap zones =
        Given.zones(
            FIELD,
            5,
            (x, y) -> x > 150 && x < 250 && y > 100 ? Double.NaN : x < 200 ? 1 : 9,
            Given.scheme(4.0),
            ZoneSettings.defaults());
    assertThat(zones.zones()).extracting(Zone::klass).containsExactly(0, 1);
    assertThat(zones.zones().get(0).areaHa()).isCloseTo(6, within(0.15));
    assertTiles(zones, FIELD);
  }

  @Test
  void aFieldWithoutAnyValueIsOneZoneAndSaysSo() {
    ZoneMap zones =
        Given.zones(FIELD, 5, (x, y) -> Double.NaN, Given.scheme(4.0), ZoneSettings.defaults());
    assertThat(zones.zones()).hasSize(1);
    assertThat(zones.findings()).extracting(f -> f.code().id()).contains("zones-no-data");
    assertTiles(zones, FIELD);
  }

  @Test
  void aFieldSmallerThanTheLeastZoneOrThanACellIsOneZone() {
    for (double side : new double[] {3, 20, 60}) {
      FieldBoundary tiny =
          Given.field(
              "tiny",
              Given.wkt("POLYGON ((1 1, %1$f 1, %1$f %1$f, 1 %1$f, 1 1))".formatted(1 + side)));
      ZoneMap zones =
          Given.zones(
              tiny, 5, (x, y) -> x < side / 2 ? 1 : 9, Given.scheme(4.0), ZoneSettings.defaults());
      assertThat(zones.zones()).hasSize(1);
      assertTiles(zones, tiny);
    }
  }

  /** The two halves of a bow tie overlap nothing, but no valid polygon has such a ring. */
  @Test
  void whatDoesNotFitTogetherBecomesOneZoneAndSaysSo() {
    FieldBoundary bow =
        Given.field("bow", Given.wkt("POLYGON ((0 0, 400 300, 400 0, 0 200, 0 0))"));
    ZoneMap zones =
        Given.zones(bow, 5, (x, y) -> x < 200 ? 1 : 9, Given.scheme(4.0), ZoneSettings.defaults());
    assertThat(zones.zones()).hasSize(1);
    assertThat(zones.findings()).extracting(f -> f.code().id()).contains("zones-fallback");
  }
}
