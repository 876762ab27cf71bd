package fieldsalt.cli;

import java.io.PrintWriter;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Tells what of a command line was not understood, in a line or two that stay on the screen. */
final class UsageErrors implements CommandLine.IParameterExceptionHandler {
  @Override
  public int handleParseException(ParameterException e, String[] args) {
    PrintWriter err = e.getCommandLine().getErr();
    err.println(message(e));
    UnmatchedArgumentException.printSuggestions(e, err);
    err.println(
        "`" + e.getCommandLine().getCommandSpec().qualifiedName() + " --help` shows its use.");
    return Exit.USAGE;
  }

  private static String message(ParameterException e) {
    String value = e.getValue();
    return value != null && isForeign(value)
        ? "The name '"
            + value
            + "' holds letters that this terminal's character set does not: set LC_ALL=C.UTF-8 and"
            + " run again."
        : e.getMessage();
  }

  /** Whether a word cannot be a file's name on this system. */
  private static boolean isForeign(String word) {
    try {
      Path unused = Path.of(word);
      return false;
    } catch (InvalidPathException e) {
      return true;
    }
  }
}
