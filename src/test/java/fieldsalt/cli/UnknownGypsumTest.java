package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Where nobody can say how much gypsum is needed, the page does not say that none is. The fields
 * are invented.
 */
class UnknownGypsumTest {
  @TempDir Path temp;

  /** Salty in the west, and sodic where it is told so. */
  private String page(TestRanch ranch, String sar) throws IOException {
    for (int i = 0; i < 20; i++) {
      double x = 50 + 180 * (i % 5);
      ranch.sample(
          x, 60 + 150 * Math.floorDiv(i, 5), "0-30 cm,paste,%.1f,dS/m,%s", 16 - x / 70, sar);
    }
    Run run = ranch.map("--quiet");
    assertThat(run.code()).as(run.err()).isZero();
    return Files.readString(temp.resolve("out/report.html")).replaceAll("<[^>]*>", " ");
  }

  private TestRanch ranch() {
    return new TestRanch(temp, "depth,method,ec,unit,sar");
  }

  @Test
  void sodiumIsKnownButNotTheSoil() throws IOException {
    String page = page(ranch().fieldOfUnknownTexture("mesa", 0, 850, 600), "28");
    assertThat(page)
        .contains("not known: measure CEC or texture")
        .contains("gypsum is not known yet")
        .containsPattern("mesa, by zone\\s+not known\\s+not known\\s+not known")
        .doesNotContain("water it in");
  }

  @Test
  void sodiumIsNotKnown() throws IOException {
    String page = page(ranch().field("mesa", 0, 850, 600), "");
    assertThat(page).contains("not known: measure sodium").doesNotContain("CEC or texture");
  }

  @Test
  void whatIsKnownIsAnAmount() throws IOException {
    String page = page(ranch().field("mesa", 0, 850, 600), "28");
    assertThat(page)
        .contains("Gypsum to spread", "Gypsum needed")
        .doesNotContain("not known: measure");
  }
}
