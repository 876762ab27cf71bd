package fieldsalt.handover.folder;

import fieldsalt.finding.InputProblem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;

/** Files that were read: no output may take the place of one. */
public final class Inputs {
  private Inputs() {}

  /**
   * Refuses an output that is an input, by its real path and through links.
   *
   * @param output need not exist
   * @param inputs those that do not exist are passed over
   * @throws InputProblem naming both
   */
  public static void refuse(Path output, Collection<Path> inputs) {
    for (Path input : inputs) {
      if (isSame(output, input)) {
        throw new InputProblem(
            output.toString(),
            "a file that is read as input",
            "another name for the output",
            "Name another file or folder with -o; " + input.getFileName() + " is left as it is.");
      }
    }
  }

  private static boolean isSame(Path output, Path input) {
    try {
      return Files.exists(output) && Files.exists(input) && Files.isSameFile(output, input);
    } catch (IOException e) {
      return output.toAbsolutePath().normalize().equals(input.toAbsolutePath().normalize());
    }
  }
}
