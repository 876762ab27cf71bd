package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code --timings} on the small sample field. */
class TimingsTest {
  private static final Path JOB = Path.of("sample-fields/small/job.yaml");
  private static final String NUMBERS = " +\\d+\\.\\d\\d +\\d+\\.\\d\\d";

  @TempDir Path temp;

  private static List<String> stages(Run run) {
    List<String> lines = run.err().lines().toList();
    List<String> table = lines.subList(lines.indexOf(heading()) + 1, lines.size());
    assertThat(table).allMatch(l -> l.matches("[A-Za-z ]+" + NUMBERS));
    return table.stream().map(l -> l.replaceAll(NUMBERS, "")).toList();
  }

  private static String heading() {
    return "stage                                  seconds processor s";
  }

  @Test
  void mapPrintsTheSecondsOfEachStage() {
    Run run = Run.of("map", JOB, "-o", temp.resolve("out"), "--timings", "--quiet");
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(stages(run))
        .containsExactly(
            "starting",
            "reading",
            "bringing readings to ECe",
            "fitting the surface",
            "mapping and drawing zones",
            "averaging over zones",
            "looking for what to measure next",
            "mapping what the plan needs",
            "planning",
            "writing files",
            "writing the page",
            "all");
    assertThat(run.out()).doesNotContain("seconds");
  }

  @Test
  void theFilesAreTheSameWithAndWithoutIt() throws IOException {
    Run timed = Run.of("map", JOB, "-o", temp.resolve("a"), "--timings");
    Run plain = Run.of("map", JOB, "-o", temp.resolve("b"));
    assertThat(plain.err()).doesNotContain(heading());
    assertThat(timed.err()).startsWith(plain.err());
    for (String name : List.of("run.json", "report.html", "zones.geojson")) {
      assertThat(temp.resolve("a").resolve(name))
          .hasSameBinaryContentAs(temp.resolve("b").resolve(name));
    }
  }

  @Test
  void theOtherCommandsThatReadKnowItToo() throws IOException {
    assertThat(stages(Run.of("check", JOB, "--timings"))).contains("reading", "planning", "all");
    Path against = JOB.resolveSibling("samples.geojson");
    assertThat(stages(Run.of("assess", JOB, "--against", against, "--timings")))
        .contains("reading", "fitting the surface", "all");
    Path table = temp.resolve("sheet.csv");
    Files.writeString(table, "id,method,ec,unit\nA,paste,4,dS/m\n");
    assertThat(stages(Run.of("convert", table, "--timings")))
        .containsExactly("starting", "bringing readings to ECe", "all");
  }

  /** A job that cannot be mapped shows how far it came. */
  @Test
  void aFailurePrintsItsTimesToo() {
    Run run = Run.of("map", JOB, "--set", "samples=none.csv", "-o", temp.resolve("c"), "--timings");
    assertThat(run.code()).isEqualTo(Exit.INPUT);
    assertThat(run.err()).contains(heading()).containsPattern("reading" + NUMBERS);
  }
}
