package fieldsalt.cli;

import fieldsalt.finding.InputProblem;
import fieldsalt.read.job.JobDocument;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Where the job comes from: a job file, or flags alone. */
final class JobOptions {
  @Spec(Spec.Target.MIXEE)
  private CommandSpec spec;

  @Parameters(
      arity = "0..1",
      paramLabel = "JOB.yaml",
      description = "The job file; `fieldsalt job` prints a commented one.")
  private Path job;

  @Option(names = "--fields", description = "Field boundaries, where there is no job file.")
  private Path fields;

  @Option(
      names = "--samples",
      description = "Laboratory readings, where there is no job file. Repeatable.")
  private List<Path> samples = new ArrayList<>();

  @Option(names = "--survey", description = "Apparent conductivity survey (CSV).")
  private Path survey;

  @Option(names = "--crop", description = "The crop of fields for which none is given.")
  private String crop;

  /**
   * The job with the settings of {@code --set} over it.
   *
   * @throws ParameterException if neither a job file nor samples are named, or both
   * @throws InputProblem if the job cannot be read
   */
  JobDocument document(CommonOptions common) {
    boolean flags = fields != null || !samples.isEmpty() || survey != null || crop != null;
    if (job != null && flags) {
      throw usage(
          "Give a job file or the flags --fields, --samples, --survey, --crop, not both;"
              + " with a job file use --set key=value.");
    }
    if (job != null) {
      return JobDocument.read(job, common.set);
    }
    if (samples.isEmpty()) {
      throw usage("Nothing to work on: give a job file, or --fields F --samples S.");
    }
    return JobDocument.ofFlags(
            Optional.ofNullable(fields),
            samples,
            Optional.ofNullable(survey),
            Optional.ofNullable(crop))
        .withSets(common.set);
  }

  private ParameterException usage(String message) {
    return new ParameterException(spec.commandLine(), message);
  }
}
