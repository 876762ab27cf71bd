package fieldsalt.classes;

import fieldsalt.facts.Crop;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.InputProblem;
import fieldsalt.finding.Place;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** Makes the class scheme of a field: the crop's yield steps, NRCS classes, or own breaks. */
public final class ClassSchemes {
  /** Relative yields at which the crop's classes are cut, percent. */
  private static final List<Integer> STEPS_PCT = List.of(100, 90, 75, 50, 0);

  private static final List<Double> NRCS_BREAKS = List.of(2.0, 4.0, 8.0, 16.0);
  private static final List<String> NRCS_LABELS =
      List.of(
          "nonsaline",
          "very slightly saline",
          "slightly saline",
          "moderately saline",
          "strongly saline");

  /** Limit of {@code p_above} without a crop: the ECe from which Handbook 60 calls soil saline. */
  public static final double SALINE_DS_M = 4;

  /** A scheme and what had to be said about it. */
  public record Made(ClassScheme scheme, List<Finding> findings) {
    public Made {
      findings = List.copyOf(findings);
    }
  }

  private ClassSchemes() {}

  /**
   * The scheme of a field's crop: yield steps where the crop has threshold and slope, else NRCS
   * classes with the crop's rating; NRCS classes without a crop.
   *
   * @param field for findings
   * @param medianError median standard error of ln ECe of the field's readings, at least 0
   * @param gypsiferous whether gypsum is confirmed in the root zone (threshold 2 dS/m higher)
   */
  public static Made forCrop(
      String field, Optional<Crop> crop, double medianError, boolean gypsiferous) {
    if (crop.isEmpty()) {
      return new Made(nrcs(), List.of());
    }
    Optional<Crop.Tolerance> tolerance = crop.get().tolerance();
    return tolerance.isPresent()
        ? yieldSteps(field, crop.get(), tolerance.get(), medianError, gypsiferous)
        : ratingOnly(field, crop.get());
  }

  /**
   * Salinity classes of the USDA Natural Resources Conservation Service (Soil Survey Manual): 2, 4,
   * 8 and 16 dS/m, the lower bound in the upper class.
   */
  public static ClassScheme nrcs() {
    return new ClassScheme("NRCS salinity classes", NRCS_BREAKS, NRCS_LABELS, SALINE_DS_M);
  }

  /**
   * The user's own breaks of ECe.
   *
   * @param limitDsPerM what {@code p_above} is the chance to be above
   * @throws InputProblem if they are not above 0, finite and ascending
   */
  public static ClassScheme ofBreaks(List<Double> breaks, double limitDsPerM) {
    return ofBreaks(breaks, limitDsPerM, "dS/m");
  }

  /** The same of another property, in its unit (empty if it has none). */
  public static ClassScheme ofBreaks(List<Double> breaks, double limit, String unit) {
    double last = 0;
    for (double b : breaks) {
      if (!(b > last && b < Double.POSITIVE_INFINITY)) {
        throw new InputProblem(
            "zones: breaks", breaks.toString(), "ECe in dS/m, above 0 and ascending", "Sort them.");
      }
      last = b;
    }
    if (breaks.isEmpty()) {
      throw new InputProblem(
          "zones: breaks", "no break", "at least one ECe in dS/m", "Write e.g. breaks: [2, 4, 8].");
    }
    List<String> limits = breaks.stream().map(ClassSchemes::number).toList();
    return new ClassScheme("own breaks", breaks, between(limits, unit), !unit.isEmpty(), limit);
  }

  /**
   * Labels of classes between limits: {@code below 2 dS/m}, {@code 2 to 4 dS/m}, {@code 4 dS/m and
   * above}.
   *
   * @param limits ascending, as they are to be read; at least one
   * @param unit may be empty
   */
  public static List<String> between(List<String> limits, String unit) {
    String of = unit.isEmpty() ? "" : " " + unit;
    List<String> labels = new ArrayList<>();
    labels.add("below " + limits.get(0) + of);
    for (int k = 1; k < limits.size(); k++) {
      labels.add(limits.get(k - 1) + " to " + limits.get(k) + of);
    }
    labels.add(limits.get(limits.size() - 1) + of + " and above");
    return labels;
  }

  private static String number(double value) {
    String text = String.format(Locale.ROOT, "%.2f", value);
    return text.replaceAll("0+$", "").replaceAll("\\.$", "");
  }

  private static Made ratingOnly(String field, Crop crop) {
    ClassScheme nrcs = nrcs();
    String name = nrcs.name() + " (" + crop.name() + ": " + crop.ratingInWords() + ")";
    Finding said =
        new Finding(
            Code.RATING_ONLY,
            Place.field(field),
            crop.name() + " is rated " + crop.ratingInWords() + " (" + crop.source() + ")",
            "no threshold and slope are published for it: NRCS classes are drawn, no yield is"
                + " computed");
    return new Made(
        new ClassScheme(name, nrcs.breaks(), nrcs.labels(), nrcs.limitDsPerM()), List.of(said));
  }

  private static Made yieldSteps(
      String field, Crop crop, Crop.Tolerance tolerance, double medianError, boolean gypsiferous) {
    MaasHoffman1977 model = MaasHoffman1977.of(tolerance, gypsiferous);
    List<Integer> kept = new ArrayList<>();
    List<Integer> merged = new ArrayList<>();
    for (int pct : STEPS_PCT) {
      boolean apart = kept.isEmpty() || gap(model, kept.get(kept.size() - 1), pct) >= medianError;
      (apart ? kept : merged).add(pct);
    }
    String name =
        crop.name()
            + ", yield steps ("
            + crop.edition()
            + (gypsiferous ? ", threshold +2 dS/m on gypsum)" : ")");
    ClassScheme scheme =
        new ClassScheme(
            name,
            kept.stream().map(pct -> model.eceAtPct(pct)).toList(),
            yieldLabels(kept),
            model.thresholdDsPerM());
    return new Made(
        scheme,
        merged.isEmpty() ? List.of() : List.of(said(field, crop, model, merged, medianError)));
  }

  private static double gap(MaasHoffman1977 model, int lowerPct, int upperPct) {
    return Math.log(model.eceAtPct(upperPct) / model.eceAtPct(lowerPct));
  }

  private static List<String> yieldLabels(List<Integer> kept) {
    List<String> labels = new ArrayList<>();
    labels.add("full yield");
    for (int k = 1; k < kept.size(); k++) {
      labels.add(kept.get(k) + "-" + kept.get(k - 1) + " % yield");
    }
    int last = kept.get(kept.size() - 1);
    labels.add(last == 0 ? "no yield" : "below " + last + " % yield");
    return labels;
  }

  private static Finding said(
      String field, Crop crop, MaasHoffman1977 model, List<Integer> merged, double medianError) {
    String steps =
        merged.stream()
            .map(pct -> pct + " % (" + number(model.eceAtPct(pct)) + " dS/m)")
            .collect(Collectors.joining(", "));
    return new Finding(
        Code.BREAKS_MERGED,
        Place.field(field),
        String.format(
            Locale.ROOT,
            "yield steps of %s closer than the readings' error (%.0f %% of ECe): %s",
            crop.name(),
            100 * Math.expm1(medianError),
            steps),
        "these steps were merged into the class below; paste readings would narrow the error");
  }
}
