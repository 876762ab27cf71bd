package fieldsalt.read.job;

import fieldsalt.finding.InputProblem.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The catalogue's defaults, read by the same rules as a job file. */
final class JobDefaults {
  private static final Map<List<String>, Object> VALUES = read();

  private JobDefaults() {}

  static Object value(List<String> path) {
    return VALUES.get(path);
  }

  private static Map<List<String>, Object> read() {
    List<Problem> problems = new ArrayList<>();
    JobCheck check = new JobCheck(problems);
    for (JobKey key : JobKeys.all()) {
      if (!key.fallback().isEmpty()) {
        JobAssignment.read(key.name() + "=" + key.fallback(), problems).ifPresent(check::check);
      }
    }
    if (!problems.isEmpty()) {
      throw new IllegalStateException("a default of the catalogue is wrong: " + problems);
    }
    return check.values();
  }
}
