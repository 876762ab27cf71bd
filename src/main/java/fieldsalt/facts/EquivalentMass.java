package fieldsalt.facts;

import java.util.Map;

/** Mass of one milliequivalent of an ion in mg, from the IUPAC atomic masses. */
public final class EquivalentMass {
  private static final Map<String, Double> MG_PER_MEQ =
      Map.of(
          "na", 22.990, "ca", 20.039, "mg", 12.1525, "k", 39.098, "cl", 35.453, "so4", 48.03,
          "hco3", 61.017, "co3", 30.004);

  private EquivalentMass() {}

  /** Milligrams per milliequivalent of an ion: {@code na}, {@code ca}, {@code so4}, ... */
  public static double mgPerMeq(String ion) {
    return MG_PER_MEQ.get(ion);
  }
}
