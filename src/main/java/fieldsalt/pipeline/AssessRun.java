package fieldsalt.pipeline;

import fieldsalt.basis.site.ReadingErrors;
import fieldsalt.basis.Basis;
import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.Finding;
import fieldsalt.finding.InputProblem;
import fieldsalt.read.RanchReader;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.sample.Sample;
import fieldsalt.surface.Surface;
import fieldsalt.surface.map.PointDistribution;
import fieldsalt.surface.site.Target;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.BiConsumer;

/** The map against samples that it did not use. */
public final class AssessRun {
  private final Prepared prepared;
  private final Surface surface;
  private final List<Compared> compared = new ArrayList<>();

  private AssessRun(Prepared prepared, Surface surface) {
    this.prepared = prepared;
    this.surface = surface;
  }

  /** One site: what was read, and what the map says there. */
  private record Compared(double read, double mean, double median, double chanceBelow) {}

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
   * Fits the surface of a job and compares it with other samples. Errors are map less reading, in
   * the unit of the map; each site counts once, by its paste reading if it has one.
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
    SiteReadings readings = readings(prepared, points);
    findings.addAll(readings.findings());
    AssessRun run = new AssessRun(prepared, surface);
    run.compare(readings);
    if (run.compared.isEmpty()) {
      throw nothingToCompare(against);
    }
    return new Result(
        run.json(sites(job, against) - run.compared.size()), findings.stream().distinct().toList());
  }

  private static SiteReadings readings(Prepared prepared, RanchReader.Points points) {
    Basis basis = Basis.of(points.samples(), StageSettings.basis(prepared.job()));
    return Prepared.rootZone(prepared.job(), basis, prepared.crops()).readings();
  }

  private static InputProblem nothingToCompare(Path against) {
    return new InputProblem(
        String.valueOf(against.getFileName()),
        "no usable reading in a mapped field",
        "readings inside the fields that the map covers",
        "Check coordinates, method and unit of these samples.");
  }

  /** Sites of a table, wherever they lie. */
  private static int sites(JobDocument job, Path table) {
    return (int)
        RanchReader.readTable(job, List.of(table)).samples().stream()
            .map(Sample::id)
            .distinct()
            .count();
  }

  /** Compares every site in a mapped field. */
  private void compare(SiteReadings readings) {
    ReadingErrors errors = ReadingErrors.of(readings);
    for (int s = 0; s < readings.sites().size(); s++) {
      SiteReadings.Site site = readings.sites().get(s);
      List<SiteReadings.Row> rows = errors.ofSite(s);
      if (!rows.isEmpty() && isMapped(site.field())) {
        compared.add(compare(readings, rows.get(0), new Target(site.field(), site.place())));
      }
    }
  }

  private boolean isMapped(String field) {
    return surface.mappedFields().contains(field);
  }

  private Compared compare(SiteReadings readings, SiteReadings.Row row, Target target) {
    SiteReadings own = prepared.readings();
    double[] loadings = new double[own.offsets().size()];
    double elsewhere = 0;
    for (SiteReadings.Loading loading : row.loadings()) {
      int known = own.offsets().indexOf(readings.offsets().get(loading.offset()));
      if (known >= 0) {
        loadings[known] += loading.weight();
      } else {
        double variance = readings.offsetCovariance()[loading.offset()][loading.offset()];
        elsewhere += loading.weight() * loading.weight() * variance;
      }
    }
    double read = own.scale() == Scale.LOG ? Math.exp(row.value()) : row.value();
    PointDistribution there = surface.at(target);
    PointDistribution seen = surface.reading(target, loadings, row.ownVariance() + elsewhere);
    return new Compared(read, there.mean(), there.median(), 1 - seen.chanceAbove(read));
  }

  private String json(int leftOut) {
    return String.format(
        Locale.ROOT,
        "{\"n\": %d, \"left_out\": %d, \"me\": %s, \"rmse\": %s, \"mae\": %s, \"coverage50\": %s,"
            + " \"coverage90\": %s, \"method\": \"%s\"}",
        compared.size(),
        leftOut,
        mean(c -> c.mean() - c.read()),
        number(Math.sqrt(average(c -> Math.pow(c.mean() - c.read(), 2)))),
        mean(c -> Math.abs(c.median() - c.read())),
        mean(c -> Math.abs(c.chanceBelow() - 0.5) <= 0.25 ? 1 : 0),
        mean(c -> Math.abs(c.chanceBelow() - 0.5) <= 0.45 ? 1 : 0),
        surface.report().chosen());
  }

  private String mean(java.util.function.ToDoubleFunction<Compared> figure) {
    return number(average(figure));
  }

  private double average(java.util.function.ToDoubleFunction<Compared> figure) {
    return compared.stream().mapToDouble(figure).average().orElseThrow();
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.6g", value);
  }
}
