package fieldsalt.basis.relation;

import fieldsalt.basis.soil.BulkSoil;
import fieldsalt.basis.soil.SaturationPercentage;
import fieldsalt.read.sample.Soil;
import java.util.OptionalDouble;

/**
 * Apparent conductivity of the bulk soil (ECa) to ECe at field capacity: the two-pathway equation
 * of {@link BulkSoil} with SP = 0.76 clay % + 27.25, ρb = 1.73 − 0.0067 SP, θw = SP ρb/200, θws =
 * 0.639 θw + 0.011, θss = ρb/2.65, ECss = 0.019 SP − 0.434 and ECe = 100 ECw θw/(ρb SP). dS/m.
 * Rhoades, Manteghi, Shouse &amp; Alves 1989, Soil Sci. Soc. Am. J. 53:433-439 (structure seen,
 * coefficients from memory). Error of ln ECe about 0.35 near field capacity; too dry a soil reads
 * too low. No cores: do not publish as ECe. Refuses SP of 24 % and below, where ECss is not above
 * 0, and a row without clay or SP.
 */
final class RhoadesEtAl1989 implements EceRelation {
  static final double SD_LN = 0.35;

  private static double bulkDensity(double spPct) {
    return 1.73 - 0.0067 * spPct;
  }

  private static double waterAtFieldCapacity(double spPct) {
    return spPct * bulkDensity(spPct) / 200;
  }

  static double solidConductivity(double spPct) {
    return 0.019 * spPct - 0.434;
  }

  static BulkSoil at(double spPct) {
    double water = waterAtFieldCapacity(spPct);
    return new BulkSoil(
        bulkDensity(spPct) / 2.65, 0.639 * water + 0.011, water, solidConductivity(spPct));
  }

  /** ECe of soil water at field capacity: half its EC. */
  static double ece(double ecWaterDsM, double spPct) {
    return 100 * ecWaterDsM * waterAtFieldCapacity(spPct) / (bulkDensity(spPct) * spPct);
  }

  @Override
  public String name() {
    return "RhoadesEtAl1989";
  }

  @Override
  public String citation() {
    return "Rhoades et al. 1989, Soil Sci. Soc. Am. J. 53:433-439";
  }

  @Override
  public String confidence() {
    return "M";
  }

  @Override
  public String domain() {
    return "bulk soil at field capacity; without cores not to be published as ECe";
  }

  /** No laboratory method is a reading of the bulk soil. */
  @Override
  public boolean takes(MethodKey method) {
    return false;
  }

  @Override
  public Outcome convert(double ecDsM, Soil soil) {
    OptionalDouble sp =
        soil.spPct().isPresent()
            ? soil.spPct()
            : soil.clayPct().stream().map(SaturationPercentage::handMixed).findFirst();
    if (sp.isEmpty()) {
      return new Outcome.Refusal("needs clay % or a saturation percentage");
    }
    if (sp.getAsDouble() <= 24 || sp.getAsDouble() > 200) {
      return new Outcome.Refusal("holds for saturation percentages of 24 to 200 only");
    }
    double water = at(sp.getAsDouble()).water(ecDsM);
    return Outcome.ece(ece(water, sp.getAsDouble()), SD_LN).warn("no cores: do not publish as ECe");
  }
}
