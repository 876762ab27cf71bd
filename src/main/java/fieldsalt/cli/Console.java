package fieldsalt.cli;

import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.InputProblem;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What a person reads: results on standard output, all else on standard error.
 *
 * @param terminal whether a person is watching, so that progress is worth showing
 */
record Console(PrintStream out, PrintStream err, boolean terminal) {
  /** Lines of findings that a person takes in above the result. */
  private static final int MOST_LINES = 12;

  private static final int PLACES = 4;

  /** What decides whether a map can be used at all comes first, what was only noted last. */
  private static final List<Set<Code>> WEIGHTIEST =
      List.of(
          EnumSet.of(
              Code.FIELD_FAULT,
              Code.FIELD_LEFT_OUT,
              Code.FIELD_WITHOUT_SITES,
              Code.DEFAULT_VARIOGRAM,
              Code.CALCULATED_ECE,
              Code.UNIT_SLIP,
              Code.UNIT_UNKNOWN,
              Code.METHOD_REFUSED,
              Code.METHOD_MISSING,
              Code.IMPOSSIBLE_ZONE,
              Code.CROP_UNKNOWN,
              Code.GROUND_WITHOUT_ZONE,
              Code.DRAFT_NOT_ON_MACHINE),
          EnumSet.of(
              Code.DOUBTFUL_READING,
              Code.DOUBTFUL_LAYER,
              Code.LABORATORY_APART,
              Code.DRIFT_NOT_USED,
              Code.SITES_IN_PATCH,
              Code.TWO_POPULATIONS,
              Code.OUTSIDE_FIELDS,
              Code.UNIT_MISSING,
              Code.IMPOSSIBLE,
              Code.NO_SPATIAL_PATTERN,
              Code.TOPSOIL_ONLY,
              Code.NAME_UNKNOWN,
              Code.DRAFT_FEW_SITES,
              Code.DRAFT_NO_BETTER_THAN_MEAN,
              Code.DRAFT_DRAINAGE_NOT_PROVED,
              Code.DRAFT_CALCULATED_ECE,
              Code.DRAFT_DEFAULT_VARIOGRAM,
              Code.DRAFT_TOPSOIL_ONLY,
              Code.DRAFT_SHALLOW_WATER_TABLE));

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

  /** Every finding, grouped by code. */
  void allFindings(List<Finding> findings) {
    byCode(findings)
        .forEach(
            (code, group) -> {
              err.println(code.id() + " (" + group.size() + ")");
              group.forEach(
                  f -> err.println("  " + f.where() + ": " + f.found() + ". " + f.done()));
            });
  }

  private static Map<Code, List<Finding>> byCode(List<Finding> findings) {
    return findings.stream()
        .collect(Collectors.groupingBy(Finding::code, LinkedHashMap::new, Collectors.toList()));
  }

  /** The weightiest findings, one line a kind with how many there are and where. */
  void findings(List<Finding> findings) {
    List<Map.Entry<Code, List<Finding>>> kinds = new ArrayList<>(byCode(findings).entrySet());
    kinds.sort(Comparator.comparingInt(e -> weight(e.getKey())));
    kinds.stream().limit(MOST_LINES).forEach(e -> kind(e.getKey(), e.getValue()));
    List<Map.Entry<Code, List<Finding>>> rest =
        kinds.subList(Math.min(MOST_LINES, kinds.size()), kinds.size());
    long more = rest.stream().mapToLong(e -> e.getValue().size()).sum();
    if (more > 0) {
      err.println(
          "and "
              + more
              + " more of "
              + (rest.size() == 1 ? "1 kind" : rest.size() + " kinds")
              + "; `fieldsalt check` lists them all");
    }
  }

  private static int weight(Code code) {
    for (int w = 0; w < WEIGHTIEST.size(); w++) {
      if (WEIGHTIEST.get(w).contains(code)) {
        return w;
      }
    }
    return WEIGHTIEST.size();
  }

  /** The first of a kind in full, and where the others are. */
  private void kind(Code code, List<Finding> group) {
    Finding first = group.get(0);
    StringBuilder line = new StringBuilder(code.id());
    line.append(" (").append(group.size()).append(") ").append(first.where()).append(": ");
    line.append(first.found()).append(". ").append(first.done());
    List<String> others =
        group.stream().skip(1).map(Finding::where).distinct().limit(PLACES).toList();
    if (!others.isEmpty()) {
      line.append(". Also ").append(String.join("; ", others));
      int left = group.size() - 1 - others.size();
      line.append(left > 0 ? " and " + left + " more" : "");
    }
    err.println(line);
  }
}
