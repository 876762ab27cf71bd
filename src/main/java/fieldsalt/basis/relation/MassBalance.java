package fieldsalt.basis.relation;

import fieldsalt.basis.soil.SaturationPercentage;
import fieldsalt.quantity.Method;
import fieldsalt.quantity.ReadingKind;
import fieldsalt.read.sample.Soil;
import java.util.OptionalDouble;

/**
 * ECe = EC n 100/SP for n parts of water to one of soil by mass: all salt dissolved already in the
 * paste, EC proportional to concentration. dS/m at 25 °C. Dilution argument of US Salinity
 * Laboratory Staff 1954, USDA Handbook 60. An upper bound: sparingly soluble salts and exchange add
 * ions on dilution (at 1:5, Slavich &amp; Petterson 1993 lie 10 to 30 % lower). Needs SP, else clay
 * (SP = 0.76 clay + 27.25).
 */
public final class MassBalance implements EceRelation {
  private static final double SD_LN = 0.30;

  private final double partsOfWater;
  private final Method method;

  public MassBalance(Method method) {
    this.method = method;
    this.partsOfWater =
        switch (method) {
          case ONE_TO_ONE -> 1;
          case ONE_TO_TWO -> 2;
          case ONE_TO_TWO_AND_HALF -> 2.5;
          case ONE_TO_FIVE -> 5;
          case PASTE -> throw new IllegalArgumentException("a paste has no ratio");
        };
  }

  @Override
  public String name() {
    return "MassBalance";
  }

  @Override
  public String citation() {
    return "dilution by mass, US Salinity Laboratory Staff 1954, USDA Handbook 60";
  }

  @Override
  public String confidence() {
    return "M+";
  }

  @Override
  public String domain() {
    return "chloride soils; an upper bound";
  }

  @Override
  public boolean takes(MethodKey key) {
    return key.method() == method && key.kind() != ReadingKind.SLURRY;
  }

  @Override
  public Outcome convert(double ecDsM, Soil soil) {
    OptionalDouble sp =
        soil.spPct().isPresent()
            ? soil.spPct()
            : soil.clayPct().stream().map(SaturationPercentage::handMixed).findFirst();
    return sp.isEmpty()
        ? new Outcome.Refusal("needs a saturation percentage or clay %")
        : Outcome.ece(ecDsM * partsOfWater * 100 / sp.getAsDouble(), SD_LN)
            .warn("an upper bound, not a best estimate");
  }
}
