package fieldsalt.read.job;

import fieldsalt.read.job.JobKeys.Branch;
import java.util.List;
import java.util.Map;

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

  private static void entry(StringBuilder out, String name, Branch branch, int depth) {
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
