package fieldsalt.zones;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.site.Grid;
import fieldsalt.zones.field.SecondCriterion;
import fieldsalt.zones.field.ZoneMap;
import fieldsalt.zones.field.ZoneSettings;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * Small pieces where zones are divided by sodium too: gypsum goes to sodic ground, so a small piece
 * stays with ground that is treated alike, even where other ground is closer in ECe.
 */
class SmallPiecesTest {
  private static final FieldBoundary SQUARE =
      Given.field("f", Given.wkt("POLYGON ((0 0, 400 0, 400 400, 0 400, 0 0))"));

  private static final double SODIC = 13;

  private static ZoneMap zones(
      FieldBoundary field, DoubleBinaryOperator ece, DoubleBinaryOperator sar) {
    SurfaceMap map = Given.map(field, 5, ece);
    Grid grid = map.grid();
    float[] values = new float[grid.cells()];
    for (int i = 0; i < values.length; i++) {
      values[i] =
          (float)
              sar.applyAsDouble(grid.centreX(i % grid.columns()), grid.centreY(i / grid.columns()));
    }
    SecondCriterion sodicity =
        new SecondCriterion("sodicity", values, List.of(SODIC), List.of("not sodic", "sodic"));
    return RanchZones.build(
        List.of(map),
        List.of(field),
        Map.of(field.name(), Given.scheme(4.0)),
        ZoneSettings.defaults(),
        Map.of(field.name(), sodicity));
  }

  private static String labelAt(ZoneMap zones, double x, double y) {
    Geometry at = new GeometryFactory().createPoint(new Coordinate(x, y));
    return zones.zones().stream()
        .filter(z -> z.shapeM().covers(at))
        .findFirst()
        .orElseThrow()
        .label();
  }

  private static boolean isBlock(double x, double y) {
    return x > 180 && x < 230 && y > 170 && y < 230;
  }

  /** 0.3 ha of salty sodic ground between sodic ground in the west and salty ground in the east. */
  @Test
  void aSmallSodicPieceJoinsSodicGround() {
    ZoneMap zones =
        zones(
            SQUARE,
            (x, y) -> isBlock(x, y) || x > 205 ? 8 : 3,
            (x, y) -> isBlock(x, y) ? 13.2 : x < 205 ? 28 : 12.8);
    assertThat(labelAt(zones, 200, 200)).isEqualTo("class 0, sodic");
    assertThat(labelAt(zones, 220, 200)).isEqualTo("class 0, sodic");
    assertThat(labelAt(zones, 300, 200)).isEqualTo("class 1, not sodic");
  }

  /** The other way round: ground that needs no gypsum is not given any. */
  @Test
  void aSmallPieceThatIsNotSodicJoinsGroundThatIsNot() {
    ZoneMap zones =
        zones(
            SQUARE,
            (x, y) -> isBlock(x, y) || x > 205 ? 8 : 3,
            (x, y) -> isBlock(x, y) ? 12.8 : x < 205 ? 5 : 13.2);
    assertThat(labelAt(zones, 220, 200)).isEqualTo("class 0, not sodic");
  }

  /** A part of the field by itself, too small to be a zone. */
  @Test
  void aSmallPartOfAFieldJoinsGroundThatIsTreatedAlike() {
    FieldBoundary field =
        Given.field(
            "f",
            Given.wkt(
                "MULTIPOLYGON (((0 0, 400 0, 400 400, 0 400, 0 0)),"
                    + " ((500 0, 550 0, 550 50, 500 50, 500 0)))"));
    ZoneMap zones =
        zones(field, (x, y) -> x > 205 ? 8 : 3, (x, y) -> x > 450 || x < 205 ? 20 : 12.5);
    assertThat(labelAt(zones, 525, 25)).isEqualTo("class 0, sodic");
  }
}
