package fieldsalt.basis.relation;

import fieldsalt.basis.soil.BulkSoil;
import fieldsalt.quantity.Method;
import fieldsalt.quantity.ReadingKind;
import fieldsalt.read.sample.Soil;

/**
 * A probe in the saturated paste to ECe: the two-pathway equation of {@link BulkSoil} in the paste,
 * θw = SP/(SP + 100/2.65), θss = 1 − θw, θw − θws = 0.0237 SP^0.6657, ECss = 0.019 SP − 0.434, and
 * the water of the paste is the extract. dS/m at 25 °C. Rhoades, Manteghi, Shouse &amp; Alves 1989,
 * Soil Sci. Soc. Am. J. 53:428-433 (from memory). Only with measured SP, 25 to 150 %.
 */
public final class PasteProbeInverse implements EceRelation {
  private static final double SD_LN = 0.35;
  private static final double SOLID_VOLUME = 100 / 2.65;

  static BulkSoil paste(double spPct) {
    double water = spPct / (spPct + SOLID_VOLUME);
    double continuous = 0.0237 * Math.pow(spPct, 0.6657);
    return new BulkSoil(
        1 - water, water - continuous, water, RhoadesEtAl1989.solidConductivity(spPct));
  }

  @Override
  public String name() {
    return "RhoadesEtAl1989Paste";
  }

  @Override
  public String citation() {
    return "Rhoades et al. 1989, Soil Sci. Soc. Am. J. 53:428-433";
  }

  @Override
  public String confidence() {
    return "M";
  }

  @Override
  public String domain() {
    return "a probe in the saturated paste, with measured saturation percentage";
  }

  @Override
  public boolean takes(MethodKey method) {
    return method.method() == Method.PASTE && method.kind() == ReadingKind.SLURRY;
  }

  @Override
  public Outcome convert(double ecDsM, Soil soil) {
    if (soil.spPct().isEmpty()) {
      return new Outcome.Refusal("a probe in the paste needs a measured saturation percentage");
    }
    double sp = soil.spPct().getAsDouble();
    if (sp < 25 || sp > 150) {
      return new Outcome.Refusal("holds for saturation percentages of 25 to 150 only");
    }
    return Outcome.ece(paste(sp).water(ecDsM), SD_LN);
  }
}
