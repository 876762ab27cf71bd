package fieldsalt.read.job;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A piece of a job file with the place where it is written, before anything is known of its keys.
 */
sealed interface JobNode {
  /** File and line, or the option that set it. */
  String where();

  /** A word or number as written; quotes taken off. */
  record Scalar(String where, String text) implements JobNode {}

  /** A list. */
  record Items(String where, List<JobNode> items) implements JobNode {}

  /** Keys with values, in the order of the file. */
  record Entries(String where, Map<String, JobNode> entries) implements JobNode {
    /** Another block laid over this one; what it sets wins. */
    Entries overlaid(Entries top) {
      Map<String, JobNode> all = new LinkedHashMap<>(entries);
      top.entries()
          .forEach(
              (key, value) ->
                  all.merge(
                      key,
                      value,
                      (below, above) ->
                          below instanceof Entries b && above instanceof Entries a
                              ? b.overlaid(a)
                              : above));
      return new Entries(where, all);
    }
  }

  /** A key without a value: as if it were not there. */
  record Nothing(String where) implements JobNode {}
}
