package fieldsalt.pipeline;

import fieldsalt.basis.Basis;
import fieldsalt.basis.setting.BasisKeys;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.Finding;
import fieldsalt.finding.InputProblem;
import fieldsalt.read.RanchReader;
import fieldsalt.read.job.JobDocument;
import fieldsalt.surface.Assessment;
import fieldsalt.surface.Surface;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;

/** The map against samples that it did not use. */
public final class AssessRun {
  private AssessRun() {}

  /**
   * What came out.
   *
   * @param json one object: n, left_out, me, rmse, mae, coverage50, coverage90, method
   */
  public record Result(String json, List<Finding> findings) {
    public Result {
      findings = List.copyOf(findings);
    }
  }

  /**
   * Fits the surface of a job and compares it with other samples.
   *
   * @param against readings in the samples format
   * @throws InputProblem if none of them can be compared
   */
  public static Result run(JobDocument job, Path against, BiConsumer<String, Double> progress) {
    Prepared prepared = Prepared.of(job, () -> RanchReader.readOrHull(job, against), progress);
    RanchReader.Points points = RanchReader.readPoints(job, against, prepared.ranch());
    Surface surface = MapRun.fit(prepared, progress);
    List<Finding> findings = new ArrayList<>(prepared.findings());
    findings.addAll(points.findings());
    Basis basis = Basis.of(points.samples(), BasisKeys.of(job));
    SiteReadings readings = Prepared.rootZone(job, basis, prepared.crops()).readings();
    findings.addAll(readings.findings());
    Assessment assessed = Assessment.of(surface, prepared.readings(), readings);
    if (assessed.n() == 0) {
      throw nothingToCompare(against);
    }
    String method =
        surface.mappedFields().stream()
            .map(f -> surface.report().methodOf(f).label())
            .distinct()
            .sorted()
            .collect(Collectors.joining(", "));
    return new Result(
        json(assessed, points.sites() - assessed.n(), method),
        findings.stream().distinct().toList());
  }

  private static InputProblem nothingToCompare(Path against) {
    return new InputProblem(
        String.valueOf(against.getFileName()),
        "no usable reading in a mapped field",
        "readings inside the fields that the map covers",
        "Check coordinates, method and unit of these samples.");
  }

  private static String json(Assessment a, int leftOut, String method) {
    return String.format(
        Locale.ROOT,
        "{\"n\": %d, \"left_out\": %d, \"me\": %.6g, \"rmse\": %.6g, \"mae\": %.6g,"
            + " \"coverage50\": %.6g, \"coverage90\": %.6g, \"method\": \"%s\"}",
        a.n(),
        leftOut,
        a.meanError(),
        a.rootMeanSquaredError(),
        a.meanAbsoluteError(),
        a.coverage50(),
        a.coverage90(),
        method);
  }
}
