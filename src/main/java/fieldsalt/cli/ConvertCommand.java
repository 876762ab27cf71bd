package fieldsalt.cli;

import fieldsalt.finding.InputProblem;
import fieldsalt.handover.folder.Inputs;
import fieldsalt.pipeline.ConvertRun;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code fieldsalt convert}: readings to ECe only. */
@Command(
    name = "convert",
    mixinStandardHelpOptions = true,
    header = "Brings every reading of a table to ECe, without any field file.",
    description = {
      "One CSV row a reading with its 90 %% interval, relation and citation. The factors before and",
      "after paired readings are printed, or with -o written beside FILE as FILE-factors.csv.",
      ""
    })
final class ConvertCommand implements FieldsaltCommand.Sub {
  private final Console console;

  @Mixin private CommonOptions common;

  @Parameters(arity = "1..*", paramLabel = "SAMPLES", description = "Laboratory readings.")
  private List<Path> samples;

  @Option(
      names = {"-o", "--out"},
      paramLabel = "FILE",
      description = "CSV to write; standard output without it.")
  private Path file;

  ConvertCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    if (file != null) {
      Inputs.refuse(file, samples);
      Inputs.refuse(factorsBeside(file), samples);
    }
    Progress progress = Progress.of(console, common);
    try {
      progress.accept("bringing readings to ECe", 0.0);
      ConvertRun.Result result = ConvertRun.run(samples, common.set);
      progress.clear();
      print(result);
      return Exit.DONE;
    } finally {
      progress.end();
    }
  }

  private void print(ConvertRun.Result result) {
    if (!common.quiet) {
      console.allFindings(result.findings());
    }
    if (common.strict && !result.findings().isEmpty()) {
      throw MapCommand.strictProblem(result.findings().size());
    }
    if (file == null) {
      console.out().print(result.readingsCsv());
      console.note("");
      result.factorLines().forEach(console::note);
    } else {
      write(file, result.readingsCsv());
      write(factorsBeside(file), result.factorsCsv());
      console.note(
          result.readings() + " readings in " + file + ", factors in " + factorsBeside(file));
    }
  }

  static Path factorsBeside(Path file) {
    String name = file.getFileName().toString();
    int dot = name.lastIndexOf('.');
    String stem = dot > 0 ? name.substring(0, dot) : name;
    return file.resolveSibling(stem + "-factors.csv");
  }

  /** Whole or not at all: written beside, then moved. */
  private static void write(Path target, String text) {
    Path beside = target.resolveSibling("." + target.getFileName() + ".part");
    try {
      Files.writeString(beside, text, StandardCharsets.UTF_8);
      Files.move(beside, target, StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException e) {
      deleteQuietly(beside);
      throw notWritten(target, e);
    }
  }

  private static void deleteQuietly(Path file) {
    try {
      Files.deleteIfExists(file);
    } catch (IOException e) {
      // What cannot be deleted is left; the message about the target says enough.
    }
  }

  private static InputProblem notWritten(Path target, IOException e) {
    InputProblem problem =
        new InputProblem(
            target.toString(),
            e.getMessage() + " (" + e.getClass().getSimpleName() + ")",
            "a file that can be written",
            "Check the folder, the free space and your permissions, or name another with -o.");
    problem.initCause(e);
    return problem;
  }
}
