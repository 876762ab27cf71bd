package fieldsalt.read.job;

import fieldsalt.quantity.DepthRange;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;

/** Every key of a job that has a value, nested as in the file. */
final class EffectiveJob {
  private final Map<List<String>, Object> values;
  private final Function<List<String>, Optional<Object>> value;

  /**
   * @param values that are given
   * @param value of a key, given or default
   */
  EffectiveJob(Map<List<String>, Object> values, Function<List<String>, Optional<Object>> value) {
    this.values = values;
    this.value = value;
  }

  Map<String, Object> nested() {
    Map<String, Object> all = new LinkedHashMap<>();
    for (JobKey key : JobKeys.all()) {
      if (key.path().stream().noneMatch(s -> s.startsWith("{"))) {
        value.apply(key.path()).ifPresent(v -> put(all, key.path(), v));
      } else {
        new TreeMap<>(freeValues(key)).forEach((name, path) -> put(all, path, values.get(path)));
      }
    }
    return all;
  }

  private Map<String, List<String>> freeValues(JobKey key) {
    Map<String, List<String>> found = new LinkedHashMap<>();
    for (List<String> path : values.keySet()) {
      if (JobKeys.at(path).filter(key::equals).isPresent()) {
        found.put(String.join("\u0000", path), path);
      }
    }
    return found;
  }

  @SuppressWarnings("unchecked") // the maps inside are made here, and only here
  private static void put(Map<String, Object> all, List<String> path, Object value) {
    Map<String, Object> here = all;
    for (String segment : path.subList(0, path.size() - 1)) {
      Object below = here.get(segment);
      if (!(below instanceof Map)) {
        below = new LinkedHashMap<String, Object>();
        here.put(segment, below);
      }
      here = (Map<String, Object>) below;
    }
    here.put(path.get(path.size() - 1), plain(value));
  }

  private static Object plain(Object value) {
    if (value instanceof DepthRange d) {
      return List.of(d.topCm(), d.bottomCm());
    }
    if (value instanceof List<?> items) {
      return items.stream().map(EffectiveJob::plain).toList();
    }
    return value instanceof Path p ? p.toString() : value;
  }
}
