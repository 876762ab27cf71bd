package fieldsalt.classes;

/**
 * S-shaped response Y = 100 / (1 + (ECe/C50)^exp(s C50)), with C50 and s converted from threshold
 * and slope: C50 = 0.988 (0.5/b + a) - 0.252, s = 1.52 b, b as a fraction per dS/m. Steppuhn H.,
 * van Genuchten M.Th. &amp; Grieve C.M. 2005, Crop Sci. 45:209-220 (I), 45:221-232 (II). Differs
 * from the two lines by design near the threshold, where it is already below 100 %.
 *
 * @param c50 ECe of half yield, dS/m, above 0
 * @param steepness s, fraction per dS/m, above 0
 */
public record Steppuhn2005(double c50, double steepness) implements YieldModel {

  /** Conversion from threshold and slope (paper II, abstract). */
  public static Steppuhn2005 of(MaasHoffman1977 lines) {
    double b = lines.slopePctPerDsPerM() / 100;
    return new Steppuhn2005(0.988 * (0.5 / b + lines.thresholdDsPerM()) - 0.252, 1.52 * b);
  }

  /** The power of the curve, exp(s C50). */
  public double power() {
    return Math.exp(steepness * c50);
  }

  /** Salinity tolerance index C50 + s C50 (paper II). */
  public double toleranceIndex() {
    return c50 + steepness * c50;
  }

  private VanGenuchtenHoffman1984 curve() {
    return new VanGenuchtenHoffman1984(c50, power());
  }

  @Override
  public double pct(double ece) {
    return curve().pct(ece);
  }

  @Override
  public double eceAtPct(double pct) {
    return curve().eceAtPct(pct);
  }

  @Override
  public double expectedPct(double logMean, double logSd) {
    return curve().expectedPct(logMean, logSd);
  }

  @Override
  public String citation() {
    return "Steppuhn et al. 2005, S-curve from threshold and slope";
  }
}
