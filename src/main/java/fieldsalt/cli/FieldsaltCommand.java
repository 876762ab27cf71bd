package fieldsalt.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The command without a subcommand: shows the help. {@link Commands} adds the subcommands. */
@Command(
    name = "fieldsalt",
    mixinStandardHelpOptions = true,
    versionProvider = FieldsaltCommand.Version.class,
    description = {
      "Maps soil salinity across a ranch: every laboratory reading on the saturated-paste basis, the",
      "surface with its error, zones a machine can follow, a leaching and gypsum plan.",
      ""
    },
    footerHeading = "%nStart here:%n",
    footer = {
      "  fieldsalt map sample-fields/small/job.yaml     the whole job on an invented field",
      "  fieldsalt job > job.yaml                       a commented job file to fill in",
      "  fieldsalt check job.yaml                       what is wrong or odd, before any map",
      "",
      "Exit codes: 0 done; 1 a fault of ours; 2 wrong usage; 3 the input cannot be used or the folder",
      "cannot be written; 4 done, but some fields were left out."
    })
final class FieldsaltCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  /** A command that does something, and gets the console through its constructor. */
  interface Sub extends Callable<Integer> {}

  @Override
  public Integer call() {
    spec.commandLine().usage(spec.commandLine().getErr());
    return Exit.USAGE;
  }

  static final class Version implements CommandLine.IVersionProvider {
    @Override
    public String[] getVersion() {
      return new String[] {"fieldsalt " + version()};
    }

    static String version() {
      String version = FieldsaltCommand.class.getPackage().getImplementationVersion();
      return version == null ? "(development build)" : version;
    }
  }
}
