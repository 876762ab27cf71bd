package fieldsalt.handover.folder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fieldsalt.finding.InputProblem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutputFolderTest {
  private static final String OURS =
      "{\"program\":\"fieldsalt\",\"files\":[\"ece.tif\",\"run.json\",\"../keep.txt\"]}";
  @TempDir Path root;
  private Path dir;

  @BeforeEach
  void name() {
    dir = root.resolve("out");
  }

  private static void put(Path folder, String name, String text) throws IOException {
    Files.createDirectories(folder);
    Files.writeString(folder.resolve(name), text);
  }

  /** Every file below the root with its text. */
  private static Map<String, String> state(Path root) throws IOException {
    Map<String, String> state = new TreeMap<>();
    try (Stream<Path> all = Files.walk(root)) {
      for (Path path : all.toList()) {
        state.put(
            root.relativize(path).toString(),
            Files.isRegularFile(path) ? Files.readString(path) : "/");
      }
    }
    return state;
  }

  private static OutputFolder.Content two() {
    return empty -> {
      put(empty, "new.tif", "new");
      put(empty, "run.json", "{\"program\":\"fieldsalt\",\"files\":[\"new.tif\",\"run.json\"]}");
    };
  }

  @Test
  void aNewFolderIsMadeWhole() throws IOException {
    Path deep = root.resolve("a").resolve("b");
    List<String> names = OutputFolder.open(deep, false, List.of()).replaceWith(two());
    assertThat(names).containsExactly("new.tif", "run.json");
    assertThat(state(root).keySet()).containsExactly("", "a", "a/b", "a/b/new.tif", "a/b/run.json");
  }

  @Test
  void aNewFolderHasTheUsualPermissions() throws IOException {
    OutputFolder.open(dir, false, List.of()).replaceWith(two());
    Path usual = Files.createDirectory(root.resolve("usual"));
    Assumptions.assumeTrue(Files.getFileStore(root).supportsFileAttributeView("posix"));
    assertThat(Files.getPosixFilePermissions(dir)).isEqualTo(Files.getPosixFilePermissions(usual));
  }

  @Test
  void ourOldFilesGoAndTheUsersStay() throws IOException {
    put(dir, "run.json", OURS);
    put(dir, "ece.tif", "old");
    put(dir, "notes.txt", "mine");
    put(root, "keep.txt", "mine too");
    OutputFolder.open(dir, false, List.of()).replaceWith(two());
    assertThat(state(root).keySet())
        .containsExactly("", "keep.txt", "out", "out/new.tif", "out/notes.txt", "out/run.json");
    assertThat(Files.readString(dir.resolve("new.tif"))).isEqualTo("new");
  }

  @Test
  void aFolderOfSomeoneElseIsRefusedWithoutForce() throws IOException {
    put(dir, "thesis.doc", "years of work");
    put(dir, "run.json", "{\"program\":\"other\"}");
    Map<String, String> before = state(root);
    assertThatThrownBy(() -> OutputFolder.open(dir, false, List.of()))
        .isInstanceOf(InputProblem.class)
        .hasMessageContaining("run.json and 1 more")
        .hasMessageContaining("--force");
    assertThat(state(root)).isEqualTo(before);
    OutputFolder.open(dir, true, List.of()).replaceWith(two());
    assertThat(state(root).keySet())
        .containsExactly("", "out", "out/new.tif", "out/run.json", "out/thesis.doc");
  }

  @Test
  void aBrokenRunRecordIsNotOurs() throws IOException {
    put(dir, "run.json", "{\"program\":");
    assertThatThrownBy(() -> OutputFolder.open(dir, false, List.of()))
        .isInstanceOf(InputProblem.class);
  }

  @Test
  void anEmptyFolderIsUsed() throws IOException {
    Files.createDirectory(dir);
    OutputFolder.open(dir, false, List.of()).replaceWith(two());
    assertThat(dir.resolve("new.tif")).hasContent("new");
  }

  @Test
  void aFailureLeavesEverythingAsItWas() throws IOException {
    put(dir, "run.json", OURS);
    put(dir, "ece.tif", "old");
    Map<String, String> before = state(root);
    OutputFolder folder = OutputFolder.open(dir, false, List.of());
    assertThatThrownBy(
            () ->
                folder.replaceWith(
                    empty -> {
                      put(empty, "half.tif", "half");
                      throw new IllegalStateException("a bug");
                    }))
        .isInstanceOf(IllegalStateException.class);
    assertThat(state(root)).isEqualTo(before);
  }

  /** The device that is always full stands for a full disk. */
  @Test
  void aFullDiskLeavesEverythingAsItWas() throws IOException {
    Assumptions.assumeTrue(Files.exists(Path.of("/dev/full")), "no /dev/full on this system");
    put(dir, "run.json", OURS);
    put(dir, "ece.tif", "old");
    Map<String, String> before = state(root);
    OutputFolder folder = OutputFolder.open(dir, false, List.of());
    assertThatThrownBy(
            () ->
                folder.replaceWith(
                    empty -> {
                      put(empty, "first.tif", "first");
                      Files.writeString(Path.of("/dev/full"), "x");
                    }))
        .isInstanceOf(InputProblem.class)
        .hasMessageContaining("No space left on device")
        .hasMessageContaining("-o");
    assertThat(state(root)).isEqualTo(before);
  }

  @Test
  void aFailureWhileMovingInPutsTheOldFilesBack() throws IOException {
    put(dir, "run.json", OURS);
    put(dir, "ece.tif", "old");
    put(dir.resolve("run.json.d"), "x", "x");
    put(dir.resolve("new.tif"), "inside", "a folder in the way");
    Map<String, String> before = state(root);
    OutputFolder folder = OutputFolder.open(dir, false, List.of());
    assertThatThrownBy(
            () ->
                folder.replaceWith(
                    empty -> {
                      put(empty, "a.tif", "a");
                      put(empty, "new.tif", "new");
                      put(empty, "ece.tif", "newer");
                    }))
        .isInstanceOf(InputProblem.class)
        .hasMessageContaining("new.tif");
    assertThat(state(root)).isEqualTo(before);
  }

  @Test
  void aFileInTheWayIsRefused() throws IOException {
    Files.writeString(dir, "a file");
    assertThatThrownBy(() -> OutputFolder.open(dir, true, List.of()))
        .isInstanceOf(InputProblem.class)
        .hasMessageContaining("a file at");
    assertThatThrownBy(() -> OutputFolder.open(dir.resolve("below"), true, List.of()))
        .isInstanceOf(InputProblem.class);
    assertThat(dir).hasContent("a file");
  }

  @Test
  void aPlaceThatCannotBeWrittenIsAProblemOfTheUser() {
    Assumptions.assumeTrue(Files.isDirectory(Path.of("/proc/self")), "no /proc on this system");
    assertThatThrownBy(
            () ->
                OutputFolder.open(Path.of("/proc/fieldsalt-out"), false, List.of())
                    .replaceWith(two()))
        .isInstanceOf(InputProblem.class)
        .hasMessageContaining("/proc/fieldsalt-out");
  }

  @Test
  void aReadOnlyParentIsRefusedBeforeAnyWork() throws IOException {
    Path parent = Files.createDirectory(root.resolve("locked"));
    Assumptions.assumeTrue(parent.toFile().setWritable(false), "cannot take the permission away");
    try {
      Assumptions.assumeFalse(Files.isWritable(parent), "this user may write anywhere");
      assertThatThrownBy(() -> OutputFolder.open(parent.resolve("out"), false, List.of()))
          .isInstanceOf(InputProblem.class)
          .hasMessageContaining("permission");
    } finally {
      assertThat(parent.toFile().setWritable(true)).isTrue();
    }
  }

  @Test
  void aFolderOnAnotherDiskIsWrittenThere() throws IOException {
    Path memory = Path.of("/dev/shm");
    Assumptions.assumeTrue(Files.isWritable(memory), "no second file system to try");
    Path there = Files.createTempDirectory(memory, "fieldsalt-test-");
    try {
      Files.createSymbolicLink(dir, there);
      put(there, "run.json", OURS);
      put(there, "ece.tif", "old");
      OutputFolder.open(dir, false, List.of()).replaceWith(two());
      assertThat(state(there).keySet()).containsExactly("", "new.tif", "run.json");
      assertThat(Files.isSymbolicLink(dir)).isTrue();
    } finally {
      OutputFolder.deleteQuietly(there);
    }
  }

  /** A folder that is a mounted disk cannot be written beside: the new files are made inside it. */
  @Test
  void aFolderThatIsADiskOfItsOwnIsWrittenInside() throws IOException {
    Path memory = Path.of("/dev/shm");
    Assumptions.assumeTrue(
        Files.isWritable(memory)
            && !Files.getFileStore(memory).equals(Files.getFileStore(memory.getParent())),
        "no second file system to try");
    String name = "fieldsalt-test-" + ProcessHandle.current().pid() + ".txt";
    try {
      OutputFolder.open(memory, true, List.of()).replaceWith(empty -> put(empty, name, "here"));
      assertThat(memory.resolve(name)).hasContent("here");
      try (Stream<Path> left = Files.list(memory)) {
        assertThat(left.filter(p -> p.getFileName().toString().startsWith(".fieldsalt-")))
            .isEmpty();
      }
    } finally {
      Files.deleteIfExists(memory.resolve(name));
    }
  }
}
