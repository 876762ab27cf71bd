package fieldsalt.handover.raster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fieldsalt.geo.PlaceM;
import fieldsalt.geo.RasterFile;
import fieldsalt.handover.SmallRanch;
import fieldsalt.handover.folder.WrittenFile;
import fieldsalt.handover.input.SurfaceLabels;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.map.SurfaceStrips;
import fieldsalt.surface.site.Grid;
import java.io.IOException;
import java.nio.file.Path;
import java.util.BitSet;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A surface that comes in strips, written as it comes. */
class SurfaceRastersTest {
  private static final Grid GRID = new Grid(SmallRanch.X, SmallRanch.Y + 60, 2, 40, 30);
  private static final PlaceM BEYOND = place(7, 25);
  private static final PlaceM WITHIN = place(8, 25);

  @TempDir Path dir;

  private static PlaceM place(int column, int row) {
    return new PlaceM(GRID.centreX(column), GRID.centreY(row));
  }

  /**
   * Thirty rows in strips of ten whose median is their row; the last strip may have a cell beyond
   * the samples.
   */
  private record Rows(boolean mayExtrapolate, boolean extrapolates, int failsAt)
      implements SurfaceStrips {
    @Override
    public Grid grid() {
      return GRID;
    }

    @Override
    public List<String> fields() {
      return List.of("North");
    }

    @Override
    public void forEach(Taker taker) throws IOException {
      for (int row = 0; row < GRID.rows(); row += 10) {
        if (row == failsAt) {
          throw new IOException("disk full");
        }
        taker.take(strip(row, extrapolates && row == 20));
      }
    }

    private static SurfaceMap strip(int row, boolean beyond) {
      Grid grid = new Grid(GRID.westM(), GRID.northM() - row * 2.0, 2, GRID.columns(), 10);
      int n = grid.cells();
      float[] median = new float[n];
      IntStream.range(0, n).forEach(i -> median[i] = row + i / GRID.columns() + 1);
      BitSet marked = new BitSet();
      marked.set(5 * GRID.columns() + 7, beyond);
      return new SurfaceMap(
          grid, List.of("North"), new short[n], median, new float[n], new float[n], marked);
    }
  }

  private List<String> written(SurfaceStrips map) throws IOException {
    return new SurfaceRasters(SmallRanch.UTM, SurfaceLabels.ece("4 dS/m"))
        .write(dir, List.of(map)).stream().map(WrittenFile::name).toList();
  }

  private double value(String file, PlaceM at) {
    return RasterFile.open(dir.resolve(file), SmallRanch.UTM).at(at);
  }

  @Test
  void stripsFollowOneAnotherInEveryFile() throws IOException {
    assertThat(written(new Rows(false, false, -1)))
        .containsExactly("ece.tif", "ece-error.tif", "p-above.tif");
    for (int row : new int[] {0, 9, 10, 19, 20, 29}) {
      assertThat(value("ece.tif", place(3, row))).isEqualTo(row + 1.0);
    }
    assertThat(value("p-above.tif", place(3, 29))).isZero();
    assertThat(dir.resolve("extrapolated.tif")).doesNotExist();
  }

  @Test
  void cellsBeyondTheSamplesAreMarkedAlsoInALaterStrip() throws IOException {
    assertThat(written(new Rows(true, true, -1)))
        .containsExactly("ece.tif", "ece-error.tif", "p-above.tif", "extrapolated.tif");
    assertThat(value("extrapolated.tif", BEYOND)).isEqualTo(1);
    assertThat(value("extrapolated.tif", WITHIN)).isZero();
  }

  @Test
  void noFileOfMarksIsLeftWhereNoCellIsBeyond() throws IOException {
    assertThat(written(new Rows(true, false, -1)))
        .containsExactly("ece.tif", "ece-error.tif", "p-above.tif");
    assertThat(dir.resolve("extrapolated.tif")).doesNotExist();
  }

  @Test
  void whatStopsTheStripsIsTheErrorThatIsSeen() {
    assertThatThrownBy(() -> written(new Rows(true, false, 10)))
        .isInstanceOf(IOException.class)
        .hasMessage("disk full");
  }
}
