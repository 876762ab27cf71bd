package fieldsalt.zones.sodicity;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.quantity.Texture;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.site.Grid;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * Cells of 10 m: the map from (0, 0) to (40, 20), the other property from (10, -10) to (30, 20).
 */
class OverlayTest {
  private static final float NO = Float.NaN;

  private static FieldBoundary field(String name, double west, double east) {
    return new FieldBoundary(
        name,
        new GeometryFactory().toGeometry(new Envelope(west, east, 0, 20)),
        Optional.empty(),
        Texture.UNKNOWN,
        OptionalDouble.empty());
  }

  @Test
  void cellsAreTakenFromTheSamePlaceAndFieldByField() {
    SurfaceMap map =
        new SurfaceMap(
            new Grid(0, 20, 10, 4, 2),
            List.of("a", "b"),
            new short[] {0, 0, 1, 1, 0, 0, 1, -1},
            new float[8],
            new float[8],
            new float[8],
            new BitSet());
    SurfaceMap other =
        new SurfaceMap(
            new Grid(10, 20, 10, 2, 3),
            List.of("b", "a"),
            new short[] {1, 0, 1, 0, 1, 0},
            new float[] {1, 2, 3, 4, 5, 6},
            new float[6],
            new float[] {.1f, .2f, .3f, .4f, .5f, .6f},
            new BitSet());
    Overlay overlay = new Overlay(map);
    overlay.take(field("a", 0, 20), other, v -> 10 * v);
    assertThat(overlay.values()).containsExactly(NO, 10, NO, NO, NO, 30, NO, NO);
    overlay.take(field("b", 20, 40), other, v -> v);
    assertThat(overlay.values()).containsExactly(NO, 10, 2, NO, NO, 30, 4, NO);
    assertThat(overlay.chance()).containsExactly(NO, .1f, .2f, NO, NO, .3f, .4f, NO);
  }
}
