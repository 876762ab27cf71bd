package fieldsalt.cli;

import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.InputProblem;
import java.io.PrintStream;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What a person reads: results on standard output, all else on standard error.
 *
 * @param terminal whether a person is watching, so that progress is worth showing
 */
record Console(PrintStream out, PrintStream err, boolean terminal) {
  private static final int SHOWN_PER_CODE = 5;

  void result(String line) {
    out.println(line);
  }

  void note(String line) {
    err.println(line);
  }

  void problem(InputProblem problem) {
    err.println("The input cannot be used:");
    for (InputProblem.Problem p : problem.problems()) {
      err.println("  " + p.where());
      err.println("    found:    " + p.found());
      err.println("    expected: " + p.expected());
      err.println("    do:       " + p.remedy());
    }
  }

  void fault(Throwable e) {
    String message = e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
    err.println("fieldsalt failed, and the fault is not yours: " + message);
    err.println("Run it again with --debug and send the trace to whoever maintains it.");
  }

  /** Findings grouped by code; of a long group the first few, unless all are asked for. */
  void findings(List<Finding> findings, boolean all) {
    Map<Code, List<Finding>> byCode = new LinkedHashMap<>();
    for (Finding f : findings) {
      byCode.computeIfAbsent(f.code(), c -> new java.util.ArrayList<>()).add(f);
    }
    byCode.forEach((code, group) -> group(code, group, all ? group.size() : SHOWN_PER_CODE));
  }

  private void group(Code code, List<Finding> group, int shown) {
    err.println(code.id() + " (" + group.size() + ")");
    group.stream()
        .limit(shown)
        .forEach(f -> err.println("  " + f.where() + ": " + f.found() + ". " + f.done()));
    if (group.size() > shown) {
      err.println(
          "  ... and " + (group.size() - shown) + " more; `fieldsalt check` lists them all");
    }
  }
}
