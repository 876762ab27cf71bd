package fieldsalt.read.job;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * One key of the job file.
 *
 * @param path its segments; {@code {name}} stands for a name that the user writes
 * @param type what it may hold
 * @param unit the unit, or empty text
 * @param fallback the default as it would be written, or empty text
 * @param example a value, or a whole entry for keys that end in a placeholder
 * @param doc one line for people
 */
public record JobKey(
    List<String> path, JobType type, String unit, String fallback, String example, String doc) {
  private static final Pattern COLUMN = Pattern.compile("(?<=^|\\s);(?=\\s|$)");

  public JobKey {
    path = List.copyOf(path);
  }

  /** The key with dots between its segments. */
  public String name() {
    return String.join(".", path);
  }

  /** The same key for one field; it has no default of its own. */
  JobKey ofField() {
    List<String> own = new ArrayList<>(JobKeys.FIELD);
    own.addAll(path);
    return new JobKey(own, type, unit, "", example, doc);
  }

  static JobKey ofLine(String line) {
    String[] cells = COLUMN.split(line, 6);
    if (cells.length != 6) {
      throw new IllegalStateException("six columns are needed: " + line);
    }
    return new JobKey(
        List.of(cells[0].trim().split("\\.")),
        JobType.of(cells[1].trim()),
        cells[2].trim(),
        cells[3].trim(),
        cells[4].trim(),
        cells[5].trim());
  }
}
