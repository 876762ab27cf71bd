package fieldsalt.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import fieldsalt.quantity.DepthRange;
import fieldsalt.quantity.Method;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.sample.Sample;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The real survey of R package sswr (Brus 2022), read as it lies there; skipped where absent. */
class RealSurveyTest {
  private static final Path DATA = Path.of("../shared/real/crf.csv");

  @Test
  void theRealSurveyIsReadAsItLiesThere() {
    assumeTrue(Files.exists(DATA), "the real survey is not on this machine");
    Ranch ranch =
        RanchReader.readOrHull(
            JobDocument.ofSettings(
                Path.of(""),
                List.of(
                    "samples=" + DATA,
                    "crs=EPSG:32641",
                    "defaults.depth-cm=0,150",
                    "defaults.unit=dS/m",
                    "columns.ec_paste=ECe150")),
            DATA);
    assertThat(ranch.samples()).hasSize(142);
    assertThat(ranch.samples().stream().map(Sample::place).distinct()).hasSize(114);
    assertThat(ranch.samples().stream().map(Sample::id).distinct()).hasSize(114);
    Sample first = ranch.samples().get(0);
    assertThat(first.method()).contains(Method.PASTE);
    assertThat(first.depth()).isEqualTo(new DepthRange(0, 150));
    assertThat(first.ec().orElseThrow().dSPerM()).isEqualTo(1.8);
    assertThat(first.place().orElseThrow().xM()).isEqualTo(307304.24000472);
    assertThat(ranch.samples())
        .allSatisfy(s -> assertThat(s.date().orElseThrow()).isAfter(LocalDate.of(2008, 1, 1)));
    assertThat(ranch.projection().epsg()).hasValue(32641);
    assertThat(ranch.findings()).extracting(f -> f.code().id()).containsExactly("hull");
  }
}
