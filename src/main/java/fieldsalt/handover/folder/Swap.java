package fieldsalt.handover.folder;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Takes the old files out of a folder and puts the new ones in. A journal in the folder says what
 * is going on while it lasts: a run that is cut off in the middle is put back as it was when the
 * folder is opened next, so that it holds the old files whole or the new ones.
 */
final class Swap {
  static final String JOURNAL = ".fieldsalt-journal";
  private static final String BEGINS = ".fieldsalt-";

  private final Path folder;
  private final Path from;
  private final Set<String> old;

  /**
   * @param from folder with the new files, on the same disk
   * @param old names of the files that go
   */
  Swap(Path folder, Path from, Set<String> old) {
    this.folder = folder;
    this.from = from;
    this.old = old;
  }

  void run() throws IOException {
    Path away = Files.createTempDirectory(from.getParent(), OutputFolder.HIDDEN + "old-");
    List<String> fresh = OutputFolder.files(from);
    write(away, fresh);
    try {
      takeOut(away, fresh);
      removeEmptyFields();
      for (String name : fresh) {
        step(from.resolve(name), folder.resolve(name));
      }
      Files.delete(folder.resolve(JOURNAL));
    } catch (IOException | RuntimeException e) {
      putBack(folder);
      throw e;
    } finally {
      OutputFolder.deleteQuietly(away);
    }
  }

  /** Written whole or not at all: the names of both folders, then those of the new files. */
  private void write(Path away, List<String> fresh) throws IOException {
    List<String> lines = new ArrayList<>();
    lines.add(away.getFileName().toString());
    lines.add(from.getFileName().toString());
    lines.addAll(fresh);
    Path draft = folder.resolve(JOURNAL + "-draft");
    Files.write(draft, lines);
    OutputFolder.move(draft, folder.resolve(JOURNAL));
  }

  private void takeOut(Path away, List<String> fresh) throws IOException {
    Set<String> names = new TreeSet<>(old);
    names.addAll(fresh);
    for (String name : names) {
      if (Files.isDirectory(folder.resolve(name))) {
        throw new FileSystemException(
            folder.resolve(name).toString(), null, "a folder has the name of one of our files");
      }
      if (Files.exists(folder.resolve(name), LinkOption.NOFOLLOW_LINKS)) {
        step(folder.resolve(name), away.resolve(name));
      }
    }
  }

  private static void step(Path source, Path target) throws IOException {
    Files.createDirectories(target.getParent());
    OutputFolder.move(source, target);
  }

  /** A folder of pages that no page is left in. */
  private void removeEmptyFields() throws IOException {
    Path fields = folder.resolve("fields");
    if (Files.isDirectory(fields) && OutputFolder.files(fields).isEmpty()) {
      OutputFolder.deleteQuietly(fields);
    }
  }

  /**
   * Puts a folder back as it was before a swap that did not end. Can itself be cut off and done
   * again: a new file that was moved in goes back to where it came from, an old one comes back.
   *
   * @return whether there was anything to put back
   */
  static boolean putBack(Path folder) throws IOException {
    Path journal = folder.resolve(JOURNAL);
    if (!Files.isRegularFile(journal, LinkOption.NOFOLLOW_LINKS)) {
      return false;
    }
    List<String> lines = Files.readAllLines(journal);
    Path away = hidden(folder, lines.isEmpty() ? "" : lines.get(0));
    Path from = hidden(folder, lines.size() < 2 ? "" : lines.get(1));
    if (away != null && from != null) {
      for (String name : lines.subList(2, lines.size())) {
        boolean movedIn =
            OutputFolder.isPlainName(name)
                && !Files.exists(from.resolve(name), LinkOption.NOFOLLOW_LINKS)
                && Files.isRegularFile(folder.resolve(name), LinkOption.NOFOLLOW_LINKS);
        if (movedIn) {
          step(folder.resolve(name), from.resolve(name));
        }
      }
      for (String name : OutputFolder.files(away)) {
        step(away.resolve(name), folder.resolve(name));
      }
      OutputFolder.deleteQuietly(away);
      OutputFolder.deleteQuietly(from);
    }
    Files.delete(journal);
    return true;
  }

  /** A hidden folder of ours beside the folder or in it; null for anything else. */
  private static Path hidden(Path folder, String name) {
    if (!name.startsWith(BEGINS) || name.contains("/") || name.contains("\\")) {
      return null;
    }
    Path beside = folder.resolveSibling(name);
    Path inside = folder.resolve(name);
    return Files.isDirectory(beside, LinkOption.NOFOLLOW_LINKS)
        ? beside
        : Files.isDirectory(inside, LinkOption.NOFOLLOW_LINKS) ? inside : null;
  }
}
