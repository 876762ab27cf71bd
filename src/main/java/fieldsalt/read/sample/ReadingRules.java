package fieldsalt.read.sample;

import fieldsalt.quantity.DepthRange;
import fieldsalt.quantity.Method;
import fieldsalt.quantity.ReadingKind;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.word.ReadingUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Pattern;

/** What a job says about rows that do not say it themselves. */
public final class ReadingRules {
  private static final Pattern DEPTH_SUFFIX =
      Pattern.compile(
          "^(.+?)[\\s_/-]+\\(?(\\d+(?:\\.\\d+)?\\s*(?:cm|in|ft|\")?\\s*(?:-|\u2013|to)\\s*\\d+(?:\\.\\d+)?"
              + "\\s*(?:cm|in|inch|inches|ft|\")?)\\)?$",
          Pattern.CASE_INSENSITIVE);

  private final JobDocument job;
  private final Map<String, LabRule> labs = new LinkedHashMap<>();

  private final Set<String> siteIds;
  private final boolean oneFile;
  private final LabRule general;
  private final List<String> confirmed;
  private final Pattern pattern;
  private final boolean mapsEc;
  private final boolean local;

  /**
   * @param siteIds ids of the file of sites, lower case; empty if there is none
   * @param oneFile whether there is one samples file, so that a row's number alone names it
   */
  public ReadingRules(JobDocument job, Set<String> siteIds, boolean oneFile) {
    this.oneFile = oneFile;
    this.job = job;
    this.siteIds = Set.copyOf(siteIds);
    this.general = LabRule.general(job);
    this.confirmed = job.names("confirm");
    this.pattern = job.text("id-pattern").map(Pattern::compile).orElse(DEPTH_SUFFIX);
    this.mapsEc = property().equalsIgnoreCase("ec");
    this.local = job.word("crs").equals("local");
    for (String name : job.names("laboratory")) {
      labs.put(name.toLowerCase(Locale.ROOT), LabRule.of(job, name).or(general));
    }
  }

  /** What a job says of one laboratory, or of rows in general. */
  record LabRule(
      String name,
      Optional<Method> method,
      Optional<ReadingKind> reading,
      Optional<ReadingUnit> unit,
      OptionalDouble tdsFactor,
      Optional<String> ionsMethod) {

    private static LabRule of(JobDocument job, String name) {
      return new LabRule(
          name,
          job.text("laboratory", name, "method").flatMap(Method::of),
          job.text("laboratory", name, "reading").map(ReadingRules::kind),
          job.text("laboratory", name, "unit").flatMap(ReadingUnit::of),
          job.number("laboratory", name, "tds-factor"),
          job.text("laboratory", name, "ions-method"));
    }

    private static LabRule general(JobDocument job) {
      return new LabRule(
          "",
          job.text("defaults.method").flatMap(Method::of),
          job.text("defaults.reading").map(ReadingRules::kind),
          job.text("defaults.unit").flatMap(ReadingUnit::of),
          job.number("tds-factor"),
          job.text("defaults.ions-method"));
    }

    /** This rule, and another one where it says nothing. */
    private LabRule or(LabRule other) {
      return new LabRule(
          name,
          method.or(other::method),
          reading.or(other::reading),
          unit.or(other::unit),
          tdsFactor.isPresent() ? tdsFactor : other.tdsFactor,
          ionsMethod.or(other::ionsMethod));
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
      return labs.size() == 1
          ? labs.values().stream().filter(lab -> !hasFiles(lab)).findFirst()
          : Optional.empty();
    }
    return labs.isEmpty()
        ? Optional.empty()
        : Optional.ofNullable(labs.get(said.toLowerCase(Locale.ROOT)));
  }

  /** The laboratory of a file's rows that name none: by the job, or empty text. */
  String laboratoryOf(String file) {
    for (LabRule lab : labs.values()) {
      if (job.paths("laboratory", lab.name(), "files").stream().anyMatch(p -> p.endsWith(file))) {
        return lab.name();
      }
    }
    return "";
  }

  private boolean hasFiles(LabRule lab) {
    return job.given("laboratory", lab.name(), "files");
  }

  private LabRule rule(String laboratory) {
    return laboratory(laboratory).orElse(general);
  }

  Optional<Method> method(String laboratory) {
    return rule(laboratory).method();
  }

  ReadingKind reading(String laboratory) {
    return rule(laboratory).reading().orElse(ReadingKind.UNKNOWN);
  }

  Optional<ReadingUnit> unit(String laboratory) {
    return rule(laboratory).unit();
  }

  OptionalDouble tdsFactor(String laboratory) {
    return rule(laboratory).tdsFactor();
  }

  Optional<String> ionsMethod(String laboratory) {
    return rule(laboratory).ionsMethod();
  }

  /** What a row is called in the job: its number, with its file where there are several. */
  String name(SourceRow row) {
    return oneFile ? String.valueOf(row.row()) : row.toString();
  }

  /** The unit that the user confirmed for one row, by its number or the sample's id. */
  Optional<ReadingUnit> confirmed(SourceRow row, String id) {
    if (confirmed.isEmpty()) {
      return Optional.empty();
    }
    return List.of(name(row), row.toString(), id).stream()
        .filter(confirmed::contains)
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
    return pattern;
  }

  boolean idPatternGiven() {
    return job.given("id-pattern");
  }

  /** Whether coordinates are metres without a place on the globe. */
  boolean isLocal() {
    return local;
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
    return mapsEc;
  }

  /** Our name for a column to the headers that the job gives for it. */
  public Map<String, List<String>> mapping() {
    Map<String, List<String>> mapping = new LinkedHashMap<>();
    for (String ours : job.names("columns")) {
      mapping.put(ours, job.texts("columns", ours));
    }
    return mapping;
  }
}
