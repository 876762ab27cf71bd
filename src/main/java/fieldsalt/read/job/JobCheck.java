package fieldsalt.read.job;

import fieldsalt.finding.InputProblem.Problem;
import fieldsalt.read.job.JobKeys.Branch;
import fieldsalt.read.word.NearestWord;
import fieldsalt.read.word.PlainText;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Walks a job's keys along the catalogue: typed values out, everything wrong noted at once. */
final class JobCheck {
  private final List<Problem> problems;
  private final Map<List<String>, Object> values = new LinkedHashMap<>();
  private final Map<List<String>, String> places = new LinkedHashMap<>();

  JobCheck(List<Problem> problems) {
    this.problems = problems;
  }

  /** Values by path, in the order of the file. */
  Map<List<String>, Object> values() {
    return values;
  }

  /** Where each value is written, by path. */
  Map<List<String>, String> places() {
    return places;
  }

  void check(JobNode node) {
    if (node instanceof JobNode.Entries entries) {
      walk(entries, JobKeys.root(), List.of());
    } else if (!(node instanceof JobNode.Nothing)) {
      problems.add(
          new Problem(
              node.where(),
              "a job that is not a list of keys",
              "lines of key: value",
              "Start from what the command fieldsalt job prints."));
    }
  }

  private void walk(JobNode.Entries entries, Branch branch, List<String> path) {
    entries.entries().forEach((name, value) -> step(name, value, branch, path));
  }

  private void step(String name, JobNode value, Branch branch, List<String> path) {
    Branch named = branch.named().get(name);
    if (named != null) {
      visit(value, named, with(path, name));
      return;
    }
    Map.Entry<String, Branch> free = branch.free().entrySet().stream().findFirst().orElse(null);
    if (free == null) {
      problems.add(unknown(value.where(), with(path, name), branch));
      return;
    }
    Optional<String> canonical = PlaceholderName.canonical(free.getKey(), name);
    if (canonical.isEmpty()) {
      problems.add(
          new Problem(
              value.where(),
              "the key " + String.join(".", with(path, name)),
              PlaceholderName.expected(free.getKey()),
              PlaceholderName.remedy(free.getKey(), name)));
      return;
    }
    visit(value, free.getValue(), with(path, canonical.get()));
  }

  private void visit(JobNode node, Branch branch, List<String> path) {
    if (node instanceof JobNode.Entries entries) {
      if (branch.hasChildren()) {
        walk(entries, branch, path);
      } else {
        wrongShape(node, path, "a block of keys", branch);
      }
    } else if (node instanceof JobNode.Scalar scalar) {
      leaf(node, List.of(scalar.text()), false, branch, path);
    } else if (node instanceof JobNode.Items items) {
      List<String> words = new ArrayList<>();
      for (JobNode item : items.items()) {
        if (item instanceof JobNode.Scalar scalar) {
          words.add(scalar.text());
        } else {
          wrongShape(item, path, "a block or an empty place in a list", branch);
          return;
        }
      }
      leaf(node, words, true, branch, path);
    }
  }

  private void leaf(
      JobNode node, List<String> words, boolean list, Branch branch, List<String> path) {
    JobKey key = branch.key().orElse(null);
    if (key == null) {
      wrongShape(node, path, "a value", branch);
      return;
    }
    try {
      values.put(path, key.type().value(words, list));
      places.put(path, node.where());
    } catch (JobType.Refused e) {
      problems.add(
          new Problem(
              node.where() + ", key " + String.join(".", path),
              PlainText.cut(e.getMessage()),
              key.type().expected(),
              "This key means: " + key.doc() + "."));
    }
  }

  private void wrongShape(JobNode node, List<String> path, String found, Branch branch) {
    String inside =
        branch.named().isEmpty()
            ? branch
                .key()
                .map(k -> k.type().expected())
                .orElse("names with values, indented below it")
            : "keys indented below it: " + String.join(", ", branch.named().keySet());
    problems.add(
        new Problem(
            node.where() + ", key " + String.join(".", path),
            found,
            inside,
            "See what the command fieldsalt job prints."));
  }

  private static Problem unknown(String where, List<String> path, Branch branch) {
    String name = path.get(path.size() - 1);
    List<String> siblings = List.copyOf(branch.named().keySet());
    String nearest = NearestWord.of(name, siblings).orElse("");
    Optional<String> elsewhere =
        JobKeys.all().stream()
            .filter(key -> key.path().get(key.path().size() - 1).equals(name))
            .map(JobKey::name)
            .findFirst();
    String above = String.join(".", path.subList(0, path.size() - 1));
    String meant = elsewhere.orElse(above.isEmpty() ? nearest : above + "." + nearest);
    return new Problem(
        where,
        "the unknown key " + PlainText.cut(String.join(".", path)),
        above.isEmpty() ? "a key of the job file" : "one of " + String.join(", ", siblings),
        "Did you mean " + meant + "? (The command fieldsalt job prints every key.)");
  }

  private static List<String> with(List<String> path, String name) {
    return Stream.concat(path.stream(), Stream.of(name)).toList();
  }
}
