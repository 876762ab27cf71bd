package fieldsalt.cli;

import fieldsalt.facts.Crop;
import fieldsalt.facts.Crops;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code fieldsalt crops}: the crop table with its sources. */
@Command(
    name = "crops",
    mixinStandardHelpOptions = true,
    header = "Prints the crop table with its sources.",
    description = {
      "Threshold (ECe in dS/m up to which yield is full) and slope (percent of yield lost per dS/m",
      "above it), rating, source, and how sure the numbers are.",
      ""
    })
final class CropsCommand implements FieldsaltCommand.Sub {
  private final Console console;

  @Parameters(
      arity = "0..*",
      paramLabel = "TEXT",
      description = "Only crops whose common or botanical name contains this text.")
  private List<String> text = List.of();

  CropsCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    String wanted = String.join(" ", text);
    List<Crop> found = Crops.standard().search(wanted);
    if (found.isEmpty()) {
      console.note(
          "No crop's name contains \"" + wanted + "\". `fieldsalt crops` prints the whole table.");
      return Exit.DONE;
    }
    console.result(
        line("crop", "threshold dS/m", "slope % per dS/m", "rating", "confidence", "source"));
    found.forEach(this::print);
    return Exit.DONE;
  }

  private void print(Crop crop) {
    console.result(
        line(
            crop.name(),
            crop.tolerance().map(t -> number(t.thresholdDsPerM())).orElse("-"),
            crop.tolerance().map(t -> number(t.slopePctPerDsPerM())).orElse("-"),
            crop.ratingInWords(),
            crop.confidence(),
            crop.source()));
    if (!crop.note().isBlank()) {
      console.result("    note: " + crop.note());
    }
    for (Crops.Alternative other : Crops.standard().alternatives(crop)) {
      console.result(
          String.format(
              Locale.ROOT,
              "    other numbers: %s dS/m, %s %% per dS/m (%s; %s)",
              number(other.tolerance().thresholdDsPerM()),
              number(other.tolerance().slopePctPerDsPerM()),
              other.source(),
              other.confidence()));
    }
  }

  private static String line(
      String crop, String threshold, String slope, String rating, String sure, String source) {
    return String.format(
        Locale.ROOT,
        "%-34s %-15s %-17s %-22s | %s | %s",
        crop,
        threshold,
        slope,
        rating,
        sure,
        source);
  }

  private static String number(double value) {
    return value == Math.rint(value)
        ? String.format(Locale.ROOT, "%.0f", value)
        : String.valueOf(value);
  }
}
