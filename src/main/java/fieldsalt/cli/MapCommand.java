package fieldsalt.cli;

import fieldsalt.finding.Finding;
import fieldsalt.finding.InputProblem;
import fieldsalt.pipeline.MapRun;
import fieldsalt.pipeline.MapSummary;
import fieldsalt.read.job.JobDocument;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code fieldsalt map}: the whole job. */
@Command(
    name = "map",
    mixinStandardHelpOptions = true,
    header = "Does the whole job: from samples and fields to zones, plan, files and a page.",
    description = {
      "Reads samples and fields, brings every reading to ECe, maps it, draws zones, plans leaching",
      "and gypsum, and writes files for GIS and machines and a page.",
      ""
    })
final class MapCommand implements FieldsaltCommand.Sub {
  private final Console console;

  @Mixin private JobOptions jobOptions;
  @Mixin private CommonOptions common;

  @Option(
      names = {"-o", "--out"},
      paramLabel = "DIR",
      defaultValue = "fieldsalt-map",
      description = "Folder to write into, whole or not at all (default: ${DEFAULT-VALUE}).")
  private Path folder;

  @Option(
      names = "--force",
      description = "Write into DIR even if it holds files that fieldsalt did not make.")
  private boolean force;

  @Option(names = "--stamp", description = "Puts date and time into run.json.")
  private boolean stamp;

  MapCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    JobDocument job = jobOptions.document(common);
    Progress progress = Progress.of(console, common);
    MapRun run = MapRun.prepare(job, folder, force, progress);
    if (run.mendedFolder()) {
      console
          .err()
          .println(
              "An earlier run into "
                  + folder
                  + " was cut off while it wrote; the folder was put back as it was before.");
    }
    try {
      MapSummary summary = run.compute();
      progress.clear();
      if (!common.quiet) {
        console.findings(summary.findings());
      }
      refuseIfStrict(summary.findings());
      run.write(FieldsaltCommand.Version.version(), clock());
      progress.clear();
      tell(summary);
      return summary.leftOut().isEmpty() ? Exit.DONE : Exit.SOME_FIELDS;
    } catch (OutOfMemoryError e) {
      throw run.memoryEnded();
    } finally {
      progress.end();
    }
  }

  private Optional<String> clock() {
    return stamp ? Optional.of(Instant.now().toString()) : Optional.empty();
  }

  private void refuseIfStrict(List<Finding> findings) {
    if (common.strict && !findings.isEmpty()) {
      throw strictProblem(findings.size());
    }
  }

  static InputProblem strictProblem(int findings) {
    return new InputProblem(
        "--strict",
        findings + (findings == 1 ? " finding" : " findings"),
        "none",
        "Mend the input, or run without --strict; `fieldsalt check` lists every finding.");
  }

  private void tell(MapSummary summary) {
    summary.lines().forEach(console::result);
    console.result("Open " + folder.resolve("report.html"));
    if (!summary.leftOut().isEmpty()) {
      console.note("Fields left out: " + String.join(", ", summary.leftOut()));
    }
  }
}
