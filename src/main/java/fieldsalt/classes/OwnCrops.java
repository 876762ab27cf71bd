package fieldsalt.classes;

import fieldsalt.facts.Crop;
import fieldsalt.facts.Crops;
import fieldsalt.finding.InputProblem;
import fieldsalt.finding.InputProblem.Problem;
import fieldsalt.read.job.JobDocument;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Crops of the user's own ({@code own-crops} of the job), with the figures that the user gives. */
public final class OwnCrops {
  private OwnCrops() {}

  /**
   * The crop table with them.
   *
   * @throws InputProblem naming every one without threshold or slope
   */
  public static Crops in(JobDocument job) {
    List<Crop> own = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    for (String name : job.names("own-crops")) {
      OptionalDouble threshold = job.number("own-crops", name, "threshold");
      OptionalDouble slope = job.number("own-crops", name, "slope");
      if (threshold.isEmpty() || slope.isEmpty()) {
        problems.add(
            new Problem(
                job.name() + ", key own-crops." + name,
                threshold.isEmpty() ? "no threshold" : "no slope",
                "threshold (dS/m) and slope (% per dS/m)",
                "Give both; a crop of the table needs neither."));
      } else {
        own.add(
            new Crop(
                name,
                "",
                Optional.of(new Crop.Tolerance(threshold.getAsDouble(), slope.getAsDouble())),
                "",
                "field",
                "",
                job.text("own-crops", name, "source").orElse("the user's own figures"),
                "the user's own",
                ""));
      }
    }
    if (!problems.isEmpty()) {
      throw new InputProblem(problems);
    }
    return Crops.standard().with(own);
  }

  /** Depth of the root zone that the user gives for one of them. */
  static OptionalDouble rootZoneCm(JobDocument job, Crop crop) {
    return job.names("own-crops").contains(crop.name())
        ? job.number("own-crops", crop.name(), "root-zone-cm")
        : OptionalDouble.empty();
  }
}
