package fieldsalt.cli;

import fieldsalt.finding.Finding;
import fieldsalt.pipeline.MapRun;
import fieldsalt.read.job.JobDocument;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code fieldsalt check}: everything that is odd, before any map. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    description = "Reads everything, prints every finding, writes nothing.")
final class CheckCommand implements FieldsaltCommand.Sub {
  private final Console console;

  @Mixin private JobOptions jobOptions;
  @Mixin private CommonOptions common;

  CheckCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    JobDocument job = jobOptions.document(common);
    Progress progress = Progress.of(console, common);
    try {
      MapRun.Checked checked = MapRun.check(job, progress);
      progress.clear();
      print(checked);
      return checked.leftOut().isEmpty() ? Exit.DONE : Exit.SOME_FIELDS;
    } finally {
      progress.end();
    }
  }

  private void print(MapRun.Checked checked) {
    List<Finding> findings = checked.findings();
    console.allFindings(findings);
    checked.lines().forEach(console::result);
    if (common.strict && !findings.isEmpty()) {
      throw MapCommand.strictProblem(findings.size());
    }
  }
}
