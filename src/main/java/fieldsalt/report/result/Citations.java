package fieldsalt.report.result;

import fieldsalt.facts.Crop;
import java.util.List;

/** Sources as page and run record name them. */
public final class Citations {
  public static final List<String> ALWAYS =
      List.of(
          "Patterson H.D., Thompson R. 1971. Recovery of inter-block information when block sizes"
              + " are unequal. Biometrika 58: 545-554 (restricted likelihood of the variogram).",
          "Gneiting T., Raftery A.E. 2007. Strictly proper scoring rules, prediction, and"
              + " estimation. Journal of the American Statistical Association 102: 359-378"
              + " (CRPS).");

  private Citations() {}

  /** Where a crop's figures are from, and whether they were seen in print. */
  public static String of(Crop crop) {
    String confidence = crop.isSeenInPrint() ? "seen in print" : crop.confidence();
    return crop.name() + ": " + crop.source() + " (" + confidence + ")";
  }
}
