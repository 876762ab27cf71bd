package fieldsalt.read.job;

import fieldsalt.read.word.ResourceLines;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The catalogue of job keys ({@code job-keys.csv}): the parser, the template and the JSON Schema
 * all follow it. A new key is one new line there.
 */
public final class JobKeys {
  /** First words of the keys that may be said for one field too. */
  private static final Set<String> BY_FIELD =
      Set.of(
          "crop",
          "root-zone-cm",
          "uptake",
          "water",
          "drainage",
          "water-table-cm",
          "zones",
          "leaching",
          "gypsum",
          "prices");

  /** Under which they stand, and the placeholder of the field's name. */
  static final List<String> FIELD = List.of("by-field", "{field}");

  private static final List<JobKey> ALL = all(ResourceLines.of("job-keys.csv"));
  private static final Branch ROOT = grow(ALL);

  private JobKeys() {}

  private static List<JobKey> all(List<String> lines) {
    List<JobKey> all = new ArrayList<>(lines.stream().map(JobKey::ofLine).toList());
    List<JobKey> ofField =
        all.stream()
            .filter(key -> BY_FIELD.contains(key.path().get(0)) && !key.name().contains("{"))
            .filter(key -> !key.name().equals("zones.file"))
            .map(JobKey::ofField)
            .toList();
    all.addAll(ofField);
    return List.copyOf(all);
  }

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
