package fieldsalt.cli;

import fieldsalt.finding.InputProblem;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;
import picocli.CommandLine.ParseResult;

/** Entry point: parses, runs, and turns what went wrong into a message and an exit code. */
public final class Main {
  private Main() {}

  /** Runs the command line and exits with its code. */
  public static void main(String[] args) {
    PrintStream err = utf8(new FileOutputStream(FileDescriptor.err));
    int code = run(args, new FileOutputStream(FileDescriptor.out), err, isTerminal());
    err.flush();
    System.exit(code);
  }

  /** Runs one command, and says so if its results could not be printed. */
  static int run(String[] args, OutputStream output, PrintStream err, boolean terminal) {
    ResultStream results = new ResultStream(output);
    PrintStream out = utf8(results);
    Console console = new Console(out, err, terminal);
    int code = run(args, console);
    out.flush();
    results.trouble().ifPresent(console::problem);
    return results.trouble().isPresent() && code != Exit.FAULT ? Exit.INPUT : code;
  }

  /**
   * Runs one command without exiting.
   *
   * @return an exit code of {@link Exit}
   */
  static int run(String[] args, Console console) {
    CommandLine line = Commands.line(args, console);
    line.setOut(new PrintWriter(console.out(), true, StandardCharsets.UTF_8));
    line.setErr(new PrintWriter(console.err(), true, StandardCharsets.UTF_8));
    line.setCaseInsensitiveEnumValuesAllowed(true);
    line.setAbbreviatedOptionsAllowed(false);
    line.setExpandAtFiles(false);
    line.setUsageHelpWidth(100);
    line.setParameterExceptionHandler(new UsageErrors());
    line.setExecutionExceptionHandler((e, cmd, parsed) -> explain(e, parsed, console));
    try {
      return line.execute(args);
    } catch (OutOfMemoryError e) {
      console.problem(tooLarge());
      return Exit.INPUT;
    } catch (StackOverflowError e) {
      console.fault(e);
      return Exit.FAULT;
    }
  }

  private static InputProblem tooLarge() {
    return new InputProblem(
        "memory",
        Runtime.getRuntime().maxMemory() / 1_000_000 + " MB, which this job does not fit into",
        "a job that fits into the memory given",
        "Give more memory: FIELDSALT_OPTS=-Xmx4g fieldsalt ...");
  }

  private static int explain(Exception e, ParseResult parsed, Console console) {
    if (wantsTrace(parsed)) {
      e.printStackTrace(console.err());
    }
    if (e instanceof InputProblem problem) {
      console.problem(problem);
      return Exit.INPUT;
    }
    console.fault(e);
    return Exit.FAULT;
  }

  private static boolean wantsTrace(ParseResult parsed) {
    return parsed.expandedArgs().contains("--debug")
        || (parsed.hasSubcommand() && wantsTrace(parsed.subcommand()));
  }

  /** Whether a person is watching: on JDK 17 only a terminal has a console, later any process. */
  @SuppressWarnings("SystemConsoleNull") // JDK 22 and later are asked by isTerminal
  private static boolean isTerminal() {
    java.io.Console console = System.console();
    if (console == null) {
      return false;
    }
    try {
      return (boolean) java.io.Console.class.getMethod("isTerminal").invoke(console);
    } catch (ReflectiveOperationException e) {
      return true;
    }
  }

  private static PrintStream utf8(OutputStream stream) {
    return new PrintStream(stream, false, StandardCharsets.UTF_8);
  }
}
