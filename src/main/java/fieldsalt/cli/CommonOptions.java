package fieldsalt.cli;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Option;

/** Options that every command which reads a job understands. */
final class CommonOptions {
  @Option(
      names = "--set",
      paramLabel = "key=value",
      description = "Overrides a key of the job file, e.g. --set gypsum.target-esp=8. Repeatable.")
  List<String> set = new ArrayList<>();

  @Option(names = "--quiet", description = "Only results and problems, no findings, no progress.")
  boolean quiet;

  @Option(
      names = "--strict",
      description = "Findings become a failure (exit 3) and nothing is written.")
  boolean strict;

  @Option(
      names = "--timings",
      description = "Prints the seconds of each stage on standard error at the end.")
  boolean timings;

  @Option(names = "--debug", description = "Prints the trace of a failure.")
  boolean debug;
}
