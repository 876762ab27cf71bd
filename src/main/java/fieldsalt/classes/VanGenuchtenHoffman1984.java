package fieldsalt.classes;

/**
 * S-shaped response Y = 100 / (1 + (ECe/c50)^p). Form: van Genuchten M.Th. &amp; Hoffman G.J. 1984;
 * p near 3 fitted most crops of the salt tolerance data base (van Genuchten &amp; Gupta 1993, J.
 * Indian Soc. Soil Sci. 41:730-737; the value from memory).
 *
 * @param c50 ECe of half yield, dS/m, above 0
 * @param power steepness, above 0
 */
public record VanGenuchtenHoffman1984(double c50, double power) implements YieldModel {
  public VanGenuchtenHoffman1984 {
    if (!(c50 > 0 && power > 0)) {
      throw new IllegalArgumentException(
          "half-yield ECe and steepness are above 0, was " + c50 + " and " + power);
    }
  }

  @Override
  public double pct(double ece) {
    return 100 / (1 + Math.pow(Math.max(0, ece) / c50, power));
  }

  @Override
  public double eceAtPct(double pct) {
    return c50 * Math.pow(100 / pct - 1, 1 / power);
  }

  @Override
  public double expectedPct(double logMean, double logSd) {
    return SmoothMean.of(this::pct, logMean, logSd);
  }

  @Override
  public String citation() {
    return "van Genuchten & Hoffman 1984, S-curve";
  }
}
