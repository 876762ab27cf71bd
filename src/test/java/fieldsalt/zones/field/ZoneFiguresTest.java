package fieldsalt.zones.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.site.Grid;
import fieldsalt.zones.ChangedZones;
import fieldsalt.zones.Given;
import fieldsalt.zones.RanchZones;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Figures of zones on eight cells of 10 m, worked out by hand: ECe 2, 3.5, 5 and 8 dS/m from west
 * to east in both rows, limit 4 dS/m, standard error of ln ECe 0.3.
 */
class ZoneFiguresTest {
  private static final FieldBoundary FIELD =
      Given.field("north", Given.wkt("POLYGON ((0 0, 40 0, 40 20, 0 20, 0 0))"));
  private static final ZoneSettings ANY_SIZE =
      ChangedZones.withMinWidthM(ChangedZones.withMinAreaHa(ZoneSettings.defaults(), 0), 0);

  private static SurfaceMap map() {
    return new SurfaceMap(
        new Grid(0, 20, 10, 4, 2),
        List.of("north"),
        new short[8],
        new float[] {2, 3.5f, 5, 8, 2, 3.5f, 5, 8},
        new float[] {0.3f, 0.3f, 0.3f, 0.3f, 0.3f, 0.3f, 0.3f, 0.3f},
        new float[] {0.05f, 0.40f, 0.70f, 0.95f, 0.10f, 0.30f, 0.60f, 0.90f},
        new BitSet());
  }

  private static ZoneMap zones(Map<String, SecondCriterion> second) {
    return RanchZones.build(
        List.of(map()), List.of(FIELD), Map.of("north", Given.scheme(4.0)), ANY_SIZE, second);
  }

  @Test
  void figuresOfTwoZones() {
    ZoneMap zones = zones(Map.of());
    assertThat(zones.zones()).extracting(Zone::name).containsExactly("north-1", "north-2");
    // the line runs at 15 m + 10 m x (ln 4 - ln 3.5) / (ln 5 - ln 3.5) = 18.7438 m
    double line = 18.743_784;
    assertThat(zones.zones().get(0).areaHa()).isCloseTo(line * 20 / 1e4, within(1e-8));
    assertThat(zones.zones().get(1).areaHa()).isCloseTo((40 - line) * 20 / 1e4, within(1e-8));
    ZoneFigures west = zones.figuresByZone().get("north-1");
    ZoneFigures east = zones.figuresByZone().get("north-2");
    assertThat(west.cells()).isEqualTo(4);
    assertThat(east.cells()).isEqualTo(4);
    // (0.05 + 0.40 + 0.10 + 0.30) / 4 and (0.70 + 0.95 + 0.60 + 0.90) / 4
    assertThat(west.chanceAbove()).isCloseTo(0.2125, within(1e-7));
    assertThat(east.chanceAbove()).isCloseTo(0.7875, within(1e-7));
    assertThat(west.median()).isCloseTo(2.75, within(1e-6));
    assertThat(east.median()).isCloseTo(6.5, within(1e-6));
    assertThat(west.secondChance()).isEmpty();
  }

  /**
   * A chance of 0.2 to 0.8 is a value within 0.8416 x 0.3 = 0.2525 of ln 4: ln 4 - ln 3.5 = 0.134
   * and ln 5 - ln 4 = 0.223 are, ln 4 - ln 2 = 0.693 is not. Half of the cells.
   */
  @Test
  void uncertainGround() {
    ZoneMap zones = zones(Map.of());
    assertThat(zones.uncertainHaByField().get("north")).isCloseTo(0.04, within(1e-12));
    for (Zone zone : zones.zones()) {
      assertThat(zones.figuresByZone().get(zone.name()).uncertainHa())
          .isCloseTo(zone.areaHa() / 2, within(1e-12));
    }
  }

  /**
   * ln: 0.693147, 1.252763, 1.609438, 2.079442, in each row. Zone means 0.972955 and 1.844440,
   * field mean 1.408697; squares within 0.267037, in all 1.026522; 1 - 0.267037 / 1.026522.
   */
  @Test
  void varianceOnTheMap() {
    assertThat(zones(Map.of()).varianceExplainedByField().get("north"))
        .isCloseTo(0.739_863, within(2e-6));
  }

  /**
   * The northern row is at 20 of a second property, the southern at 5, limit 10: the line runs a
   * third of the way from the southern centres, at 5 m + 10 m / 3.
   */
  @Test
  void aSecondCriterionMakesFourZones() {
    SecondCriterion second =
        new SecondCriterion(
            "sodicity",
            new float[] {20, 20, 20, 20, 5, 5, 5, 5},
            new float[] {0.9f, 0.85f, 0.95f, 0.7f, 0.1f, 0.05f, 0.15f, 0.3f},
            List.of(10.0),
            List.of("not sodic", "sodic"));
    ZoneMap zones = zones(Map.of("north", second));
    assertThat(zones.zones())
        .extracting(Zone::label)
        .containsExactly(
            "class 0, not sodic", "class 0, sodic", "class 1, not sodic", "class 1, sodic");
    double south = 5 + 10 / 3.0;
    double line = 18.743_784;
    double[] ha = {
      line * south / 1e4,
      line * (20 - south) / 1e4,
      (40 - line) * south / 1e4,
      (40 - line) * (20 - south) / 1e4
    };
    // where the two lines cross, a corner may be cut by one lattice step (10 m / 12)
    double corner = 2 * Math.pow(10 / 12.0, 2) / 1e4;
    for (int z = 0; z < 4; z++) {
      Zone zone = zones.zones().get(z);
      assertThat(zone.areaHa()).as(zone.label()).isCloseTo(ha[z], within(corner));
      assertThat(second.classOf(zone, Given.scheme(4.0))).isEqualTo(z % 2);
    }
    double[] chance = {0.075, 0.875, 0.225, 0.825};
    for (int z = 0; z < 4; z++) {
      ZoneFigures figures = zones.figuresByZone().get(zones.zones().get(z).name());
      assertThat(figures.cells()).isEqualTo(2);
      assertThat(figures.secondChance().orElseThrow()).isCloseTo(chance[z], within(1e-7));
    }
    // uncertain by the second limit too: the eastern cells with 0.7 and 0.3
    assertThat(zones.uncertainHaByField().get("north")).isCloseTo(0.06, within(1e-12));
  }

  /** Strips of the upper class 10 m wide, of which a spreader of 24 m can make nothing. */
  private static ZoneMap strips(int count) {
    FieldBoundary field =
        Given.field("north", Given.wkt("POLYGON ((0 0, 500 0, 500 500, 0 500, 0 0))"));
    return Given.zones(
        field,
        5,
        (x, y) -> x % 100 > 45 && x % 100 < 55 && x < 100 * count ? 8 : 2,
        Given.scheme(4.0),
        ZoneSettings.defaults());
  }

  @Test
  void mergedGroundIsToldWhenItMatters() {
    ZoneMap some = strips(2); // 2 x 10 m x 500 m = 1 ha of 25 ha: 4 %
    assertThat(some.zones()).hasSize(1);
    assertThat(some.changedHaByField().get("north")).isCloseTo(1.0, within(0.05));
    assertThat(some.findings()).isEmpty();
    ZoneMap more = strips(3); // 6 %
    assertThat(more.changedHaByField().get("north")).isCloseTo(1.5, within(0.075));
    assertThat(more.findings()).hasSize(1);
    assertThat(more.findings().get(0).code().id()).isEqualTo("zones-merged");
    assertThat(more.findings().get(0).where()).isEqualTo("field north");
    assertThat(more.findings().get(0).found())
        .isEqualTo("pieces smaller than 0.4 ha or narrower than 24 m make up 1.5 ha, 6 % of it");
    assertThat(more.findings().get(0).done()).contains("min-area-ha").contains("min-width-m");
  }
}
