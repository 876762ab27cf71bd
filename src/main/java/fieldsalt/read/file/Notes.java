package fieldsalt.read.file;

import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.InputProblem;
import fieldsalt.finding.InputProblem.Problem;
import fieldsalt.finding.Place;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * What reading has to report: findings, and problems that stop the work once everything was looked
 * at. Rows with the same trouble become one finding that names them all.
 */
public final class Notes {
  private final List<Problem> problems = new ArrayList<>();
  private final List<Finding> findings = new ArrayList<>();
  private final Map<Trouble, TreeSet<Integer>> rows = new LinkedHashMap<>();

  private record Trouble(Code code, String file, String word, String found, String done) {}

  public void problem(String where, String found, String expected, String remedy) {
    problems.add(new Problem(where, found, expected, remedy));
  }

  public void problem(InputProblem problem) {
    problems.addAll(problem.problems());
  }

  public void finding(Code code, Place place, String found, String done) {
    findings.add(new Finding(code, place, found, done));
  }

  public void row(Code code, SourceRow at, String found, String done) {
    rows.computeIfAbsent(new Trouble(code, at.file(), at.word(), found, done), t -> new TreeSet<>())
        .add(at.row());
  }

  public boolean hasProblems() {
    return !problems.isEmpty();
  }

  /** Throws all problems noted so far at once, if there is any. */
  public void stopIfProblems() {
    if (!problems.isEmpty()) {
      throw new InputProblem(List.copyOf(new java.util.LinkedHashSet<>(problems)));
    }
  }

  /** All findings, those of rows with the rows they concern. */
  public List<Finding> findings() {
    List<Finding> all = new ArrayList<>(findings);
    rows.forEach(
        (t, at) ->
            all.add(
                new Finding(
                    t.code(),
                    new Place.Rows(t.file(), t.word(), at, "", Set.of()),
                    t.found(),
                    t.done())));
    return List.copyOf(all);
  }
}
