package fieldsalt.basis.property;

import fieldsalt.basis.setting.BasisOptions;
import fieldsalt.basis.soil.IonBasis;
import fieldsalt.basis.soil.Rows;
import fieldsalt.facts.SodiumAdsorptionRatio;
import fieldsalt.facts.UsSalinityLaboratory1954;
import fieldsalt.facts.UsSalinityLaboratory1954.SoilClass;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.read.sample.Ec;
import fieldsalt.read.sample.Ions;
import fieldsalt.read.sample.Sample;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a row says about sodium. SAR counts for the saturation extract only: dilution lowers it up
 * to three times, and extractable sodium of a fertility report is not in solution.
 *
 * @param sar of the saturation extract
 * @param sarAtLeast Ca or Mg was below detection, or Na or SAR above range: SAR is at least this
 * @param espPct measured, from exchangeable sodium and CEC, or from SAR, in that order
 * @param espSource where ESP comes from
 * @param soilClass saline, sodic or both, where ECe and ESP or SAR are known
 * @param findings what was not used, and why
 */
public record Sodium(
    Sample sample,
    OptionalDouble sar,
    boolean sarAtLeast,
    OptionalDouble espPct,
    EspSource espSource,
    Optional<SoilClass> soilClass,
    List<Finding> findings) {

  /** Where an ESP comes from, from firm to loose. */
  public enum EspSource {
    MEASURED,
    EXCHANGEABLE_SODIUM,
    SAR_OF_PASTE,
    SAR_OF_ONE_TO_FIVE,
    NONE
  }

  public Sodium {
    findings = List.copyOf(findings);
  }

  /** Whether the row says anything about sodium. */
  static boolean isTold(Sample sample) {
    Ions ions = sample.ions();
    return ions.sar().isPresent()
        || ions.espPct().isPresent()
        || ions.na().isPresent()
        || ions.naExtractableCmolKg().isPresent();
  }

  /**
   * Reads one row.
   *
   * @param ece of the row in dS/m, where known
   */
  static Sodium of(Sample sample, OptionalDouble ece, BasisOptions options) {
    return new Reader(sample, ece, options).read();
  }

  /**
   * The class: ESP decides, else SAR (sodic from 13). Lower limits belong to the upper class. US
   * Salinity Laboratory Staff 1954, Handbook 60, ch. 1.
   *
   * @param ece dS/m
   */
  public static Optional<SoilClass> classOf(double ece, OptionalDouble espPct, OptionalDouble sar) {
    if (espPct.isPresent()) {
      return Optional.of(UsSalinityLaboratory1954.classOf(ece, espPct.getAsDouble()));
    }
    return sar.stream()
        .mapToObj(
            value ->
                UsSalinityLaboratory1954.classOf(
                    ece, value >= UsSalinityLaboratory1954.SODIC_SAR ? 100 : 0))
        .findFirst();
  }

  /**
   * Exchangeable sodium without what is in solution: Na_extractable − Na_e SP/1000, never below 0.
   *
   * @param naExtractable cmolc/kg
   * @param naSolubleMeqL of the saturation extract
   * @param spPct saturation percentage
   * @return cmolc/kg
   */
  public static double exchangeable(double naExtractable, double naSolubleMeqL, double spPct) {
    return Math.max(0, naExtractable - naSolubleMeqL * spPct / 1000);
  }

  /** ESP = 1.95 SAR1:5 + 1.8. Rengasamy et al. 1984, from memory and unconfirmed; error 35 %. */
  static double espFromOneToFive(double sar) {
    return Math.min(100, 1.95 * sar + 1.8);
  }

  /** The work on one row. */
  private static final class Reader {
    private final Sample sample;
    private final Ions ions;
    private final IonBasis basis;
    private final OptionalDouble ece;
    private final BasisOptions options;
    private final List<Finding> findings = new ArrayList<>();
    private EspSource source = EspSource.NONE;

    Reader(Sample sample, OptionalDouble ece, BasisOptions options) {
      this.sample = sample;
      this.ions = sample.ions();
      this.basis = IonBasis.of(sample);
      this.ece = ece;
      this.options = options;
    }

    Sodium read() {
      OptionalDouble any = ratio();
      boolean sound = cationsFit();
      OptionalDouble sar = basis == IonBasis.PASTE && sound ? any : OptionalDouble.empty();
      if (any.isPresent() && basis != IonBasis.PASTE) {
        note(
            Code.SAR_NOT_PASTE,
            "sodium read in " + basisName(),
            basis == IonBasis.EXTRACTABLE
                ? "not taken as SAR: it is not in solution"
                : "not taken as the SAR of the saturation extract: dilution lowers it up to three"
                    + " times");
      }
      boolean atLeast = sar.isPresent() && isAtLeast();
      OptionalDouble esp = esp(sar, any);
      Optional<SoilClass> soilClass =
          ece.isPresent() ? classOf(ece.getAsDouble(), esp, sar) : Optional.empty();
      return new Sodium(sample, sar, atLeast, esp, source, soilClass, findings);
    }

    private String basisName() {
      return switch (basis) {
        case PASTE -> "the saturation extract";
        case ONE_TO_FIVE -> "the 1:5 extract";
        case OTHER_EXTRACT -> "a diluted extract";
        case EXTRACTABLE -> "an ammonium acetate or like extract";
        case UNKNOWN -> "an extract that nobody named (ions_method)";
      };
    }

    /** SAR of whatever the ions were read in; from the ions themselves where all are there. */
    private OptionalDouble ratio() {
      if (!hasIons()) {
        return ions.sar();
      }
      double sar =
          SodiumAdsorptionRatio.ofMeqL(
              ions.na().getAsDouble(), ions.ca().getAsDouble(), ions.mg().getAsDouble());
      if (contradicts(sar)) {
        note(
            Code.SAR_MISMATCH,
            "SAR "
                + Rows.number(ions.sar().getAsDouble())
                + ", but its ions give "
                + Rows.number(sar),
            "the ions' value is used; ask the laboratory, and check the units of Na, Ca and Mg");
      }
      return OptionalDouble.of(sar);
    }

    /** Where a limit stands for a figure that nobody knows, the ratio is at least, or at most. */
    private boolean isAtLeast() {
      boolean fromIons = hasIons();
      boolean below = fromIons && (ions.isAtMost("ca") || ions.isAtMost("mg"));
      boolean above = ions.isAtLeast(fromIons ? "na" : "sar");
      if (below || above) {
        note(
            Code.SAR_AT_LEAST,
            below
                ? "Ca or Mg below detection"
                : (fromIons ? "Na" : "SAR") + " above what the laboratory could read",
            "the limit is used: read SAR as \"at least\"");
      }
      return below || above;
    }

    private boolean hasIons() {
      return ions.na().isPresent()
          && ions.ca().isPresent()
          && ions.mg().isPresent()
          && ions.ca().getAsDouble() + ions.mg().getAsDouble() > 0;
    }

    /** Whether the sheet's own ratio differs from that of its ions by more than rounding. */
    private boolean contradicts(double sar) {
      double own = ions.sar().orElse(sar);
      boolean open = own < sar ? ions.isAtLeast("sar") : ions.isAtMost("sar");
      return !open && Math.abs(own - sar) > Math.max(0.3, 0.1 * sar);
    }

    /** Cation sum over EC of the same extract: 8 to 14 meq/L per dS/m. */
    private boolean cationsFit() {
      boolean all = ions.na().isPresent() && ions.ca().isPresent() && ions.mg().isPresent();
      boolean exact =
          ions.atLeast().isEmpty()
              && sample.ec().filter(ec -> ec.censored() == Ec.Censored.NO).isPresent();
      boolean same =
          sample.method().isPresent()
              && basis != IonBasis.EXTRACTABLE
              && IonBasis.ofMethod(sample.method().get()) == basis;
      if (!all || !exact || !same || sample.ec().get().dSPerM() <= 0) {
        return true;
      }
      double sum =
          ions.na().getAsDouble()
              + ions.ca().getAsDouble()
              + ions.mg().getAsDouble()
              + ions.k().orElse(0);
      double perEc = sum / sample.ec().get().dSPerM();
      if (perEc >= 8 && perEc <= 14) {
        return true;
      }
      note(
          Code.CATION_SUM,
          "cations "
              + Rows.number(sum)
              + " meq/L at EC "
              + Rows.number(sample.ec().get().dSPerM())
              + " dS/m, that is "
              + Rows.number(perEc)
              + " per dS/m (8 to 14 is usual)",
          "SAR of this row is not used; ask the laboratory, one of the figures is wrong");
      return false;
    }

    private OptionalDouble esp(OptionalDouble sar, OptionalDouble any) {
      if (ions.espPct().isPresent() && !isCalculated(sar.isPresent() ? sar : ions.sar())) {
        source = EspSource.MEASURED;
        tellLimitOfEsp();
        return ions.espPct();
      }
      OptionalDouble exchange = fromExchange(sar);
      if (exchange.isPresent()) {
        source = EspSource.EXCHANGEABLE_SODIUM;
        return exchange;
      }
      if (sar.isPresent()) {
        source = EspSource.SAR_OF_PASTE;
        return OptionalDouble.of(UsSalinityLaboratory1954.espFromSar(sar.getAsDouble()));
      }
      if (any.isPresent() && basis == IonBasis.ONE_TO_FIVE && options.espFromOneToFive()) {
        source = EspSource.SAR_OF_ONE_TO_FIVE;
        return OptionalDouble.of(espFromOneToFive(any.getAsDouble()));
      }
      return OptionalDouble.empty();
    }

    private void tellLimitOfEsp() {
      if (ions.isAtLeast("esp_pct")) {
        note(
            Code.ESP_AT_LEAST,
            "ESP above what the laboratory could read",
            "the limit is used: read ESP as \"at least\"");
      }
    }

    /** An ESP within 0.3 of the Handbook 60 value of the row's SAR was not measured. */
    private boolean isCalculated(OptionalDouble sar) {
      if (sar.isEmpty()) {
        return false;
      }
      double value = UsSalinityLaboratory1954.espFromSar(sar.getAsDouble());
      if (Math.abs(value - ions.espPct().getAsDouble()) > 0.3) {
        return false;
      }
      note(
          Code.CALCULATED_ESP,
          "ESP "
              + Rows.number(ions.espPct().getAsDouble())
              + " % is the Handbook 60 value of SAR "
              + Rows.number(sar.getAsDouble()),
          "taken as calculated: it counts as that SAR, not as a measurement");
      return true;
    }

    private OptionalDouble fromExchange(OptionalDouble sar) {
      if (ions.naExtractableCmolKg().isEmpty() || sample.soil().cecCmolKg().isEmpty()) {
        return OptionalDouble.empty();
      }
      double na = ions.naExtractableCmolKg().getAsDouble();
      double cec = sample.soil().cecCmolKg().getAsDouble();
      boolean soluble =
          basis == IonBasis.PASTE && ions.na().isPresent() && sample.soil().spPct().isPresent();
      if (soluble) {
        double left =
            exchangeable(na, ions.na().getAsDouble(), sample.soil().spPct().getAsDouble());
        return OptionalDouble.of(Math.min(100, 100 * left / cec));
      }
      if (ece.orElse(0) < 2 && ece.isPresent()) {
        return OptionalDouble.of(Math.min(100, 100 * na / cec));
      }
      note(
          Code.SODIUM_NOT_DEDUCTED,
          "extractable sodium with the soluble part in it, ECe "
              + (ece.isPresent() ? Rows.number(ece.getAsDouble()) + " dS/m" : "not known"),
          sar.isPresent()
              ? "ESP from the SAR of the paste is used instead"
              : "no ESP: the gypsum plan is a draft; measure SAR of the saturation extract, or Na"
                  + " of it and SP");
      return OptionalDouble.empty();
    }

    private void note(Code code, String found, String done) {
      findings.add(Rows.finding(code, sample, found, done));
    }
  }
}
