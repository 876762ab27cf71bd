package fieldsalt.cli;

import fieldsalt.read.job.JobSchema;
import fieldsalt.read.job.JobTemplate;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code fieldsalt job}: a commented job file. */
@Command(
    name = "job",
    mixinStandardHelpOptions = true,
    description = "Prints a commented job file with every key, its unit and its default.")
final class JobCommand implements FieldsaltCommand.Sub {
  private final Console console;

  @Option(names = "--schema", description = "The JSON Schema of a job file instead.")
  private boolean schema;

  JobCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    console.out().print(schema ? JobSchema.text() : JobTemplate.text());
    return Exit.DONE;
  }
}
