package fieldsalt.basis.relation;

import fieldsalt.facts.GradeMultipliers;
import fieldsalt.facts.Multipliers.Multiplier;
import fieldsalt.quantity.Method;
import fieldsalt.read.sample.Soil;
import java.util.Optional;

/**
 * ECe = (2.46 + 3.03/θ) EC1:5, θ = saturation percentage / 100; dS/m at 25 °C. Slavich PG,
 * Petterson GH (1993) Aust. J. Soil Res. 31:73-81, abstract (formula seen in print). South-east
 * Australia, θ by capillary wetting: a hand-mixed SP holds more water, so the factor comes out a
 * little low and so does that laboratory's own ECe. Where SP is not measured: their multipliers by
 * field texture grade (from memory). Error of ln ECe: 0.15 with SP (judgement; the abstract prints
 * none), by grade as in the table. Refuses a row that has neither SP nor a texture grade.
 */
final class SlavichPetterson1993 implements EceRelation {
  static final double SD_LN_WITH_SP = 0.15;

  /** The multiplier at a saturation percentage, dimensionless. */
  static double multiplier(double spPct) {
    return 2.46 + 303 / spPct;
  }

  /** The saturation fraction θ at which the formula gives a multiplier. */
  static double thetaOf(double multiplier) {
    return 3.03 / (multiplier - 2.46);
  }

  @Override
  public String name() {
    return "SlavichPetterson1993";
  }

  @Override
  public String citation() {
    return "Slavich & Petterson 1993, Aust. J. Soil Res. 31:73-81";
  }

  @Override
  public String confidence() {
    return "S";
  }

  @Override
  public String domain() {
    return "south-east Australia; saturation percentage by capillary wetting, or texture grade";
  }

  @Override
  public boolean takes(MethodKey method) {
    return method.method() == Method.ONE_TO_FIVE;
  }

  @Override
  public Outcome convert(double ecDsM, Soil soil) {
    if (soil.spPct().isPresent()) {
      return Outcome.ece(ecDsM * multiplier(soil.spPct().getAsDouble()), SD_LN_WITH_SP);
    }
    Optional<Multiplier> grade = GradeMultipliers.of(soil.texture());
    if (grade.isEmpty()) {
      return new Outcome.Refusal("needs a saturation percentage or a texture class");
    }
    return Outcome.ece(ecDsM * grade.get().value(), grade.get().sdLn());
  }
}
