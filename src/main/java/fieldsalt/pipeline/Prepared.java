package fieldsalt.pipeline;

import fieldsalt.basis.Basis;
import fieldsalt.basis.pair.ConvertedReadings;
import fieldsalt.basis.setting.BasisKeys;
import fieldsalt.basis.setting.BasisSettings;
import fieldsalt.basis.site.RootZoneReadings;
import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.classes.FieldCrops;
import fieldsalt.finding.Finding;
import fieldsalt.finding.InputProblem;
import fieldsalt.plan.setting.PlanKeys;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.read.Ranch;
import fieldsalt.read.RanchReader;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.read.field.FieldJobs;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.sample.Sample;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Supplier;

/**
 * A job as far as its readings are on one basis: stages 1 and 2.
 *
 * @param jobs the job as it is for each field
 * @param converted every reading as ECe; empty where the job maps another property
 * @param rootZone readings by site over the root zone, with what depth they stand for; without
 *     depths for another property
 */
record Prepared(
    JobDocument job,
    FieldJobs jobs,
    Ranch ranch,
    FieldCrops crops,
    Basis basis,
    PlanSettings plan,
    Optional<ConvertedReadings> converted,
    RootZoneReadings rootZone) {

  /** Reads everything; every setting is checked before any long work. */
  static Prepared of(JobDocument job, BiConsumer<String, Double> progress) {
    return of(job, () -> RanchReader.read(job), progress);
  }

  /** The same from a ranch read in another way. */
  static Prepared of(JobDocument job, Supplier<Ranch> reader, BiConsumer<String, Double> progress) {
    BasisSettings settings = BasisKeys.of(job);
    PlanSettings plan = PlanKeys.of(job);
    StageSettings.zones(job, false);
    refuseNaturalEce(job);
    refuseNoZones(job);
    progress.accept("reading", 0.0);
    Ranch ranch = reader.get();
    FieldJobs jobs = FieldJobs.of(job, ranch.fields());
    for (FieldBoundary field : ranch.fields()) {
      StageSettings.zones(jobs.of(field.name()), false);
      PlanKeys.of(jobs.of(field.name())).refuseProblems();
    }
    FieldCrops crops = FieldCrops.of(jobs, ranch.fields());
    progress.accept("bringing readings to ECe", 0.0);
    Basis basis = Basis.of(ranch.samples(), settings);
    boolean other = !job.word("property.column").equals("ec");
    return new Prepared(
        job,
        jobs,
        ranch,
        crops,
        basis,
        plan,
        other ? Optional.empty() : Optional.of(basis.converted()),
        rootZone(job, basis, crops));
  }

  /** ECe is mapped by its logarithm: conversions multiply, and it is never 0 or less. */
  private static void refuseNaturalEce(JobDocument job) {
    if (job.word("property.column").equals("ec") && job.word("property.scale").equals("natural")) {
      throw new InputProblem(
          job.place("property", "scale"),
          "natural, for a map of ECe",
          "log: readings are brought to ECe by factors, and ECe is always above 0",
          "Leave property.scale out, or name another column in property.column.");
    }
  }

  private static void refuseNoZones(JobDocument job) {
    boolean asked =
        job.word("zones.by").equals("file")
            || job.names("by-field").stream()
                .anyMatch(
                    f -> job.text("by-field", f, "zones", "by").filter("file"::equals).isPresent());
    if (asked && !job.given("zones.file")) {
      throw new InputProblem(
          job.place("zones.by"),
          "zones by file, and no file",
          "zones.file: FILE",
          "Name the polygons, or take another way to divide zones.");
    }
  }

  /** Readings of what the job maps, over each field's root zone. */
  static RootZoneReadings rootZone(JobDocument job, Basis basis, FieldCrops crops) {
    String column = job.word("property.column");
    return column.equals("ec")
        ? basis.rootZone(crops::rootZone)
        : new RootZoneReadings(
            basis.ownProperty(
                column,
                job.text("property.unit").orElse(""),
                Scale.valueOf(job.word("property.scale").toUpperCase(Locale.ROOT)),
                crops::rootZone),
            List.of());
  }

  /** Whether ECe is mapped, so that classes, zones and plan speak of crops. */
  boolean isEce() {
    return converted.isPresent();
  }

  /** The settings of one field's plan. */
  PlanSettings planOf(String field) {
    JobDocument own = jobs.of(field);
    return own.equals(job) ? plan : PlanKeys.of(own);
  }

  /** Depth of the layer of a field that gypsum would treat, cm. */
  double treatedCm(String field) {
    return jobs.of(field).amount("gypsum.depth-cm");
  }

  SiteReadings readings() {
    return rootZone.readings();
  }

  Map<String, List<Sample>> samplesByField() {
    return ranch.samplesByField();
  }

  /** What reading and conversion found. */
  List<Finding> findings() {
    List<Finding> all = new ArrayList<>(ranch.findings());
    all.addAll(jobs.findings());
    all.addAll(crops.findings());
    converted.ifPresent(c -> all.addAll(c.findings()));
    all.addAll(readings().findings());
    return all;
  }
}
