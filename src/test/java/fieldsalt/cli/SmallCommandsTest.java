package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Commands that answer without a map. */
class SmallCommandsTest {
  @TempDir Path temp;

  @Test
  void cropsPrintsMatchingRowsWithSource() {
    Run run = Run.of("crops", "alf");
    assertThat(run.code()).isZero();
    assertThat(run.out()).contains("Alfalfa / lucerne").contains("Maas & Grattan 1999");
    assertThat(run.out()).doesNotContain("Cotton");
  }

  @Test
  void jobPrintsAFileThatCanBeRead() throws IOException {
    Run run = Run.of("job");
    assertThat(run.code()).isZero();
    Path job = temp.resolve("job.yaml");
    Files.writeString(job, run.out());
    assertThat(fieldsalt.read.job.JobDocument.read(job, List.of()).amount("gypsum.target-esp"))
        .isEqualTo(10);
  }

  @Test
  void everyCommandHasHelp() {
    for (String command : new String[] {"map", "check", "convert", "assess", "crops", "job"}) {
      Run run = Run.of(command, "--help");
      assertThat(run.code()).isZero();
      assertThat(run.out()).contains("Usage: fieldsalt " + command);
    }
    assertThat(Run.of("--help").out()).contains("Exit codes");
  }

  @Test
  void helpNamesEveryCommandAndHelpOfOneIsItsOwn() {
    assertThat(Run.of("--help").out().lines().map(l -> l.replaceFirst("^ +(\\w+).*", "$1")))
        .containsSubsequence("map", "check", "convert", "assess", "crops", "job", "help");
    assertThat(Run.of("help", "map").out()).contains("Usage: fieldsalt map", "--timings");
    assertThat(Run.of("mapp").err()).contains("Did you mean: fieldsalt map");
  }

  /** Reading the options of all commands takes longer than running a short one. */
  @Test
  void onlyTheCommandThatIsAskedForIsMadeReady() {
    Console silent = new Console(System.out, System.err, false);
    assertThat(Commands.line(new String[] {"crops", "map"}, silent).getSubcommands())
        .containsOnlyKeys("crops");
    assertThat(Commands.line(new String[] {"--help"}, silent).getSubcommands()).hasSize(7);
  }

  @Test
  void aWordWithAnAtSignIsAWord() throws IOException {
    Path words = temp.resolve("words");
    Files.writeString(words, "alfalfa");
    Run run = Run.of("crops", "@" + words);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("\"@" + words + "\"");
  }

  @Test
  void convertWritesReadingsAndFactorsWithoutAnyField() throws IOException {
    Path table = temp.resolve("sheet.csv");
    Files.writeString(
        table,
        "id,method,reading,ec,unit,texture\nA,1:5,extract,0.5,dS/m,loam\nB,1:5,extract,lost,dS/m,loam\n");
    Path out = temp.resolve("ece.csv");
    Run run = Run.of("convert", table, "-o", out);
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.err()).contains("lost");
    assertThat(out).content().contains("ece_dS_m").contains("4.75"); // 9.5 x 0.5
    assertThat(temp.resolve("ece-factors.csv")).content().contains("factor_published");
    Run printed = Run.of("convert", table);
    assertThat(printed.out()).isEqualTo(Files.readString(out));
    assertThat(printed.err()).contains("mean of 1 samples 4.").contains("90 % interval");
    assertThat(Run.of("convert", table, "--strict").code()).isEqualTo(Exit.INPUT);
  }

  @Test
  void convertOfNothingUsableIsRefused() throws IOException {
    Path table = temp.resolve("sheet.csv");
    Files.writeString(table, "id,method,ec,unit\nA,1:5,lost,dS/m\n");
    Run run = Run.of("convert", table);
    assertThat(run.code()).isEqualTo(Exit.INPUT);
    assertThat(run.out()).isEmpty();
  }
}
