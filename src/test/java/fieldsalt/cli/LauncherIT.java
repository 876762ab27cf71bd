package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** What the build made: the launcher, the jar and the class archive. */
@EnabledOnOs({OS.LINUX, OS.MAC})
class LauncherIT {
  private static final Path TARGET = Path.of("target").toAbsolutePath();
  private static final String ARCHIVE = "fieldsalt.jsa";
  private static final String SIZE = "fieldsalt.jsa.size";
  private static final String FROM_ARCHIVE = "source: shared objects file (top)";

  @TempDir Path temp;

  private Path folder;

  /** The built program in another folder, with the archive of that place left out. */
  @BeforeEach
  void copy() throws IOException {
    folder = Files.createDirectory(temp.toRealPath().resolve("a b"));
    for (String name : List.of("fieldsalt", "fieldsalt.jar")) {
      Files.copy(TARGET.resolve(name), folder.resolve(name), StandardCopyOption.COPY_ATTRIBUTES);
    }
    Files.createSymbolicLink(folder.resolve("lib"), TARGET.resolve("lib"));
  }

  private ProcessRun run(Path launcherFolder, String options, Object... words) throws Exception {
    Object[] command = new Object[words.length + 1];
    command[0] = launcherFolder.resolve("fieldsalt");
    System.arraycopy(words, 0, command, 1, words.length);
    return ProcessRun.of(temp, Map.of("FIELDSALT_OPTS", options), command);
  }

  private void assertWorks() throws Exception {
    ProcessRun run = run(folder, "", "--version");
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).matches("fieldsalt \\d+\\.\\d+\\.\\d+\n");
    assertThat(run.code()).isZero();
  }

  private void put(byte[] archive, long size) throws IOException {
    Files.write(folder.resolve(ARCHIVE), archive);
    Files.writeString(folder.resolve(SIZE), size + "\n");
  }

  @Test
  void classesComeFromTheArchiveOfTheBuild() throws Exception {
    assertThat(Files.readString(TARGET.resolve(SIZE)).strip())
        .isEqualTo(String.valueOf(Files.size(TARGET.resolve(ARCHIVE))));
    ProcessRun run = run(TARGET, "-Xlog:class+load", "--version");
    assertThat(run.code()).isZero();
    assertThat(run.out().lines().filter(l -> l.contains("fieldsalt.cli.Main ")))
        .isNotEmpty()
        .allMatch(l -> l.contains(FROM_ARCHIVE));
  }

  /** Most of what the main job needs is there, without a word of Java on the terminal. */
  @Test
  void theMainJobStartsFromTheArchive() throws Exception {
    Path log = temp.resolve("classes.txt");
    Path job = Path.of("sample-fields/small/job.yaml").toAbsolutePath();
    ProcessRun run =
        run(TARGET, "-Xlog:class+load:file=" + log, "map", job, "-o", "out", "--quiet");
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).startsWith("18 sites used").endsWith("Open out/report.html\n");
    List<String> own =
        Files.readAllLines(log).stream().filter(l -> l.contains(" fieldsalt.")).toList();
    assertThat(own).hasSizeGreaterThan(300);
    assertThat(own.stream().filter(l -> l.contains(FROM_ARCHIVE)).count())
        .isGreaterThan(own.size() * 9L / 10);
  }

  @Test
  void itWorksWithoutAnArchive() throws Exception {
    assertThat(folder.resolve(ARCHIVE)).doesNotExist();
    assertWorks();
  }

  @Test
  void anArchiveOfAnotherJarIsLeftAside() throws Exception {
    byte[] good = Files.readAllBytes(TARGET.resolve(ARCHIVE));
    put(good, good.length);
    assertWorks();
  }

  @Test
  void aBrokenArchiveIsLeftAside() throws Exception {
    byte[] good = Files.readAllBytes(TARGET.resolve(ARCHIVE));
    put(Arrays.copyOf(good, 1000), good.length);
    assertWorks();
    put(Arrays.copyOf(good, good.length / 2), good.length);
    assertWorks();
    put("no archive".getBytes(java.nio.charset.StandardCharsets.US_ASCII), 10);
    assertWorks();
  }

  /** Made for the jar of this folder, then altered at many places: Java checks its sums. */
  @Test
  void anArchiveWithWrongBytesIsLeftAside() throws Exception {
    run(folder, "-XX:ArchiveClassesAtExit=" + ARCHIVE, "crops", "alfalfa");
    Path made = temp.resolve(ARCHIVE);
    byte[] bytes = Files.readAllBytes(made);
    put(bytes, bytes.length);
    String loaded = run(folder, "-Xlog:class+load", "--version").out();
    assertThat(loaded).contains(FROM_ARCHIVE);
    for (int i = 5_000; i < bytes.length; i += 997) {
      bytes[i] ^= 0x55;
    }
    put(bytes, bytes.length);
    assertWorks();
  }

  @Test
  void exitCodesPass() throws Exception {
    assertThat(run(TARGET, "", "nonsense").code()).isEqualTo(Exit.USAGE);
    ProcessRun missing = run(TARGET, "", "check", "none.yaml");
    assertThat(missing.code()).isEqualTo(Exit.INPUT);
    assertThat(missing.err()).contains("none.yaml");
  }

  @Test
  void aWordWithAnAtSignIsNoFileOfArguments() throws Exception {
    Files.writeString(temp.resolve("words"), "alfalfa");
    assertThat(run(TARGET, "", "crops", "@words").err()).contains("\"@words\"");
  }

  /** What answers at once loads neither what reads jobs and maps nor the large libraries. */
  @Test
  void helpAndVersionLoadNextToNothing() throws Exception {
    for (String word : List.of("--help", "--version")) {
      assertThat(run(TARGET, "-Xlog:class+load", word).out().lines())
          .filteredOn(l -> l.contains("source:"))
          .hasSizeLessThan(1_500)
          .noneMatch(
              l -> l.matches(".* (com\\.fasterxml|org\\.yaml|org\\.loc|org\\.sqlite|org\\.geo).*"))
          .filteredOn(l -> l.contains(" fieldsalt.") && !l.contains(" fieldsalt.cli."))
          .hasSizeLessThan(12);
    }
  }

  /**
   * Defaults are values of the catalogue: no parser for job files is needed where there is none.
   */
  @Test
  void withoutAJobFileNoYamlIsRead() throws Exception {
    Path small = Path.of("sample-fields/small").toAbsolutePath();
    ProcessRun run =
        run(
            TARGET,
            "-Xlog:class+load",
            "check",
            "--fields",
            small.resolve("fields.geojson"),
            "--samples",
            small.resolve("samples.geojson"),
            "--set",
            "defaults.method=paste");
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out().lines())
        .filteredOn(l -> l.contains("source:"))
        .anyMatch(l -> l.contains("fieldsalt.read.job.JobDefaults"))
        .noneMatch(l -> l.contains("org.yaml.") || l.contains("dataformat.yaml"));
    assertThat(run(TARGET, "-Xlog:class+load", "crops", "alfalfa").out())
        .contains("Alfalfa")
        .doesNotContain(" org.yaml.", "ObjectMapper");
  }
}
