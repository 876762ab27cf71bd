package fieldsalt.read.field;

import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.InputProblem;
import fieldsalt.finding.InputProblem.Problem;
import fieldsalt.finding.Place;
import fieldsalt.quantity.Texture;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.word.NearestWord;
import fieldsalt.read.word.TextureWords;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The job as it is for each field: the job's own keys, what the boundary file says of the field
 * over them, and what {@code by-field} says over both.
 */
public final class FieldJobs {
  /** Properties of a boundary, and the key that each stands for. */
  static final Map<String, String> PROPERTIES = properties();

  private final JobDocument ranch;
  private final Map<String, JobDocument> own = new LinkedHashMap<>();
  private final List<Finding> findings = new ArrayList<>();

  private FieldJobs(JobDocument ranch) {
    this.ranch = ranch;
  }

  private static Map<String, String> properties() {
    Map<String, String> names = new LinkedHashMap<>();
    names.put("water_ec", "water.ec-dS-m");
    names.put("water_sar", "water.sar");
    names.put("irrigation", "water.method");
    names.put("efficiency_pct", "water.efficiency-pct");
    names.put("season_et_mm", "water.season-et-mm");
    names.put("rain_mm", "water.rain-mm");
    names.put("drainage", "drainage");
    names.put("water_table_cm", "water-table-cm");
    names.put("root_zone_cm", "root-zone-cm");
    names.put("target_ece", "leaching.target-ece");
    names.put("target_esp", "gypsum.target-esp");
    return names;
  }

  /**
   * The jobs of some fields.
   *
   * @throws InputProblem naming every field of {@code by-field} that there is not
   */
  public static FieldJobs of(JobDocument ranch, List<FieldBoundary> fields) {
    FieldJobs jobs = new FieldJobs(ranch);
    jobs.refuseUnknown(fields.stream().map(FieldBoundary::name).toList());
    for (FieldBoundary field : fields) {
      String place = "field " + field.name() + " of the boundaries";
      JobDocument own = ranch.forField(field.name(), field.settings(), place);
      jobs.tellTwice(field);
      if (own != ranch) {
        jobs.own.put(field.name(), own);
      }
    }
    return jobs;
  }

  private void refuseUnknown(List<String> fields) {
    List<Problem> problems = new ArrayList<>();
    for (String name : ranch.names("by-field")) {
      if (!fields.contains(name)) {
        problems.add(
            new Problem(
                ranch.name() + ", key by-field",
                "the field \"" + name + "\"",
                "a field of the boundaries",
                "Nearest is \"" + NearestWord.of(name, fields).orElse("") + "\"."));
      }
    }
    if (!problems.isEmpty()) {
      throw new InputProblem(problems);
    }
  }

  private void tellTwice(FieldBoundary field) {
    field
        .settings()
        .forEach(
            (key, text) -> {
              if (ranch.given(path(field.name(), key))) {
                findings.add(
                    new Finding(
                        Code.SAID_TWICE,
                        Place.field(field.name()),
                        key + " of " + text + " in the boundaries, and by-field in the job",
                        "the job is followed"));
              }
            });
    if (field.crop().isPresent() && ranch.given("by-field", field.name(), "crop")) {
      findings.add(
          new Finding(
              Code.SAID_TWICE,
              Place.field(field.name()),
              "crop " + field.crop().get() + " in the boundaries, and by-field in the job",
              "the job is followed"));
    }
  }

  private static String[] path(String field, String key) {
    List<String> path = new ArrayList<>(List.of("by-field", field));
    path.addAll(List.of(key.split("\\.")));
    return path.toArray(String[]::new);
  }

  /** The job of one field. */
  public JobDocument of(String field) {
    return own.getOrDefault(field, ranch);
  }

  /** The job of the ranch. */
  public JobDocument ranch() {
    return ranch;
  }

  /** What the boundaries and the job say differently. */
  public List<Finding> findings() {
    return List.copyOf(findings);
  }

  /**
   * Boundaries with the soil that {@code by-field} gives.
   *
   * @throws InputProblem if a texture is not known
   */
  public static List<FieldBoundary> withSoil(JobDocument job, List<FieldBoundary> fields) {
    return fields.stream().map(f -> withSoil(job, f)).toList();
  }

  private static FieldBoundary withSoil(JobDocument job, FieldBoundary field) {
    Optional<String> word = job.text("by-field", field.name(), "texture");
    OptionalDouble clay = job.number("by-field", field.name(), "clay_pct");
    Optional<Texture> texture = word.flatMap(TextureWords::of);
    if (word.isPresent() && texture.isEmpty()) {
      throw new InputProblem(
          job.place("by-field", field.name(), "texture"),
          "the texture \"" + word.get() + "\"",
          "a USDA class such as clay loam",
          "Correct it, or leave it out.");
    }
    return word.isEmpty() && clay.isEmpty()
        ? field
        : field.withSoil(
            texture.orElse(field.texture()), clay.isPresent() ? clay : field.clayPct());
  }
}
