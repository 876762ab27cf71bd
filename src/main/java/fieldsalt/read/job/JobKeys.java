package fieldsalt.read.job;

import fieldsalt.read.word.ResourceLines;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The catalogue of job keys ({@code job-keys.csv}): the parser, the template and the JSON Schema
 * all follow it. A new key is one new line there.
 */
public final class JobKeys {
  private static final List<JobKey> ALL =
      ResourceLines.of("job-keys.csv").stream().map(JobKey::ofLine).toList();
  private static final Branch ROOT = grow(ALL);

  private JobKeys() {}

  /** Every key, in the order of the catalogue. */
  public static List<JobKey> all() {
    return ALL;
  }

  /**
   * One place in the tree of keys: the key that ends here, if one does, and what may follow.
   *
   * @param free the branch under a name that the user writes, by its placeholder; at most one
   */
  record Branch(JobKey[] leaf, Map<String, Branch> named, Map<String, Branch> free) {
    static Branch bare() {
      return new Branch(new JobKey[1], new LinkedHashMap<>(), new LinkedHashMap<>());
    }

    Optional<JobKey> key() {
      return Optional.ofNullable(leaf[0]);
    }

    boolean hasChildren() {
      return !named.isEmpty() || !free.isEmpty();
    }

    private Branch child(String segment) {
      Map<String, Branch> where = segment.startsWith("{") ? free : named;
      return where.computeIfAbsent(segment, s -> bare());
    }
  }

  static Branch root() {
    return ROOT;
  }

  /** The key at a path of names, wherever placeholders stand; empty if there is none. */
  static Optional<JobKey> at(List<String> path) {
    Branch here = ROOT;
    for (String segment : path) {
      Branch named = here.named().get(segment);
      if (named == null && here.free().isEmpty()) {
        return Optional.empty();
      }
      here = named == null ? here.free().values().iterator().next() : named;
    }
    return here.key();
  }

  private static Branch grow(List<JobKey> keys) {
    Branch root = Branch.bare();
    for (JobKey key : keys) {
      Branch here = root;
      for (String segment : key.path()) {
        here = here.child(segment);
      }
      here.leaf()[0] = key;
    }
    return root;
  }
}
