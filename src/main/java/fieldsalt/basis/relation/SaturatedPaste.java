package fieldsalt.basis.relation;

import fieldsalt.read.sample.Soil;

/** The basis itself: ECe = EC of the saturated-paste extract. USDA Handbook 60 (1954). */
public final class SaturatedPaste implements EceRelation {
  @Override
  public String name() {
    return "SaturatedPaste";
  }

  @Override
  public String citation() {
    return "US Salinity Laboratory Staff 1954, USDA Handbook 60";
  }

  @Override
  public String confidence() {
    return "S";
  }

  @Override
  public String domain() {
    return "every soil";
  }

  @Override
  public boolean takes(MethodKey method) {
    return method.isBasis();
  }

  @Override
  public Outcome convert(double ecDsM, Soil soil) {
    return Outcome.ece(ecDsM, 0);
  }
}
