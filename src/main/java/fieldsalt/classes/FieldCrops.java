package fieldsalt.classes;

import fieldsalt.basis.depth.RootZone;
import fieldsalt.basis.depth.Uptake;
import fieldsalt.facts.Crop;
import fieldsalt.facts.Crops;
import fieldsalt.facts.RootZones;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.InputProblem;
import fieldsalt.finding.InputProblem.Problem;
import fieldsalt.finding.Place;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.read.field.FieldJobs;
import fieldsalt.read.job.JobDocument;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;

/** The crop of each field, as a row of the crop table, and the root zone that goes with it. */
public final class FieldCrops {
  private final FieldJobs jobs;
  private final Crops crops;
  private final Map<String, Crop> byField = new LinkedHashMap<>();
  private final Optional<Crop> ofJob;
  private final List<Finding> findings = new ArrayList<>();

  private FieldCrops(FieldJobs jobs, List<FieldBoundary> fields) {
    this.jobs = jobs;
    this.crops = OwnCrops.in(jobs.ranch());
    JobDocument ranch = jobs.ranch();
    this.ofJob =
        ranch
            .text("crop")
            .flatMap(name -> find(name, new Place.Key(ranch.place("crop")), List.of()));
    for (FieldBoundary field : fields) {
      JobDocument own = jobs.of(field.name());
      Place ofField = new Place.Fields(List.of(field.name()), "crop");
      Optional<String> name = own.isOfField("crop") ? own.text("crop") : field.crop();
      Optional<Crop> crop =
          name.isPresent() ? find(name.get(), ofField, List.of(field.name())) : ofJob;
      crop.ifPresent(c -> byField.put(field.name(), c));
    }
  }

  /** Finds every crop that the job and the fields name; one that nobody knows is a finding. */
  public static FieldCrops of(FieldJobs jobs, List<FieldBoundary> fields) {
    return new FieldCrops(jobs, fields);
  }

  private Optional<Crop> find(String name, Place where, List<String> fields) {
    try {
      Crops.Match match = crops.find(name);
      match.sentence().ifPresent(s -> say(Code.CROP_NAME, where, "\"" + name + "\"", s));
      return Optional.of(match.crop());
    } catch (InputProblem unknown) {
      Problem p = unknown.problems().get(0);
      say(
          Code.CROP_UNKNOWN,
          where,
          "the crop " + p.found() + ", not one crop of the table",
          (fields.isEmpty() ? "its fields get" : "the field gets")
              + " NRCS classes and no yields; give its figures under own-crops, or its name in the"
              + " table. "
              + p.remedy());
      return Optional.empty();
    }
  }

  private void say(Code code, Place where, String found, String done) {
    Finding said = new Finding(code, where, found, done);
    if (!findings.contains(said)) {
      findings.add(said);
    }
  }

  /** The crop of a field; empty if neither it nor the job names one. */
  public Optional<Crop> of(String field) {
    return Optional.ofNullable(byField.get(field));
  }

  /** The crops of the ranch, each once, in the order of the fields. */
  public List<Crop> all() {
    return byField.values().stream().distinct().toList();
  }

  /** Depth and weights over which a field's readings are averaged. */
  public RootZone rootZone(String field) {
    JobDocument job = jobs.of(field);
    Optional<Crop> crop = of(field);
    OptionalDouble given = job.number("root-zone-cm");
    OptionalDouble ofCrop =
        job.isOfField("root-zone-cm")
            ? OptionalDouble.empty()
            : crop.map(this::givenDepthCm).orElse(OptionalDouble.empty());
    double depthCm = ofCrop.orElseGet(() -> given.orElseGet(() -> usualCm(crop)));
    return new RootZone(depthCm, uptake(job));
  }

  private double usualCm(Optional<Crop> crop) {
    return crop.map(c -> OwnCrops.rootZoneCm(jobs.ranch(), c))
        .orElse(OptionalDouble.empty())
        .orElseGet(() -> RootZones.depthCm(crop));
  }

  /** A depth that the job gives for this very crop, under any of the names it goes by. */
  private OptionalDouble givenDepthCm(Crop crop) {
    JobDocument ranch = jobs.ranch();
    for (String name : new TreeSet<>(ranch.names("root-zone-cm"))) {
      if (crops.find(name).crop().equals(crop)) {
        return ranch.number("root-zone-cm", name);
      }
    }
    return OptionalDouble.empty();
  }

  private static Uptake uptake(JobDocument job) {
    String byIrrigation = job.word("water.method").equals("drip") ? "quarters" : "uniform";
    return Uptake.valueOf(
        job.text("uptake").orElse(byIrrigation).toUpperCase(java.util.Locale.ROOT));
  }

  /** Crops that were named in more than one way, or that nobody knows. */
  public List<Finding> findings() {
    return List.copyOf(findings);
  }
}
