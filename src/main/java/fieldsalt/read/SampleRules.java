package fieldsalt.read;

import fieldsalt.quantity.DepthRange;
import fieldsalt.quantity.Method;
import fieldsalt.quantity.ReadingKind;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Pattern;

/** What a job says about rows that do not say it themselves. */
final class SampleRules {
  private static final Pattern DEPTH_SUFFIX =
      Pattern.compile(
          "^(.+?)[\\s_/-]+\\(?(\\d+(?:\\.\\d+)?\\s*(?:cm|in|ft|\")?\\s*(?:-|\u2013|to)\\s*\\d+(?:\\.\\d+)?"
              + "\\s*(?:cm|in|inch|inches|ft|\")?)\\)?$",
          Pattern.CASE_INSENSITIVE);

  private final JobDocument job;
  private final Map<String, LabRule> labs = new LinkedHashMap<>();

  private final Set<String> siteIds;

  /**
   * @param siteIds ids of the file of sites, lower case; empty if there is none
   */
  SampleRules(JobDocument job, Set<String> siteIds) {
    this.job = job;
    this.siteIds = Set.copyOf(siteIds);
    for (String name : job.names("laboratory")) {
      labs.put(name.toLowerCase(Locale.ROOT), new LabRule(job, name));
    }
  }

  /** What a job says of one laboratory. */
  record LabRule(JobDocument job, String name) {
    Optional<Method> method() {
      return job.text("laboratory", name, "method").flatMap(Method::of);
    }

    Optional<ReadingKind> reading() {
      return job.text("laboratory", name, "reading").map(SampleRules::kind);
    }

    Optional<ReadingUnit> unit() {
      return job.text("laboratory", name, "unit").flatMap(ReadingUnit::of);
    }

    OptionalDouble tdsFactor() {
      return job.number("laboratory", name, "tds-factor");
    }

    Optional<String> ionsMethod() {
      return job.text("laboratory", name, "ions-method");
    }
  }

  private static ReadingKind kind(String word) {
    return ReadingKind.valueOf(word.toUpperCase(Locale.ROOT));
  }

  /**
   * The rule for a laboratory as a row names it; the only one of the job for rows that name none.
   */
  Optional<LabRule> laboratory(String said) {
    if (said.isEmpty()) {
      return labs.size() == 1 ? labs.values().stream().findFirst() : Optional.empty();
    }
    return Optional.ofNullable(labs.get(said.toLowerCase(Locale.ROOT)));
  }

  Optional<Method> method(String laboratory) {
    return laboratory(laboratory)
        .flatMap(LabRule::method)
        .or(() -> job.text("defaults.method").flatMap(Method::of));
  }

  ReadingKind reading(String laboratory) {
    return laboratory(laboratory)
        .flatMap(LabRule::reading)
        .or(() -> job.text("defaults.reading").map(SampleRules::kind))
        .orElse(ReadingKind.UNKNOWN);
  }

  Optional<ReadingUnit> unit(String laboratory) {
    return laboratory(laboratory)
        .flatMap(LabRule::unit)
        .or(() -> job.text("defaults.unit").flatMap(ReadingUnit::of));
  }

  OptionalDouble tdsFactor(String laboratory) {
    OptionalDouble own =
        laboratory(laboratory).map(LabRule::tdsFactor).orElse(OptionalDouble.empty());
    return own.isPresent() ? own : job.number("tds-factor");
  }

  Optional<String> ionsMethod(String laboratory) {
    return laboratory(laboratory)
        .flatMap(LabRule::ionsMethod)
        .or(() -> job.text("defaults.ions-method"));
  }

  /** The unit that the user confirmed for one row, by its number or the sample's id. */
  Optional<ReadingUnit> confirmed(SourceRow row, String id) {
    if (job.names("confirm").isEmpty()) {
      return Optional.empty();
    }
    return List.of(String.valueOf(row.row()), row.toString(), id).stream()
        .filter(name -> !name.isBlank())
        .flatMap(name -> job.text("confirm", name).stream())
        .findFirst()
        .flatMap(ReadingUnit::of);
  }

  DepthRange depth() {
    return job.depth("defaults.depth-cm").orElseThrow();
  }

  boolean depthGiven() {
    return job.given("defaults.depth-cm");
  }

  Optional<String> depthUnit() {
    return job.text("depth-unit");
  }

  Optional<Boolean> dayFirst() {
    return job.text("date-order").map(order -> order.equals("dmy"));
  }

  /** The pattern whose first group is the site's id; ours strips a depth at the id's end. */
  Pattern idPattern() {
    return job.text("id-pattern").map(Pattern::compile).orElse(DEPTH_SUFFIX);
  }

  boolean idPatternGiven() {
    return job.given("id-pattern");
  }

  /** Whether coordinates are metres without a place on the globe. */
  boolean isLocal() {
    return job.word("crs").equals("local");
  }

  /** Whether the file of sites knows an id's beginning but not the whole id. */
  boolean isSiteOnly(String beginning, String whole) {
    return siteIds.contains(beginning.toLowerCase(Locale.ROOT))
        && !siteIds.contains(whole.toLowerCase(Locale.ROOT));
  }

  String property() {
    return job.word("property.column");
  }

  boolean mapsEc() {
    return property().equalsIgnoreCase("ec");
  }

  /** Our name for a column to the headers that the job gives for it. */
  Map<String, List<String>> mapping() {
    Map<String, List<String>> mapping = new LinkedHashMap<>();
    for (String ours : job.names("columns")) {
      mapping.put(ours, job.texts("columns", ours));
    }
    return mapping;
  }
}
