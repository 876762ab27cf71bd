package fieldsalt.pipeline;

import fieldsalt.basis.Basis;
import fieldsalt.basis.pair.ConvertedReadings;
import fieldsalt.basis.setting.BasisKeys;
import fieldsalt.finding.Finding;
import fieldsalt.finding.InputProblem;
import fieldsalt.handover.output.ReadingsOutput;
import fieldsalt.read.Ranch;
import fieldsalt.read.RanchReader;
import fieldsalt.read.job.JobDocument;
import fieldsalt.report.terminal.FactorLines;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Readings to ECe only: tables in, tables out. */
public final class ConvertRun {
  private ConvertRun() {}

  /**
   * What came out.
   *
   * @param readingsCsv a row a usable reading
   * @param factorsCsv a row a laboratory, method and texture group
   * @param factorLines the same for people, then the mean of each layer
   */
  public record Result(
      int readings,
      String readingsCsv,
      String factorsCsv,
      List<String> factorLines,
      List<Finding> findings) {
    public Result {
      factorLines = List.copyOf(factorLines);
      findings = List.copyOf(findings);
    }
  }

  /**
   * Reads tables and converts every usable reading.
   *
   * @param sets {@code key=value} settings of the job
   * @throws InputProblem if no reading is usable
   */
  public static Result run(List<Path> tables, List<String> sets) {
    JobDocument job = JobDocument.ofSettings(Path.of(""), sets);
    Ranch ranch = RanchReader.readTable(job, tables);
    ConvertedReadings converted = Basis.of(ranch.samples(), BasisKeys.of(job)).converted();
    List<Finding> findings = new ArrayList<>(ranch.findings());
    findings.addAll(converted.findings());
    if (converted.rows().isEmpty()) {
      throw nothingUsable(tables, findings);
    }
    return new Result(
        converted.rows().size(),
        ReadingsOutput.readings(converted).text(),
        ReadingsOutput.factors(converted).text(),
        FactorLines.of(converted),
        findings.stream().distinct().toList());
  }

  private static InputProblem nothingUsable(List<Path> tables, List<Finding> findings) {
    String why =
        findings.stream()
            .limit(5)
            .map(f -> f.where() + ": " + f.found())
            .collect(Collectors.joining("; "));
    return new InputProblem(
        tables.stream().map(t -> String.valueOf(t.getFileName())).collect(Collectors.joining(", ")),
        "no reading that can be used" + (why.isEmpty() ? "" : " (" + why + ")"),
        "at least one reading of EC with its method and unit",
        "Mend the rows named, or say defaults.method=1:5 and the like with --set.");
  }
}
