package fieldsalt.surface.map;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fieldsalt.finding.InputProblem;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.RanchCase;
import fieldsalt.surface.Surface;
import fieldsalt.surface.SurfaceCases;
import fieldsalt.surface.SurfaceFitter;
import fieldsalt.surface.choice.SurfaceSettings;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Exponential;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Which fields share a grid, and how a map tells how far it is. */
class MapGridsTest {
  private static final List<FieldBoundary> FAR_APART =
      List.of(
          SurfaceCases.rectangle("a", 0, 0, 1000, 500),
          SurfaceCases.rectangle("b", 20_000, 9_000, 21_000, 9_500));

  @Test
  void aBoxOfMoreThanFiftyMillionCellsIsSplitByField() {
    assertThat(MapGrids.groups(FAR_APART, 2)).containsExactly(FAR_APART);
    assertThat(MapGrids.groups(FAR_APART, 1))
        .containsExactly(List.of(FAR_APART.get(0)), List.of(FAR_APART.get(1)));
  }

  @Test
  void moreCellsThanAComputerHoldsAreRefusedWithTheSmallestThatGo() {
    assertThatThrownBy(() -> MapGrids.heldStep(FAR_APART, 0.05))
        .isInstanceOf(InputProblem.class)
        .hasMessageContaining("cell-m")
        .hasMessageContaining("0.05 m: 400 million cells over 2 fields")
        .hasMessageContaining("at most 100 million cells")
        .hasMessageContaining("cell-m: 0.1 or larger");
    assertThat(MapGrids.groups(FAR_APART, 0.1)).hasSize(2);
  }

  /** 4,194,304 cells are held; of more every second one, or third, and so on, in each direction. */
  @Test
  void mapsThatAreHeldHaveNoMoreThanFourMillionCells() {
    assertThat(step(2048, 1)).isEqualTo(1);
    assertThat(step(2049, 1)).isEqualTo(2);
    assertThat(step(2049, 0.5)).isEqualTo(3);
    assertThat(MapGrids.heldStep(FAR_APART, 0.5)).isEqualTo(1);
    assertThat(MapGrids.heldStep(FAR_APART, 0.25)).isEqualTo(2);
    assertThat(MapGrids.stepOf(FAR_APART.get(0), 0.25)).isEqualTo(2);
  }

  private static int step(double sideM, double cellM) {
    return MapGrids.stepOf(SurfaceCases.rectangle("a", 0, 0, sideM, sideM), cellM);
  }

  @Test
  void progressRisesToTheEnd() {
    RanchCase ranch =
        RanchCase.simulated(
            new RanchCase.Plan(
                2, 10, 8, 1000, new CovarianceModel(new Exponential(250), 0.4, 0.1), 0.2, 2, 2),
            3);
    Surface surface =
        SurfaceFitter.fit(ranch.readings(), ranch.fields(), SurfaceSettings.defaults());
    List<Double> told = new ArrayList<>();
    surface.map("field 0", 4, told::add);
    assertThat(told).hasSizeGreaterThan(5).isSorted();
    assertThat(told.get(told.size() - 1)).isEqualTo(1.0);
  }
}
