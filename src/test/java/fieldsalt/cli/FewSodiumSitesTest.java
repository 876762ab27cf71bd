package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Zones divided by sodium that only six of twelve sites know, and a composite whose sodium no map
 * uses: what was done is said. The field is invented.
 */
class FewSodiumSitesTest {
  @TempDir static Path temp;
  private static Run run;

  @BeforeAll
  static void mapOnce() throws IOException {
    TestRanch ranch =
        new TestRanch(temp, "depth,method,ec,unit,sar,sampled,field").field("delta", 0, 800, 600);
    for (int i = 0; i < 12; i++) {
      ranch.sample(
          100 + 200 * (i % 4),
          100 + 200 * Math.floorDiv(i, 4),
          "0-30 cm,paste,%.1f,dS/m,%s,core,",
          2 + 0.5 * i,
          i % 2 == 0 ? 4 + 3 * i : "");
    }
    ranch.line("BAG,,,0-30 cm,paste,4.6,dS/m,30,composite,delta");
    run = ranch.map("--set", "zones.sodicity=yes");
  }

  @Test
  void thatTheSodiumsVariogramIsAssumedIsSaid() {
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.err()).contains("sodicity-surface").contains("SAR: ranch: 6 sites");
    assertThat(run.err()).as("ECe has twelve sites").doesNotContain("\ndefault-variogram");
  }

  @Test
  void thatAMixturesSodiumIsNotUsedIsSaid() {
    assertThat(run.err()).contains("composite-unused").contains("not used for SAR");
  }
}
