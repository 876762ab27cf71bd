package fieldsalt.cli;

import fieldsalt.pipeline.AssessRun;
import fieldsalt.read.job.JobDocument;
import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code fieldsalt assess}: the map against samples that it did not use. */
@Command(
    name = "assess",
    mixinStandardHelpOptions = true,
    header = "Compares the map with samples that it did not use.",
    description = {
      "Prints one JSON object: number of sites compared and left out, me and rmse of the mean",
      "estimate, mae of the median (dS/m), the share of readings inside their 50 %% and 90 %%",
      "intervals, and the method.",
      ""
    })
final class AssessCommand implements FieldsaltCommand.Sub {
  private final Console console;

  @Mixin private JobOptions jobOptions;
  @Mixin private CommonOptions common;

  @Option(
      names = "--against",
      required = true,
      paramLabel = "POINTS",
      description = "Readings to compare with, in the samples format.")
  private Path against;

  AssessCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    JobDocument job = jobOptions.document(common);
    Progress progress = Progress.of(console, common);
    try {
      AssessRun.Result result = AssessRun.run(job, against, progress);
      progress.clear();
      if (!common.quiet) {
        console.findings(result.findings());
      }
      if (common.strict && !result.findings().isEmpty()) {
        throw MapCommand.strictProblem(result.findings().size());
      }
      console.result(result.json());
      return Exit.DONE;
    } finally {
      progress.end();
    }
  }
}
