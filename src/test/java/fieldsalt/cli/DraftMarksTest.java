package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A row that may hold gypsum makes a draft of its own field's plan only, whatever fields are
 * called: here "1" and "2", which are in the number of many a row. The ranch is invented.
 */
class DraftMarksTest {
  @TempDir Path temp;

  @Test
  void aRowMakesADraftOfItsOwnFieldOnly() throws IOException {
    TestRanch ranch =
        new TestRanch(temp, "depth,method,ec,unit,lab")
            .field("1", 0, 400, 400)
            .field("2", 1000, 400, 400);
    for (int i = 0; i < 24; i++) {
      ranch.sample(
          (i < 12 ? 0 : 1000) + 50 + 100 * (i % 4),
          50 + 100 * Math.floorDiv(i % 12, 4),
          "0-100 cm,1:5,%.2f,dS/m,L",
          i == 20 ? 2.5 : 0.4 + 0.02 * i);
    }
    Run run = ranch.map("--crop", "barley (grain)", "--set", "laboratory.L.region=sulfate-prairie");
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.err()).contains("row 22, site S020: EC1:5 of 2 dS/m or more");
    assertThat(run.err()).contains("field 2: EC1:5 of 2 dS/m or more");
    assertThat(run.err()).doesNotContain("field 1: EC1:5 of 2 dS/m or more");
  }
}
