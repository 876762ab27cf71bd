package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * The launcher of Linux and macOS with a made-up Java that prints its arguments and ends with 7.
 */
@EnabledOnOs({OS.LINUX, OS.MAC})
class LauncherScriptTest {
  private static final Path SOURCE = Path.of("src/main/launcher").toAbsolutePath();
  private static final List<String> TOOLS = List.of("sh", "readlink", "wc", "sed");

  @TempDir Path temp;

  private Path home;
  private Path script;
  private final Map<String, String> environment = new HashMap<>();

  /** A folder with blanks in its name, and a PATH without any Java. */
  @BeforeEach
  void install() throws IOException {
    Path folder = Files.createDirectories(temp.toRealPath().resolve("a folder with  blanks"));
    script = folder.resolve("fieldsalt");
    Files.copy(SOURCE.resolve("fieldsalt"), script);
    executable(script);
    Path tools = Files.createDirectory(temp.resolve("tools"));
    for (String tool : TOOLS) {
      Files.writeString(tools.resolve(tool), "#!/bin/sh\nexec " + found(tool) + " \"$@\"\n");
      executable(tools.resolve(tool));
    }
    home = java("jdk 17", "17.0.15");
    environment.put("PATH", tools.toString());
    environment.put("JAVA_HOME", home.toString());
    environment.put("FIELDSALT_OPTS", "");
  }

  private static Path found(String tool) {
    for (String folder : System.getenv("PATH").split(":")) {
      Path file = Path.of(folder, tool);
      if (Files.isExecutable(file)) {
        return file;
      }
    }
    throw new IllegalStateException("not on the PATH: " + tool);
  }

  /** A Java as its release file says. */
  private Path java(String name, String version) throws IOException {
    Path made = java(name);
    Files.writeString(
        made.resolve("release"), "IMPLEMENTOR=\"Nobody\"\nJAVA_VERSION=\"" + version + "\"\n");
    return made;
  }

  private Path java(String name) throws IOException {
    Path made = temp.resolve(name);
    Path java = Files.createDirectories(made.resolve("bin")).resolve("java");
    Files.writeString(java, "#!/bin/sh\nfor a in \"$@\"; do echo \"<$a>\"; done\nexit 7\n");
    executable(java);
    return made;
  }

  private static void executable(Path file) {
    assertThat(file.toFile().setExecutable(true)).isTrue();
  }

  private ProcessRun run(Path start, Object... words) throws IOException, InterruptedException {
    Object[] command = new Object[words.length + 1];
    command[0] = start;
    System.arraycopy(words, 0, command, 1, words.length);
    return ProcessRun.of(temp, environment, command);
  }

  private static void assertRefused(ProcessRun run, String why) {
    assertThat(run.code()).isEqualTo(127);
    assertThat(run.out()).isEmpty();
    assertThat(run.err())
        .isEqualTo(
            "fieldsalt needs Java 17 or later: "
                + why
                + "\nInstall it, or set JAVA_HOME to the folder where it is, and run again.\n");
  }

  @Test
  void argumentsAndExitCodePassUnchanged() throws Exception {
    Files.writeString(temp.resolve("words"), "--version");
    ProcessRun run = run(script, "map", "@words", "*", "a  b", "", "$HOME", "it's \"so\"", "-D\\x");
    assertThat(run.code()).isEqualTo(7);
    assertThat(run.err()).isEmpty();
    assertThat(run.out())
        .endsWith(
            "<-jar>\n<"
                + script.resolveSibling("fieldsalt.jar")
                + ">\n<map>\n<@words>\n<*>\n<a  b>\n<>\n<$HOME>\n<it's \"so\">\n<-D\\x>\n")
        .contains("<-XX:+UseSerialGC>\n");
  }

  @Test
  void theJarIsFoundThroughAChainOfLinksFromAnyFolder() throws Exception {
    Path links = Files.createDirectory(temp.resolve("links"));
    Files.createSymbolicLink(links.resolve("one"), Path.of("../a folder with  blanks/fieldsalt"));
    Files.createSymbolicLink(temp.resolve("two"), Path.of("links/one"));
    String jar = "<" + script.resolveSibling("fieldsalt.jar") + ">\n";
    assertThat(run(temp.resolve("two")).out()).contains(jar);
    environment.put("PATH", links + ":" + environment.get("PATH"));
    assertThat(run(Path.of("sh"), "-c", "one").out()).contains(jar);
    ProcessRun inside =
        ProcessRun.of(script.getParent(), environment, "sh", script.getFileName(), "x");
    assertThat(inside.out()).contains(jar);
  }

  @Test
  void theArchiveIsUsedOnlyIfItHasItsWholeSize() throws Exception {
    Path archive = script.resolveSibling("fieldsalt.jsa");
    String option = "<-XX:SharedArchiveFile=" + archive + ">\n";
    assertThat(run(script).out()).doesNotContain("SharedArchiveFile");
    Files.writeString(archive, "12345");
    assertThat(run(script).out()).doesNotContain("SharedArchiveFile");
    Files.writeString(script.resolveSibling("fieldsalt.jsa.size"), "5\n");
    assertThat(run(script).out()).contains(option);
    Files.writeString(archive, "1234");
    assertThat(run(script).out()).doesNotContain("SharedArchiveFile");
  }

  @Test
  void ownOptionsForJavaComeBeforeTheJar() throws Exception {
    environment.put("FIELDSALT_OPTS", "-Xmx4g  -Dx=*");
    assertThat(run(script).out()).contains("<-Xmx4g>\n<-Dx=*>\n<-jar>\n");
  }

  @Test
  void theJavaOfThePathIsTakenWhereJavaHomeIsNotSet() throws Exception {
    environment.put("JAVA_HOME", "");
    assertRefused(run(script), "there is no java on the PATH.");
    Path bin = Files.createDirectory(temp.resolve("bin"));
    Files.createSymbolicLink(bin.resolve("java"), Path.of("../jdk 17/bin/java"));
    environment.put("PATH", bin + ":" + environment.get("PATH"));
    assertThat(run(script, "x").code()).isEqualTo(7);
  }

  @Test
  void aJavaThatIsTooOldIsRefused() throws Exception {
    home = java("jdk 11", "11.0.2");
    environment.put("JAVA_HOME", home.toString());
    assertRefused(run(script), home + "/bin/java is Java 11.0.2.");
    environment.put("JAVA_HOME", java("jdk 21", "21").toString());
    assertThat(run(script).code()).isEqualTo(7);
  }

  @Test
  void aJavaWithoutAReleaseFileIsAsked() throws Exception {
    home = java("jre");
    environment.put("JAVA_HOME", home.toString());
    assertRefused(run(script), home + "/bin/java is Java of an unknown version.");
    says(home, "openjdk version \"1.8.0_402\"");
    assertRefused(run(script), home + "/bin/java is Java 1.8.0_402.");
    says(home, "openjdk version \"18-ea\" 2022-03-22");
    assertThat(run(script).code()).isEqualTo(7);
  }

  private static void says(Path home, String version) throws IOException {
    String script =
        "#!/bin/sh\n[ \"$1\" = -version ] && echo 'Picked up X' >&2 && echo '%s' >&2 && exit 0\nexit 7\n";
    Files.writeString(home.resolve("bin/java"), script.formatted(version));
  }

  @Test
  void aJavaHomeWithoutJavaIsRefused() throws Exception {
    environment.put("JAVA_HOME", temp.resolve("none").toString());
    assertRefused(
        run(script), "JAVA_HOME is " + temp.resolve("none") + ", and there is no bin/java in it.");
  }

  @Test
  void bothLaunchersGiveJavaTheSameOptions() throws IOException {
    Set<String> options = options("fieldsalt");
    assertThat(options).contains("-XX:+UseSerialGC", "-Xlog:disable", "-XX:SharedArchiveFile=");
    assertThat(options("fieldsalt.cmd")).isEqualTo(options);
  }

  private static Set<String> options(String launcher) throws IOException {
    return Pattern.compile("-X[a-zA-Z]*:[+\\w:]+=?\\d*")
        .matcher(text(launcher))
        .results()
        .map(java.util.regex.MatchResult::group)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** The shell of Windows loses its way between labels where lines end otherwise. */
  @Test
  void theLauncherOfWindowsHasTheLineEndsOfWindows() throws IOException {
    assertThat(text("fieldsalt.cmd").replace("\r\n", "")).isNotEmpty().doesNotContain("\n", "\r");
    assertThat(text("fieldsalt")).doesNotContain("\r");
  }

  private static String text(String launcher) throws IOException {
    return Files.readString(SOURCE.resolve(launcher), StandardCharsets.US_ASCII);
  }
}
