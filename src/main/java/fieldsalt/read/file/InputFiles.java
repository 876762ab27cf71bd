package fieldsalt.read.file;

import fieldsalt.finding.InputProblem;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;

/** Reads the files that a job names, and keeps the SHA-256 of each. */
public final class InputFiles {
  private final Path folder;
  private final Notes notes;
  private final Map<String, String> hashes = new TreeMap<>();

  /**
   * @param folder that a second file of the same name is named from
   */
  public InputFiles(Path folder, Notes notes) {
    this.folder = folder;
    this.notes = notes;
  }

  /** The files that can be read; each other one is a problem noted. */
  public List<InputFile> read(List<Path> paths) {
    return paths.stream().flatMap(path -> read(path).stream()).toList();
  }

  /** A file; empty, with a problem noted, if it cannot be read. */
  public Optional<InputFile> read(Path path) {
    return orNote(
        Optional.empty(),
        p -> {
          InputFile file = InputFile.read(p);
          add(file);
          return Optional.of(file);
        },
        Optional.of(path));
  }

  /** What a file holds; a problem with it is noted, and something else stands for it. */
  public <F, T> T orNote(T otherwise, Function<F, T> read, Optional<F> file) {
    try {
      return file.map(read).orElse(otherwise);
    } catch (InputProblem e) {
      notes.problem(e);
      return otherwise;
    }
  }

  /** Keeps the hash of a file that was read. */
  public void add(InputFile file) {
    String hash = file.sha256();
    String before = hashes.putIfAbsent(file.name(), hash);
    if (before != null && !before.equals(hash)) {
      hashes.put(folder.relativize(file.path().toAbsolutePath()).toString(), hash);
    }
  }

  /** File name to SHA-256 in hexadecimal. */
  public Map<String, String> hashes() {
    return hashes;
  }
}
