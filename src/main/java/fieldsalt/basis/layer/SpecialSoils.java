package fieldsalt.basis.layer;

import fieldsalt.basis.relation.EceRelation;
import fieldsalt.basis.relation.MethodKey;
import fieldsalt.basis.relation.Outcome;
import fieldsalt.basis.setting.BasisSettings;
import fieldsalt.basis.setting.SpecialSoilErrors;
import fieldsalt.basis.soil.IonBasis;
import fieldsalt.basis.soil.Rows;
import fieldsalt.basis.soil.SaturationPercentage;
import fieldsalt.basis.soil.SoilGroup;
import fieldsalt.basis.soil.Temperature;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.quantity.Method;
import fieldsalt.quantity.TextureGroup;
import fieldsalt.read.sample.Ions;
import fieldsalt.read.sample.Sample;
import fieldsalt.read.sample.Soil;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Soils and readings that an ordinary multiplier does not fit: gypsum, organic and sodic carbonate
 * soils, a paste that did not rest, a probe in the paste, a temperature out of range.
 */
final class SpecialSoils {
  /** EC of a solution saturated with gypsum, dS/m (Rayment &amp; Lyons 2011, method 3A1). */
  private static final double GYPSUM_EC = 2.2;

  private static final double HIGH_SP = 100;

  private final BasisSettings settings;
  private final SpecialSoilErrors sizes;

  SpecialSoils(BasisSettings settings) {
    this.settings = settings;
    this.sizes = settings.specialSoils();
  }

  /** Why a row cannot be converted at all; empty if it can. */
  Optional<Finding> refusal(Sample sample, EceRelation relation) {
    if (Conversion.isPasteProbe(sample)) {
      Optional<Finding> no = pasteProbe(sample, relation);
      if (no.isPresent()) {
        return no;
      }
    }
    return temperature(sample);
  }

  private Optional<Finding> pasteProbe(Sample sample, EceRelation relation) {
    String found = "a probe in the paste itself";
    if (!settings.options().invertPasteProbe()) {
      return Optional.of(
          Rows.finding(
              Code.PASTE_SLURRY,
              sample,
              found,
              "row left out: it is not ECe, which is 1.5 to 6 times higher; extract the paste, or"
                  + " say paste-probe: invert and give a measured sp_pct"));
    }
    return relation.convert(1, sample.soil()) instanceof Outcome.Refusal no
        ? Optional.of(
            Rows.finding(Code.PASTE_SLURRY, sample, found, "row left out: " + no.reason()))
        : Optional.empty();
  }

  private static Optional<Finding> temperature(Sample sample) {
    boolean corrected = !sample.temperatureCompensated() && sample.temperatureC().isPresent();
    if (!corrected || Temperature.isValid(sample.temperatureC().getAsDouble())) {
      return Optional.empty();
    }
    double celsius = sample.temperatureC().getAsDouble();
    String hint = celsius > 47 && celsius < 110 ? "; it looks like degrees Fahrenheit" : "";
    return Optional.of(
        Rows.finding(
            Code.TEMPERATURE_RANGE,
            sample,
            Rows.number(celsius) + " C, not compensated",
            "row left out: the correction holds from 3 to 47 C" + hint));
  }

  /** ECe and conversion error for this soil; what was changed is added to the notes. */
  Outcome.Ece adjust(Outcome.Ece plain, double ec, Sample sample, List<Finding> notes) {
    if (sample.method().orElseThrow() == Method.PASTE) {
      return plain;
    }
    Outcome.Ece ece = gypsum(plain, ec, sample, notes);
    ece = organic(ece, sample, notes);
    return sodicCarbonate(ece, sample, notes);
  }

  private Outcome.Ece gypsum(Outcome.Ece plain, double ec, Sample sample, List<Finding> notes) {
    double f = plain.dSPerM() / ec;
    double upper = plain.dSPerM();
    double lower = Math.min(upper, GYPSUM_EC + f * Math.max(0, ec - GYPSUM_EC));
    double sd = Math.max(plain.sdLn(), Math.log(upper / lower) / 3.3);
    if (hasGypsum(sample)) {
      notes.add(
          Rows.finding(
              Code.GYPSUM,
              sample,
              "gypsum dissolves in the extract: " + between(lower, upper),
              "the geometric mean is used with a wide error; ask for a saturated paste"));
      return new Outcome.Ece(Math.sqrt(upper * lower), sd, plain.warnings());
    }
    boolean prairie = settings.laboratory(sample.laboratory()).isPrairie();
    if (prairie && sample.method().orElseThrow() == Method.ONE_TO_FIVE && ec >= 2) {
      notes.add(
          Rows.finding(
              Code.GYPSUM_SUSPECTED,
              sample,
              "EC1:5 of 2 dS/m or more in a sulphate soil: " + between(lower, upper),
              "the multiplier is used with a wide error; ask for a saturated paste"));
      return new Outcome.Ece(upper, sd, plain.warnings());
    }
    return plain;
  }

  private static String between(double lower, double upper) {
    return "ECe between " + Rows.number(lower) + " and " + Rows.number(upper) + " dS/m";
  }

  /** 1 % gypsum or more, or calcium and sulphate of the paste both above 20 meq/L. */
  static boolean hasGypsum(Sample sample) {
    Ions ions = sample.ions();
    boolean dissolved =
        ions.ca().orElse(0) > 20
            && ions.so4().orElse(0) > 20
            && IonBasis.of(sample) == IonBasis.PASTE;
    OptionalDouble gypsum = sample.soil().gypsumPct();
    return gypsum.isPresent() ? gypsum.getAsDouble() >= 1 : dissolved;
  }

  private Outcome.Ece organic(Outcome.Ece ece, Sample sample, List<Finding> notes) {
    if (sample.soil().spPct().orElse(0) > HIGH_SP) {
      return highSp(ece, sample, notes);
    }
    boolean organic = sample.soil().omPct().orElse(0) > 8;
    if (!organic || sample.soil().spPct().isPresent()) {
      return ece;
    }
    notes.add(
        Rows.finding(
            Code.ORGANIC_SOIL,
            sample,
            Rows.number(sample.soil().omPct().getAsDouble()) + " % organic matter, SP not measured",
            "kept with a wide error; measure the saturation percentage"));
    return widened(ece, sizes.organic());
  }

  private Outcome.Ece highSp(Outcome.Ece ece, Sample sample, List<Finding> notes) {
    notes.add(
        Rows.finding(
            Code.HIGH_SP,
            sample,
            "saturation percentage " + Rows.number(sample.soil().spPct().getAsDouble()),
            "kept with a wider error: swelling clay or organic soil, beyond the fitted soils; ask for"
                + " a saturated paste"));
    return widened(ece, sizes.highSp());
  }

  private Outcome.Ece sodicCarbonate(Outcome.Ece ece, Sample sample, List<Finding> notes) {
    if (!isSodicCarbonate(sample)) {
      return ece;
    }
    notes.add(
        Rows.finding(
            Code.SODIC_CARBONATE,
            sample,
            "sodic soil with pH " + Rows.number(sample.soil().ph().getAsDouble()),
            "kept with a wide error: published factors of such soils differ by half; ask for a"
                + " saturated paste"));
    return widened(ece, sizes.sodicCarbonate());
  }

  private static boolean isSodicCarbonate(Sample sample) {
    boolean alkaline = sample.soil().ph().orElse(7) >= 8.5;
    boolean sodic = sample.ions().sar().orElse(0) >= 13 || sample.ions().espPct().orElse(0) >= 15;
    return alkaline && sodic;
  }

  private static Outcome.Ece widened(Outcome.Ece ece, double leastSdLn) {
    return new Outcome.Ece(ece.dSPerM(), Math.max(ece.sdLn(), leastSdLn), ece.warnings());
  }

  /** Own variance that a clay paste read too early gets on top. */
  double ownVariance(Sample sample, MethodKey key, List<Finding> notes) {
    boolean clay = SoilGroup.of(sample.soil()) == TextureGroup.FINE;
    if (!key.isBasis() || !clay || sample.restedH().orElse(24) >= 12) {
      return 0;
    }
    notes.add(
        Rows.finding(
            Code.PASTE_NOT_RESTED,
            sample,
            "a clay paste read after " + Rows.number(sample.restedH().getAsDouble()) + " h",
            "kept with a wider error: let a clay paste stand overnight before extracting"));
    return Conversion.square(sizes.unrestedPaste());
  }

  /** Findings on a soil column against the others: SP against texture. */
  static Optional<Finding> spAgainstTexture(Sample sample) {
    Soil soil = sample.soil();
    OptionalDouble expected = SaturationPercentage.expected(soil);
    if (soil.spPct().isEmpty() || expected.isEmpty() || soil.omPct().orElse(0) > 8) {
      return Optional.empty();
    }
    double off = soil.spPct().getAsDouble() - expected.getAsDouble();
    return Math.abs(off) <= 15
        ? Optional.empty()
        : Optional.of(
            Rows.finding(
                Code.SP_TEXTURE,
                sample,
                "SP "
                    + Rows.number(soil.spPct().getAsDouble())
                    + " %, but clay or texture lets expect about "
                    + Rows.number(expected.getAsDouble())
                    + " %",
                "SP is used; check it, and the texture"));
  }
}
