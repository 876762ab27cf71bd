package fieldsalt.handover.folder;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A run that is cut off while it swaps leaves the old files whole, or the new ones. */
class SwapTest {
  private static final String RECORD =
      "{\"program\":\"fieldsalt\",\"files\":[\"zones.geojson\",\"rates.csv\",\"fields/a.html\"]}";
  private static final List<String> OLD =
      List.of("fields/a.html", "rates.csv", "run.json", "zones.geojson");
  private static final List<String> NEW = List.of("report.html", "run.json", "zones.geojson");

  @TempDir Path temp;

  private static void put(Path folder, String name, String text) throws IOException {
    Files.createDirectories(folder.resolve(name).getParent());
    Files.writeString(folder.resolve(name), text);
  }

  private static Map<String, String> contents(Path folder) throws IOException {
    Map<String, String> all = new TreeMap<>();
    for (String name : OutputFolder.files(folder)) {
      all.put(name, Files.readString(folder.resolve(name)));
    }
    return all;
  }

  private static void move(Path from, Path to) throws IOException {
    Files.createDirectories(to.getParent());
    Files.move(from, to);
  }

  /** The moves of a swap in their order: old files out, then new files in. */
  private static List<Path[]> moves(Path folder, Path from, Path away) {
    List<Path[]> moves = new ArrayList<>();
    for (String name : OLD) {
      moves.add(new Path[] {folder.resolve(name), away.resolve(name)});
    }
    for (String name : NEW) {
      moves.add(new Path[] {from.resolve(name), folder.resolve(name)});
    }
    return moves;
  }

  private Path ranchWithJournal(int done) throws IOException {
    Path folder = temp.resolve("out" + done);
    Path from = temp.resolve(".fieldsalt-new" + done);
    Path away = Files.createDirectories(temp.resolve(".fieldsalt-old" + done));
    for (String name : OLD) {
      put(folder, name, name.equals("run.json") ? RECORD : "old " + name);
    }
    put(folder, "notes of the user.txt", "kept");
    for (String name : NEW) {
      put(from, name, "new " + name);
    }
    List<String> journal =
        new ArrayList<>(List.of(".fieldsalt-old" + done, ".fieldsalt-new" + done));
    journal.addAll(NEW);
    Files.write(folder.resolve(Swap.JOURNAL), journal);
    for (Path[] each : moves(folder, from, away).subList(0, done)) {
      move(each[0], each[1]);
    }
    return folder;
  }

  @Test
  void aSwapThatIsCutOffAnywhereIsPutBack() throws IOException {
    int all = OLD.size() + NEW.size();
    for (int done = 0; done <= all; done++) {
      Path folder = ranchWithJournal(done);
      assertThat(OutputFolder.open(folder, false, List.of()).wasMended()).isTrue();
      Map<String, String> now = contents(folder);
      assertThat(now).as("after " + done + " moves").hasSize(OLD.size() + 1);
      assertThat(now.get("zones.geojson")).isEqualTo("old zones.geojson");
      assertThat(now.get("fields/a.html")).isEqualTo("old fields/a.html");
      assertThat(now.get("run.json")).isEqualTo(RECORD);
      assertThat(now.get("notes of the user.txt")).isEqualTo("kept");
      assertThat(OutputFolder.open(folder, false, List.of()).wasMended()).isFalse();
    }
    try (Stream<Path> left = Files.list(temp)) {
      assertThat(left.map(p -> p.getFileName().toString())).noneMatch(n -> n.startsWith("."));
    }
  }

  /** Putting back may itself be cut off: what came back already stays. */
  @Test
  void puttingBackCanBeCutOffToo() throws IOException {
    Path folder = ranchWithJournal(OLD.size() + 1);
    Path away = temp.resolve(".fieldsalt-old" + (OLD.size() + 1));
    Path from = temp.resolve(".fieldsalt-new" + (OLD.size() + 1));
    move(folder.resolve("report.html"), from.resolve("report.html"));
    move(away.resolve("rates.csv"), folder.resolve("rates.csv"));
    move(away.resolve("zones.geojson"), folder.resolve("zones.geojson"));
    assertThat(Swap.putBack(folder)).isTrue();
    assertThat(contents(folder)).hasSize(OLD.size() + 1).containsEntry("run.json", RECORD);
    assertThat(contents(folder)).containsEntry("zones.geojson", "old zones.geojson");
  }

  /** A journal that someone planted moves nothing from elsewhere. */
  @Test
  void aPlantedJournalDoesNothing() throws IOException {
    Path folder = temp.resolve("planted");
    put(folder, "run.json", RECORD);
    put(temp.resolve("precious"), "thesis.txt", "years");
    Files.write(folder.resolve(Swap.JOURNAL), List.of("../precious", "precious", "run.json"));
    OutputFolder.open(folder, false, List.of());
    assertThat(contents(temp.resolve("precious"))).containsEntry("thesis.txt", "years");
    assertThat(contents(folder)).containsOnlyKeys("run.json");
  }

  /** A run record that names files that we never write takes none of them away. */
  @Test
  void aPlantedRecordRemovesNothingThatIsNotOurs() throws IOException {
    Path folder = temp.resolve("record");
    put(
        folder,
        "run.json",
        "{\"program\":\"fieldsalt\",\"files\":[\"thesis.docx\",\"notes.html\",\"rates.csv\"]}");
    put(folder, "thesis.docx", "years");
    put(folder, "notes.html", "mine");
    put(folder, "rates.csv", "old");
    OutputFolder.open(folder, false, List.of())
        .replaceWith(empty -> Files.writeString(empty.resolve("run.json"), RECORD));
    assertThat(contents(folder)).containsOnlyKeys("run.json", "thesis.docx", "notes.html");
  }
}
