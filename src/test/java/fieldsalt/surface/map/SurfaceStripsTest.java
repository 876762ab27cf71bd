package fieldsalt.surface.map;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.ChangedSurface;
import fieldsalt.surface.RanchCase;
import fieldsalt.surface.Surface;
import fieldsalt.surface.SurfaceCases;
import fieldsalt.surface.SurfaceFitter;
import fieldsalt.surface.choice.SurfaceSettings;
import fieldsalt.surface.choice.Tried;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.fit.SurfaceMethod;
import fieldsalt.surface.kernel.Kriging;
import fieldsalt.surface.site.FieldCells;
import fieldsalt.surface.site.Grid;
import fieldsalt.surface.site.Observations;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** A map given out in strips is the map that is held. */
class SurfaceStripsTest {
  private static final Map<String, Double> LIMITS = Map.of("field 0", 4.0, "field 1", 2.0);
  private static final RanchCase RANCH =
      RanchCase.simulated(
          new RanchCase.Plan(
              2, 12, 8, 900, new CovarianceModel(new Exponential(250), 0.4, 0.1), 0.2, 2, 2),
          3);

  private static MapMaker maker() {
    Observations data = Observations.of(RANCH.readings(), List.of());
    CovarianceModel model = new CovarianceModel(new Exponential(250), 0.4, 0.1);
    Kriging kriging = new Kriging(Solved.of(data, model));
    return new MapMaker(
        SurfaceCases.everywhere(
            new Tried(SurfaceMethod.KRIGING, data, List.of(kriging), List.of())),
        Scale.LOG);
  }

  private static void assertClose(float[] strip, float[] whole, int from) {
    float[] part = Arrays.copyOfRange(whole, from, from + strip.length);
    for (int i = 0; i < strip.length; i++) {
      if (Float.isNaN(part[i])) {
        assertThat(strip[i]).isNaN();
      } else {
        assertThat(strip[i]).isCloseTo(part[i], within(2e-6f * (1 + Math.abs(part[i]))));
      }
    }
  }

  @Test
  void stripsTogetherAreTheWholeMap() throws IOException {
    List<FieldBoundary> fields = RANCH.fields();
    Grid grid = FieldCells.gridOver(fields, 3);
    MapMaker maker = maker();
    SurfaceMap whole = maker.map(grid, fields, LIMITS, share -> {});
    List<Double> told = new ArrayList<>();
    MadeStrips strips = new MadeStrips(maker, grid, fields, LIMITS, told::add);
    int[] row = new int[1];
    List<Integer> heights = new ArrayList<>();
    strips.forEach(
        strip -> {
          int from = row[0] * grid.columns();
          assertThat(strip.grid().northM()).isEqualTo(grid.northM() - row[0] * grid.cellM());
          assertThat(strip.fields()).isEqualTo(whole.fields());
          assertThat(strip.fieldOf())
              .isEqualTo(Arrays.copyOfRange(whole.fieldOf(), from, from + strip.fieldOf().length));
          assertClose(strip.median(), whole.median(), from);
          assertClose(strip.error(), whole.error(), from);
          assertClose(strip.chance(), whole.chance(), from);
          heights.add(strip.grid().rows());
          row[0] += strip.grid().rows();
        });
    assertThat(row[0]).isEqualTo(grid.rows());
    assertThat(heights).hasSizeGreaterThan(1);
    assertThat(told).isSorted().hasSameSizeAs(heights).endsWith(1.0);
    assertThat(strips.fields()).containsExactly("field 0", "field 1");
    assertThat(strips.mayExtrapolate()).isFalse();
  }

  @Test
  void nothingIsMadeAfterATakerFailed() {
    List<FieldBoundary> fields = RANCH.fields();
    Grid grid = FieldCells.gridOver(fields, 3);
    int[] taken = new int[1];
    assertThatThrownBy(
            () ->
                new MadeStrips(maker(), grid, fields, LIMITS, share -> {})
                    .forEach(
                        strip -> {
                          taken[0]++;
                          throw new IOException("disk full");
                        }))
        .isInstanceOf(IOException.class)
        .hasMessage("disk full");
    assertThat(taken[0]).isEqualTo(1);
  }

  /** 2,100 x 2,100 cells: the map has cells of 2 m, its raster those of 1 m that were asked for. */
  @Test
  void aLargeMapIsHeldWithLargerCellsThanItsRaster() throws IOException {
    FieldBoundary field = SurfaceCases.rectangle("a", 0, 0, 2100, 2100);
    SiteReadings readings =
        SurfaceCases.readings(
            Scale.LOG,
            List.of(
                SurfaceCases.site("1", "a", 300, 400),
                SurfaceCases.site("2", "a", 900, 1400),
                SurfaceCases.site("3", "a", 1900, 700)),
            List.of(
                SurfaceCases.paste(0, 1.1, 0.01),
                SurfaceCases.paste(1, 1.4, 0.01),
                SurfaceCases.paste(2, 1.2, 0.01)));
    SurfaceSettings settings =
        ChangedSurface.withMethod(SurfaceSettings.defaults(), SurfaceMethod.MEAN).withCellM(1);
    Surface surface = SurfaceFitter.fit(readings, List.of(field), settings);
    List<SurfaceMap> maps = surface.maps(Map.of("a", 4.0));
    assertThat(maps).hasSize(1);
    assertThat(maps.get(0).grid()).isEqualTo(new Grid(0, 2100, 2, 1050, 1050));
    List<SurfaceStrips> rasters = surface.rasters(maps, Map.of("a", 4.0), share -> {});
    assertThat(rasters).hasSize(1);
    assertThat(rasters.get(0).grid()).isEqualTo(new Grid(0, 2100, 1, 2100, 2100));
    long[] cells = new long[1];
    float mean = maps.get(0).median()[0];
    rasters
        .get(0)
        .forEach(
            strip -> {
              for (float median : strip.median()) {
                cells[0] += median == mean ? 1 : 0;
              }
            });
    assertThat(cells[0]).isEqualTo(2100L * 2100);
  }

  @Test
  void mapsThatAreHeldAreJoined() throws IOException {
    Surface surface =
        SurfaceFitter.fit(RANCH.readings(), RANCH.fields(), SurfaceSettings.defaults());
    List<SurfaceMap> maps = surface.maps(LIMITS);
    List<SurfaceStrips> rasters = surface.rasters(maps, LIMITS, share -> {});
    assertThat(rasters).hasSize(1);
    Grid grid = rasters.get(0).grid();
    SurfaceMap whole = SurfaceMap.empty(grid, List.of());
    int[] at = new int[1];
    rasters
        .get(0)
        .forEach(
            strip -> {
              assertThat(strip.fields()).containsExactly("field 0", "field 1");
              System.arraycopy(strip.median(), 0, whole.median(), at[0], strip.grid().cells());
              System.arraycopy(strip.fieldOf(), 0, whole.fieldOf(), at[0], strip.grid().cells());
              at[0] += strip.grid().cells();
            });
    assertThat(at[0]).isEqualTo(grid.cells());
    int cells = 0;
    for (SurfaceMap map : maps) {
      for (int c = 0; c < map.grid().cells(); c++) {
        if (map.fieldOf()[c] >= 0) {
          double x = map.grid().centreX(c % map.grid().columns());
          double y = map.grid().centreY(c / map.grid().columns());
          int column = (int) Math.floor((x - grid.westM()) / grid.cellM());
          int row = (int) Math.floor((grid.northM() - y) / grid.cellM());
          int there = row * grid.columns() + column;
          assertThat(whole.median()[there]).isEqualTo(map.median()[c]);
          assertThat(whole.fieldOf()[there]).isEqualTo((short) maps.indexOf(map));
          cells++;
        }
      }
    }
    long filled =
        java.util.stream.IntStream.range(0, grid.cells())
            .filter(c -> whole.fieldOf()[c] >= 0)
            .count();
    assertThat(cells).as("every cell of a field, and no other").isEqualTo((int) filled);
    assertThat(rasters.get(0).mayExtrapolate()).isFalse();
  }
}
