package fieldsalt.basis.layer;

import fieldsalt.basis.relation.DefaultMultiplier;
import fieldsalt.basis.relation.EceRelation;
import fieldsalt.basis.relation.MethodKey;
import fieldsalt.basis.relation.Outcome;
import fieldsalt.basis.relation.PasteProbeInverse;
import fieldsalt.basis.relation.Relations;
import fieldsalt.basis.relation.SaturatedPaste;
import fieldsalt.basis.setting.BasisSettings;
import fieldsalt.basis.setting.ConversionErrors;
import fieldsalt.basis.setting.LaboratorySettings;
import fieldsalt.basis.setting.ReadingError;
import fieldsalt.basis.soil.Rows;
import fieldsalt.basis.soil.SoilGroup;
import fieldsalt.basis.soil.Temperature;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.quantity.ReadingKind;
import fieldsalt.read.sample.Ec;
import fieldsalt.read.sample.Sample;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Brings one row after another to ECe with its errors, or leaves it out with a finding. The error
 * of a conversion is divided as {@link ConversionErrors} says; a laboratory's own error comes on
 * top, for paste rows too.
 */
public final class Conversion {
  private static final EceRelation PASTE = new SaturatedPaste();
  private static final double MOST_DS_M = 250;

  /** Half of the lowest threshold of any crop: what may lie below matters to none. */
  private static final double MATTERS_DS_M = 0.5;

  private final BasisSettings settings;
  private final SpecialSoils special;
  private final List<Finding> findings = new ArrayList<>();
  private final Set<String> said = new HashSet<>();

  Conversion(BasisSettings settings) {
    this.settings = settings;
    this.special = new SpecialSoils(settings);
  }

  /** Findings of the rows that were left out. */
  List<Finding> findings() {
    return List.copyOf(findings);
  }

  /** The row on the basis; empty, with a finding, if it cannot be used; empty if it has no EC. */
  Optional<LayerReading> convert(Sample sample) {
    if (sample.ec().isEmpty()) {
      return Optional.empty();
    }
    Optional<Finding> no = refusal(sample);
    if (no.isPresent()) {
      findings.add(no.get());
      return Optional.empty();
    }
    LayerReading reading = new Row(sample).reading();
    if (reading.ece() > MOST_DS_M) {
      findings.add(
          Rows.finding(
              Code.ECE_IMPOSSIBLE,
              sample,
              "ECe " + Rows.number(reading.ece()) + " dS/m by conversion",
              "row left out: no soil solution has that; check the unit and the method"));
      return Optional.empty();
    }
    return Optional.of(reading);
  }

  private Optional<Finding> refusal(Sample sample) {
    if (sample.method().isEmpty()) {
      return Optional.of(
          Rows.finding(
              Code.NO_METHOD,
              sample,
              "an EC without method",
              "row left out; say paste, 1:1, 1:2, 1:2.5 or 1:5 in the column method, in defaults or"
                  + " for its laboratory"));
    }
    Optional<Finding> unit = EcLimits.check(sample);
    return unit.isPresent() ? unit : special.refusal(sample, relation(sample));
  }

  private EceRelation relation(Sample sample) {
    MethodKey key = MethodKey.of(sample.method().orElseThrow(), sample.reading());
    LaboratorySettings laboratory = settings.laboratory(sample.laboratory());
    Optional<EceRelation> asked = laboratory.relation(key);
    return asked.filter(relation -> fits(relation, key)).orElse(standard(key, laboratory));
  }

  /** A relation named for a method settles of what kind the readings are that do not say. */
  private static boolean fits(EceRelation relation, MethodKey key) {
    boolean unsaid = key.kind() == ReadingKind.UNKNOWN;
    return relation.takes(key) || (unsaid && Relations.serves(relation, key.method()));
  }

  private static EceRelation standard(MethodKey key, LaboratorySettings laboratory) {
    if (key.isBasis()) {
      return PASTE;
    }
    return key.method() == fieldsalt.quantity.Method.PASTE
        ? new PasteProbeInverse()
        : new DefaultMultiplier(key, laboratory.isPrairie());
  }

  /** The work on one row. */
  private final class Row {
    private final Sample sample;
    private final MethodKey key;
    private final LaboratorySettings laboratory;
    private final List<Finding> notes = new ArrayList<>();
    private double ownVariance;

    Row(Sample sample) {
      this.sample = sample;
      this.key = MethodKey.of(sample.method().orElseThrow(), sample.reading());
      this.laboratory = settings.laboratory(sample.laboratory());
    }

    LayerReading reading() {
      double ec = ecAt25();
      EceRelation relation = usable(ec);
      Outcome.Ece plain = (Outcome.Ece) relation.convert(ec, sample.soil());
      plain.warnings().forEach(w -> note(Code.RELATION_WARNING, relation.name(), w));
      Outcome.Ece ece = special.adjust(plain, ec, sample, notes);
      noteLimit(ece);
      double conversion = withRange(ece);
      addOwnErrors();
      return new LayerReading(
          sample,
          key,
          Math.log(ece.dSPerM()),
          ownVariance + ownConversion(conversion) + square(laboratoryError().own()),
          shared(conversion),
          relation,
          ece.dSPerM() / ec,
          notes);
    }

    /** The relation asked for, or the default if that one refuses, with a finding. */
    private EceRelation usable(double ec) {
      Optional<EceRelation> asked = laboratory.relation(key);
      EceRelation chosen = relation(sample);
      if (asked.isPresent() && !fits(asked.get(), key)) {
        once(
            Code.RELATION_METHOD,
            asked.get().name() + " is not made for " + key.label(),
            "the default multiplier was used");
      }
      checkRegion(chosen);
      if (chosen.convert(ec, sample.soil()) instanceof Outcome.Refusal refusal) {
        note(
            Code.RELATION_REFUSED,
            chosen.name(),
            refusal.reason() + "; the default multiplier was used");
        return standard(key, laboratory);
      }
      return chosen;
    }

    private void checkRegion(EceRelation chosen) {
      boolean prairie = chosen.region().equals(LaboratorySettings.PRAIRIE);
      if (prairie && !laboratory.isPrairie()) {
        once(
            Code.RELATION_REGION,
            chosen.name() + " was made for " + chosen.domain(),
            "used as asked; say region: sulfate-prairie if these soils are such, else choose"
                + " another");
      }
    }

    /** A finding about all rows of this laboratory and method. */
    private void once(Code code, String found, String done) {
      Place where = Place.laboratory(sample.laboratory(), key.label(), Set.of());
      if (said.add(code.id() + sample.laboratory() + key.label())) {
        findings.add(new Finding(code, where, found, done));
      }
    }

    private double ecAt25() {
      Ec ec = sample.ec().orElseThrow();
      return censored(ec) * temperatureFactor();
    }

    private double censored(Ec ec) {
      ConversionErrors sizes = settings.conversionErrors();
      return switch (ec.censored()) {
        case NO -> ec.dSPerM();
        case BELOW -> {
          ownVariance += square(sizes.belowDetection());
          yield ec.dSPerM() / 2;
        }
        case ABOVE -> {
          ownVariance += square(sizes.aboveRange());
          note(
              Code.ABOVE_RANGE,
              "EC >" + Rows.number(ec.dSPerM()) + " dS/m",
              "1.4 times the limit is used, with a wide error; read the ECe as \"at least\"");
          yield ec.dSPerM() * 1.4;
        }
      };
    }

    private void noteLimit(Outcome.Ece ece) {
      Ec ec = sample.ec().orElseThrow();
      if (ec.censored() == Ec.Censored.BELOW && 2 * ece.dSPerM() > MATTERS_DS_M) {
        note(
            Code.BELOW_DETECTION,
            "EC <"
                + Rows.number(ec.dSPerM())
                + " dS/m, that is ECe <"
                + Rows.number(2 * ece.dSPerM()),
            "half the limit is used, with a wide error; ask for a lower detection limit");
      }
    }

    private double temperatureFactor() {
      if (sample.temperatureCompensated()) {
        return 1;
      }
      if (sample.temperatureC().isEmpty()) {
        ownVariance += square(settings.specialSoils().uncompensated());
        note(
            Code.TEMPERATURE_MISSING,
            "EC not compensated, temperature not given",
            "used as if at 25 C, with a wider error; give temperature_c");
        return 1;
      }
      double celsius = sample.temperatureC().getAsDouble();
      return Temperature.isStandard(celsius) ? 1 : Temperature.factor(celsius);
    }

    private double withRange(Outcome.Ece ece) {
      ConversionErrors sizes = settings.conversionErrors();
      if (key.isBasis()) {
        return ece.sdLn();
      }
      if (ece.dSPerM() > ConversionErrors.HIGH_END_DS_M) {
        note(
            Code.BEYOND_FITTED_RANGE,
            "ECe " + Rows.number(ece.dSPerM()) + " dS/m by conversion",
            "kept with a wider error: no relation was fitted above ECe 25 dS/m");
        return Math.hypot(ece.sdLn(), sizes.highEnd());
      }
      return ece.dSPerM() < ConversionErrors.LOW_END_DS_M
          ? Math.hypot(ece.sdLn(), sizes.lowEnd())
          : ece.sdLn();
    }

    private void addOwnErrors() {
      ownVariance += special.ownVariance(sample, key, notes);
    }

    private ReadingError laboratoryError() {
      ReadingError standard = settings.laboratoryErrors().of(key);
      return laboratory.sdLn().isPresent()
          ? standard.withTotal(laboratory.sdLn().getAsDouble())
          : standard;
    }

    private double ownConversion(double conversion) {
      return square(conversion) * (1 - settings.conversionErrors().sharedShare());
    }

    private List<LayerReading.Term> shared(double conversion) {
      double half = square(conversion) * settings.conversionErrors().sharedShare() / 2;
      String group = SoilGroup.of(sample.soil()).name().toLowerCase(java.util.Locale.ROOT);
      String name = sample.laboratory().isEmpty() ? "laboratory not named" : sample.laboratory();
      List<LayerReading.Term> terms = new ArrayList<>();
      terms.add(
          new LayerReading.Term(
              "laboratory: " + name + ", " + key.label(),
              Math.sqrt(half + square(laboratoryError().shared()))));
      if (half > 0) {
        terms.add(
            new LayerReading.Term(
                "soil: "
                    + key.label()
                    + ", "
                    + (group.equals("unknown") ? "texture unknown" : group),
                Math.sqrt(half)));
      }
      return terms;
    }

    private void note(Code code, String found, String done) {
      notes.add(Rows.finding(code, sample, found, done));
    }
  }

  public static double square(double x) {
    return x * x;
  }

  static boolean isPasteProbe(Sample sample) {
    return sample.method().filter(m -> m == fieldsalt.quantity.Method.PASTE).isPresent()
        && sample.reading() == ReadingKind.SLURRY;
  }
}
