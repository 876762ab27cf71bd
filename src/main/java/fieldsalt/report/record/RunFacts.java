package fieldsalt.report.record;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the run record holds beside the page's contents.
 *
 * @param job every key of the job with the value that was used
 * @param versions of fieldsalt, Java and libraries, by name
 * @param files names of what was written into the folder, as far as known
 * @param stamp the time of the run, only if the user asked for it
 */
public record RunFacts(
    Map<String, Object> job,
    Map<String, String> versions,
    List<String> files,
    Optional<String> stamp) {
  public RunFacts {
    job = new LinkedHashMap<>(job);
    versions = new LinkedHashMap<>(versions);
    files = List.copyOf(files);
  }

  /** Of this version on this Java. */
  public static RunFacts of(
      Map<String, Object> job, String version, List<String> files, Optional<String> stamp) {
    Map<String, String> versions = new LinkedHashMap<>();
    versions.put("fieldsalt", version);
    versions.put("java", String.valueOf(Runtime.version().feature()));
    return new RunFacts(job, versions, files, stamp);
  }
}
