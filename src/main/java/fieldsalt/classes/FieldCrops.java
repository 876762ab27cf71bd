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
import fieldsalt.finding.PlaceWords;
import fieldsalt.read.field.FieldBoundary;
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
  private final JobDocument job;
  private final Map<String, Crop> byField = new LinkedHashMap<>();
  private final Optional<Crop> ofJob;
  private final List<Finding> findings = new ArrayList<>();

  private FieldCrops(JobDocument job, List<FieldBoundary> fields) {
    this.job = job;
    List<Problem> problems = new ArrayList<>();
    this.ofJob =
        job.text("crop").flatMap(name -> find(name, new Place.Key(job.place("crop")), problems));
    for (FieldBoundary field : fields) {
      Optional<Crop> own =
          field
              .crop()
              .flatMap(
                  name -> find(name, new Place.Fields(List.of(field.name()), "crop"), problems));
      (own.isPresent() ? own : ofJob).ifPresent(crop -> byField.put(field.name(), crop));
    }
    if (!problems.isEmpty()) {
      throw new InputProblem(problems);
    }
  }

  /**
   * Finds every crop that the job and the fields name.
   *
   * @throws InputProblem naming every crop that the table does not hold
   */
  public static FieldCrops of(JobDocument job, List<FieldBoundary> fields) {
    return new FieldCrops(job, fields);
  }

  private Optional<Crop> find(String name, Place where, List<Problem> problems) {
    try {
      Crops.Match match = Crops.standard().find(name);
      match.sentence().ifPresent(s -> say(where, name, s));
      return Optional.of(match.crop());
    } catch (InputProblem e) {
      e.problems().forEach(p -> problems.add(at(where, p)));
      return Optional.empty();
    }
  }

  private void say(Place where, String name, String sentence) {
    Finding said = new Finding(Code.CROP_NAME, where, "\"" + name + "\"", sentence);
    if (!findings.contains(said)) {
      findings.add(said);
    }
  }

  private static Problem at(Place where, Problem p) {
    return new Problem(PlaceWords.of(where), p.found(), p.expected(), p.remedy());
  }

  /** The crop of a field; empty if neither it nor the job names one. */
  public Optional<Crop> of(String field) {
    return Optional.ofNullable(byField.get(field)).or(() -> ofJob);
  }

  /** The crops of the ranch, each once, in the order of the fields. */
  public List<Crop> all() {
    return byField.values().stream().distinct().toList();
  }

  /** Depth and weights over which a field's readings are averaged. */
  public RootZone rootZone(String field) {
    Optional<Crop> crop = of(field);
    double depthCm =
        crop.map(this::givenDepthCm)
            .orElse(OptionalDouble.empty())
            .orElseGet(() -> job.number("root-zone-cm").orElseGet(() -> RootZones.depthCm(crop)));
    return new RootZone(depthCm, uptake());
  }

  /** A depth that the job gives for this very crop, under any of the names it goes by. */
  private OptionalDouble givenDepthCm(Crop crop) {
    for (String name : new TreeSet<>(job.names("root-zone-cm"))) {
      if (Crops.standard().find(name).crop().equals(crop)) {
        return job.number("root-zone-cm", name);
      }
    }
    return OptionalDouble.empty();
  }

  private Uptake uptake() {
    String byIrrigation = job.word("water.method").equals("drip") ? "quarters" : "uniform";
    return Uptake.valueOf(
        job.text("uptake").orElse(byIrrigation).toUpperCase(java.util.Locale.ROOT));
  }

  /** Crops that were named in more than one way. */
  public List<Finding> findings() {
    return List.copyOf(findings);
  }
}
