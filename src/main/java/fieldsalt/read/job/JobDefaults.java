package fieldsalt.read.job;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The catalogue's defaults as values; they are typed by their keys, without a YAML parser. */
final class JobDefaults {
  private static final Map<List<String>, Object> VALUES = read();

  private JobDefaults() {}

  static Object value(List<String> path) {
    return VALUES.get(path);
  }

  private static Map<List<String>, Object> read() {
    Map<List<String>, Object> values = new HashMap<>();
    for (JobKey key : JobKeys.all()) {
      if (!key.fallback().isEmpty()) {
        values.put(key.path(), typed(key.type(), key.fallback()));
      }
    }
    return values;
  }

  /**
   * The value of a default as the catalogue writes it: a word, or a list of words in square
   * brackets.
   *
   * @throws IllegalStateException if it is not of the type
   */
  static Object typed(JobType type, String text) {
    try {
      return text.startsWith("[")
          ? type.value(
              List.of(text.substring(1, text.length() - 1).strip().split("\\s*,\\s*")), true)
          : type.value(List.of(text), false);
    } catch (JobType.Refused e) {
      throw new IllegalStateException("a default of the catalogue is wrong: " + text, e);
    }
  }
}
