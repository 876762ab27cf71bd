package fieldsalt.read.sample;

import fieldsalt.quantity.DepthRange;
import fieldsalt.quantity.Method;
import fieldsalt.quantity.ReadingKind;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.word.ReadingUnit;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
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
  private final PersonsWord word;
  private final LabRule general;
  private final Pattern pattern;
  private final boolean mapsEc;
  private final boolean local;

  /**
   * @param siteIds ids of the file of sites, lower case; empty if there is none
   * @param oneFile whether there is one samples file, so that a row's number alone names it
   */
  public ReadingRules(JobDocument job, Set<String> siteIds, boolean oneFile) {
    this.word = PersonsWord.of(job, oneFile);
    this.job = job;
    this.siteIds = Set.copyOf(siteIds);
    this.general = LabRule.of("", key -> job.text("defaults." + key), job.number("tds-factor"));
    this.pattern = job.text("id-pattern").map(Pattern::compile).orElse(DEPTH_SUFFIX);
    this.mapsEc = property().equalsIgnoreCase("ec");
    this.local = job.word("crs").equals("local");
    for (String name : job.names("laboratory")) {
      LabRule rule =
          LabRule.of(
              name,
              key -> job.text("laboratory", name, key),
              job.number("laboratory", name, "tds-factor"));
      labs.put(name.toLowerCase(Locale.ROOT), rule.or(general));
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

    private static LabRule of(
        String name, Function<String, Optional<String>> text, OptionalDouble tdsFactor) {
      return new LabRule(
          name,
          text.apply("method").flatMap(Method::of),
          text.apply("reading").map(r -> ReadingKind.valueOf(r.toUpperCase(Locale.ROOT))),
          text.apply("unit").flatMap(ReadingUnit::of),
          tdsFactor,
          text.apply("ions-method"));
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

  /** The rule for a laboratory as a row names it; the general one where the job has none. */
  LabRule ruleOf(String laboratory) {
    return named(laboratory).orElse(general);
  }

  /** The job's spelling of a laboratory, or the row's where the job does not name it. */
  String laboratory(String inRow) {
    return named(inRow).map(LabRule::name).orElse(inRow);
  }

  /** Rows that name no laboratory are of the only one that the job names. */
  private Optional<LabRule> named(String laboratory) {
    if (laboratory.isEmpty()) {
      return labs.values().stream().filter(lab -> labs.size() == 1 && !hasFiles(lab)).findFirst();
    }
    return Optional.ofNullable(labs.get(laboratory.toLowerCase(Locale.ROOT)));
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

  /** What a row is called in the job: its number, with its file where there are several. */
  String name(SourceRow row) {
    return word.name(row);
  }

  /** The unit that the user confirmed for one row, by its number or the sample's id. */
  Optional<ReadingUnit> confirmed(SourceRow row, String id) {
    return word.unit(row, id);
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
}
