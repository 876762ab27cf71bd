package fieldsalt.handover.folder;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import fieldsalt.finding.InputProblem;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A folder that is written whole or not at all. Everything goes into a new folder beside it, on the
 * same disk; only when that is complete do its files take the place of the old ones. If anything
 * fails on the way what stood there before stands there still.
 *
 * <p>A folder counts as ours if it holds a {@code run.json} whose {@code program} is {@code
 * fieldsalt}; its {@code files} are the ones that a new run removes. Any other file in it is left
 * alone.
 */
public final class OutputFolder {
  /** The run record, by which a folder of ours is known. */
  public static final String RUN_RECORD = "run.json";

  /** The value of the run record's {@code program}. */
  public static final String PROGRAM = "fieldsalt";

  /** How the names of our hidden folders begin. */
  static final String HIDDEN = ".fieldsalt-";

  /** A file of ours, at the top or in the folder of pages: nothing else is ever removed. */
  private static final Pattern OURS =
      Pattern.compile(
          "(zones|samples|rates|crops|next|ece[a-z0-9-]*|p-above[a-z0-9-]*|extrapolated[a-z0-9-]*"
              + "|fieldsalt|report|run|TASKDATA)"
              + "\\.(geojson|gpkg|shp|shx|dbf|cpg|prj|tif|sld|csv|html|json|zip)"
              + "|fields/[a-z0-9-]+\\.html");

  private final Path folder;

  private final List<Path> inputs;
  private final boolean mended;

  private OutputFolder(Path folder, List<Path> inputs, boolean mended) {
    this.folder = folder;
    this.inputs = List.copyOf(inputs);
    this.mended = mended;
  }

  /** Whether an earlier run into it was cut off, and the folder put back as it was before. */
  public boolean wasMended() {
    return mended;
  }

  /** Fills a folder with files. */
  public interface Content {
    /** Writes every file into an empty folder. */
    void writeInto(Path empty) throws IOException;
  }

  /**
   * The folder that results go to, checked before any long work.
   *
   * @param force whether a folder that holds files but is not ours may be written into
   * @param inputs files that are read, of which none is ever replaced or removed
   * @throws InputProblem if it is a file, holds files that are not ours, or cannot be written
   */
  public static OutputFolder open(Path folder, boolean force, List<Path> inputs) {
    Path real = realPath(folder);
    refuseFile(real);
    boolean mended = mend(real);
    refuseForeign(real, force);
    refuseReadOnly(real);
    return new OutputFolder(real, inputs, mended);
  }

  private static boolean mend(Path folder) {
    try {
      return Swap.putBack(folder);
    } catch (IOException e) {
      throw notWritable(folder, reason(e), e);
    }
  }

  private static Path realPath(Path folder) {
    try {
      return Files.exists(folder) ? folder.toRealPath() : folder.toAbsolutePath().normalize();
    } catch (IOException e) {
      return folder.toAbsolutePath().normalize();
    }
  }

  private static void refuseFile(Path folder) {
    for (Path above = folder; above != null; above = above.getParent()) {
      if (Files.exists(above, LinkOption.NOFOLLOW_LINKS) && !Files.isDirectory(above)) {
        throw new InputProblem(
            "output folder " + folder,
            "a file at " + above,
            "a folder, or a name not yet taken",
            "Name another folder with -o.");
      }
    }
  }

  private static void refuseForeign(Path folder, boolean force) {
    if (!force && Files.isDirectory(folder) && !entries(folder).isEmpty() && !isOurs(folder)) {
      throw new InputProblem(
          "output folder " + folder,
          "files that fieldsalt did not write (" + some(entries(folder)) + ")",
          "an empty folder, a new one, or one that fieldsalt wrote before",
          "Name another folder with -o, or add --force to write among these files.");
    }
  }

  private static String some(List<Path> entries) {
    String first = entries.get(0).getFileName().toString();
    return entries.size() == 1 ? first : first + " and " + (entries.size() - 1) + " more";
  }

  private static void refuseReadOnly(Path folder) {
    Path there = folder;
    while (!Files.exists(there)) {
      there = there.getParent();
    }
    if (!Files.isWritable(there)) {
      throw notWritable(folder, "no permission to write in " + there, null);
    }
  }

  private static InputProblem notWritable(Path folder, String found, Exception cause) {
    InputProblem problem =
        new InputProblem(
            "output folder " + folder,
            found,
            "a folder that this user may write to, with room on the disk",
            "Name another folder with -o, or free some room and run again.");
    if (cause != null) {
      problem.initCause(cause);
    }
    return problem;
  }

  private static List<Path> entries(Path folder) {
    try (Stream<Path> inside = Files.list(folder)) {
      return inside.sorted().toList();
    } catch (IOException e) {
      throw notWritable(folder, reason(e), e);
    }
  }

  private static boolean isOurs(Path folder) {
    return PROGRAM.equals(record(folder).path("program").asText());
  }

  private static JsonNode record(Path folder) {
    Path run = folder.resolve(RUN_RECORD);
    ObjectMapper mapper = new ObjectMapper();
    try {
      return Files.isRegularFile(run) ? mapper.readTree(run.toFile()) : mapper.createObjectNode();
    } catch (JsonProcessingException e) {
      return mapper.createObjectNode();
    } catch (IOException e) {
      throw notWritable(folder, reason(e), e);
    }
  }

  /**
   * Writes the content beside the folder and moves it in.
   *
   * @return the names of the files now there that this call wrote, sorted
   * @throws InputProblem if the disk is full or does not let itself be written, or if a file would
   *     take the place of an input
   */
  public List<String> replaceWith(Content content) {
    Path beside = null;
    try {
      beside = newFolderBeside();
      content.writeInto(beside);
      List<String> written = files(beside);
      written.forEach(name -> Inputs.refuse(folder.resolve(name), inputs));
      moveIn(beside);
      return written;
    } catch (UncheckedIOException e) {
      throw notWritable(folder, reason(e.getCause()), e.getCause());
    } catch (IOException e) {
      throw notWritable(folder, reason(e), e);
    } finally {
      deleteQuietly(beside);
    }
  }

  /** Names of the files in a folder and in folders of it, parts separated by a slash, sorted. */
  static List<String> files(Path folder) throws IOException {
    try (Stream<Path> inside = Files.walk(folder)) {
      return inside
          .filter(Files::isRegularFile)
          .map(p -> folder.relativize(p).toString().replace('\\', '/'))
          .sorted()
          .toList();
    }
  }

  /** Beside the folder if that is the same disk; a folder that is a disk of its own holds it. */
  private Path newFolderBeside() throws IOException {
    Path parent = folder.getParent();
    boolean ownDisk =
        parent == null
            || (Files.isDirectory(folder)
                && (!Files.isWritable(parent)
                    || !Files.getFileStore(folder).equals(Files.getFileStore(parent))));
    if (ownDisk) {
      return Files.createTempDirectory(folder, HIDDEN);
    }
    Files.createDirectories(parent);
    return Files.createTempDirectory(parent, HIDDEN);
  }

  private void moveIn(Path beside) throws IOException {
    if (!Files.exists(folder)) {
      openToAll(beside);
      move(beside, folder);
      return;
    }
    new Swap(folder, beside, oldFiles()).run();
  }

  /** A temporary folder is its owner's alone; the result should look like any new folder. */
  private void openToAll(Path beside) throws IOException {
    Path like = Files.createDirectory(beside.resolve(".like"));
    try {
      Files.setPosixFilePermissions(beside, Files.getPosixFilePermissions(like));
    } catch (UnsupportedOperationException e) {
      // A file system without such permissions needs none.
    } finally {
      Files.delete(like);
    }
  }

  private Set<String> oldFiles() {
    Set<String> old = new TreeSet<>();
    if (isOurs(folder)) {
      old.add(RUN_RECORD);
      record(folder).path("files").forEach(name -> old.add(name.asText()));
    }
    old.removeIf(name -> !OURS.matcher(name).matches() || isInput(folder.resolve(name)));
    return old;
  }

  private boolean isInput(Path file) {
    try {
      Inputs.refuse(file, inputs);
      return false;
    } catch (InputProblem e) {
      return true;
    }
  }

  static boolean isPlainName(String name) {
    return name.matches("(fields/)?[A-Za-z0-9][A-Za-z0-9._-]*");
  }

  static void move(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  static void deleteQuietly(Path path) {
    if (path == null || !Files.exists(path, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    try (Stream<Path> inside = Files.walk(path)) {
      for (Path each : inside.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(each);
      }
    } catch (IOException e) {
      // What cannot be deleted is left: the result itself is in place or untouched.
    }
  }

  private static String reason(IOException e) {
    if (e instanceof FileSystemException file && file.getReason() != null) {
      return file.getReason() + " (" + file.getFile() + ")";
    }
    if (e instanceof NoSuchFileException file) {
      return "a place where nothing can be made (" + file.getFile() + ")";
    }
    return e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
  }
}
