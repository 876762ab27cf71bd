package fieldsalt.read.job;

import fieldsalt.finding.InputProblem;
import fieldsalt.finding.InputProblem.Problem;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One {@code key=value} of the command line. Segments of the key are divided by dots; a segment
 * that holds a dot is in double quotes. The value is written as in the file; lists also as {@code
 * a,b}.
 */
final class JobAssignment {
  private static final Pattern SEGMENT = Pattern.compile("\\G(?:\"([^\"]+)\"|([^.\"]+))(\\.|$)");

  private JobAssignment() {}

  /** The block of keys that it sets; empty, with a problem noted, if it is none. */
  static Optional<JobNode.Entries> read(String assignment, List<Problem> problems) {
    int equals = assignment.indexOf('=');
    String where = "--set " + assignment;
    List<String> path = equals < 1 ? List.of() : segments(assignment.substring(0, equals).strip());
    if (path.isEmpty()) {
      problems.add(new Problem(where, "no key and value", "key=value", "Example: --set cell-m=5."));
      return Optional.empty();
    }
    try {
      JobNode value = value(where, assignment.substring(equals + 1).strip(), path);
      return Optional.of(nested(where, path, value));
    } catch (InputProblem e) {
      problems.addAll(e.problems());
      return Optional.empty();
    }
  }

  private static JobNode value(String where, String text, List<String> path) {
    boolean listed =
        JobKeys.at(path).filter(k -> takesList(k.type())).isPresent()
            && text.contains(",")
            && !text.startsWith("[");
    if (!text.startsWith("[") && !text.startsWith("{") && !listed) {
      return text.isEmpty()
          ? new JobNode.Nothing(where)
          : new JobNode.Scalar(where, text.replaceAll("^\"(.*)\"$|^'(.*)'$", "$1$2"));
    }
    List<Problem> twice = new ArrayList<>();
    JobNode node = JobYaml.read(where, false, listed ? "[" + text + "]" : text, twice);
    if (!twice.isEmpty()) {
      throw new InputProblem(twice);
    }
    return node;
  }

  private static boolean takesList(JobType type) {
    return type instanceof JobType.Files || (type instanceof JobTypeOfWord word && word.isList());
  }

  private static List<String> segments(String key) {
    List<String> segments = new ArrayList<>();
    Matcher m = SEGMENT.matcher(key);
    int end = 0;
    while (end < key.length() && m.find()) {
      segments.add(m.group(1) != null ? m.group(1) : m.group(2).strip());
      end = m.end();
    }
    return end == key.length() && !key.endsWith(".") ? segments : List.of();
  }

  private static JobNode.Entries nested(String where, List<String> path, JobNode value) {
    JobNode node = value;
    for (int i = path.size() - 1; i >= 0; i--) {
      Map<String, JobNode> one = new LinkedHashMap<>();
      one.put(path.get(i), node);
      node = new JobNode.Entries(where, one);
    }
    return (JobNode.Entries) node;
  }
}
