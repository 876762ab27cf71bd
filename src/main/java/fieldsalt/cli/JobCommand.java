package fieldsalt.cli;

import fieldsalt.read.JobTemplate;
import picocli.CommandLine.Command;

/** {@code fieldsalt job}: a commented job file. */
@Command(
    name = "job",
    mixinStandardHelpOptions = true,
    description = "Prints a commented job file with every key, its unit and its default.")
final class JobCommand implements FieldsaltCommand.Sub {
  private final Console console;

  JobCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    console.out().print(JobTemplate.text());
    return Exit.DONE;
  }
}
