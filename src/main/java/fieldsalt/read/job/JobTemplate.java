package fieldsalt.read.job;

import fieldsalt.read.job.JobKeys.Branch;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** A commented job file with every key, its unit and default. */
public final class JobTemplate {
  private static final int WIDTH = 34;

  private JobTemplate() {}

  /**
   * The text, valid YAML: only {@code fields} and {@code samples} are set, the rest is comments.
   */
  public static String text() {
    StringBuilder out = new StringBuilder();
    out.append("# A job for fieldsalt. Take the '#' off the lines that you need.\n");
    out.append(
        "# Every key but fields and samples has a default; paths are relative to this file.\n");
    write(out, JobKeys.root(), 0);
    return out.toString();
  }

  private static void write(StringBuilder out, Branch branch, int depth) {
    branch.named().forEach((name, below) -> entry(out, name, below, depth));
    branch.free().forEach((name, below) -> free(out, name, below, depth));
  }

  /** Keys of one field mean what they mean for the ranch: only those of its own are explained. */
  private static void ofField(StringBuilder out, int depth) {
    out.append(lead(depth, false)).append("by-field:\n");
    out.append(lead(depth + 1, false))
        .append("\"name of the field\": # for it alone: ")
        .append(
            JobKeys.all().stream()
                .filter(k -> k.path().get(0).equals(JobKeys.FIELD.get(0)))
                .map(k -> k.path().get(2))
                .distinct()
                .collect(Collectors.joining(", ")))
        .append('\n');
    JobKeys.all().stream()
        .filter(k -> k.path().get(0).equals(JobKeys.FIELD.get(0)) && k.path().size() == 3)
        .filter(k -> JobKeys.at(k.path().subList(2, 3)).isEmpty())
        .forEach(k -> line(out, depth + 2, k.path().get(2) + ": " + shown(k), k));
  }

  private static void entry(StringBuilder out, String name, Branch branch, int depth) {
    if (name.equals(JobKeys.FIELD.get(0))) {
      ofField(out, depth);
      return;
    }
    branch.key().ifPresent(key -> line(out, depth, name + ": " + shown(key), key));
    if (branch.hasChildren()) {
      String instead = branch.key().isPresent() ? "   # or, in place of the line above:" : "";
      out.append(lead(depth, false)).append(name).append(":").append(instead).append('\n');
      write(out, branch, depth + 1);
    }
  }

  private static void free(StringBuilder out, String placeholder, Branch branch, int depth) {
    String name = sample(placeholder);
    if (branch.key().isPresent()) {
      JobKey key = branch.key().get();
      boolean whole = key.example().matches("\"?[\\w-]+\"?: .*");
      line(out, depth, whole ? key.example() : name + ": " + key.example(), key);
    } else {
      out.append(lead(depth, false)).append(name).append(":\n");
      write(out, branch, depth + 1);
    }
  }

  private static String sample(String placeholder) {
    return Map.of("{name}", "\"Laboratory A\"", "{method}", "\"1:5\"", "{crop}", "alfalfa")
        .getOrDefault(placeholder, "name");
  }

  private static String shown(JobKey key) {
    String value = key.fallback().isEmpty() ? key.example() : key.fallback();
    boolean colon = value.contains(": ") || value.matches("\\d+:[\\d.]+");
    return colon ? "\"" + value + "\"" : value;
  }

  private static void line(StringBuilder out, int depth, String entry, JobKey key) {
    boolean set = List.of("fields", "samples").contains(key.name());
    String start = lead(depth, set) + entry;
    out.append(start)
        .append(" ".repeat(Math.max(2, WIDTH - start.length())))
        .append("# ")
        .append(key.doc())
        .append(note(key))
        .append('\n');
  }

  private static String note(JobKey key) {
    String unit = key.unit().isEmpty() ? "" : " [" + key.unit() + "]";
    String choice =
        key.type() instanceof JobType.Choice || key.type() instanceof JobTypeOfNumber
            ? "; " + key.type().expected()
            : "";
    String fallback = key.fallback().isEmpty() ? "; no default" : "; default " + key.fallback();
    return unit + choice + fallback;
  }

  private static String lead(int depth, boolean set) {
    return (set ? "" : "# ") + "  ".repeat(depth);
  }
}
