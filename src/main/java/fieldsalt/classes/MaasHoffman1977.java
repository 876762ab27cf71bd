package fieldsalt.classes;

import fieldsalt.facts.Crop;
import fieldsalt.gaussian.Normal;

/**
 * The two lines of threshold and slope: Y = 100 - b (ECe - a) above a, 100 below, never under 0.
 * Maas E.V. &amp; Hoffman G.J. 1977, J. Irrig. Drain. Div. ASCE 103(IR2):115-134; equation as in
 * FAO Irrigation and Drainage Paper 61 (Tanji &amp; Kielen 2002), Annex 1, eq. 1. The low tail is
 * its weak part: the true response is S-shaped.
 *
 * @param thresholdDsPerM a, dS/m
 * @param slopePctPerDsPerM b, percent per dS/m
 */
public record MaasHoffman1977(double thresholdDsPerM, double slopePctPerDsPerM)
    implements YieldModel {
  /** What gypsiferous soil adds to the threshold, dS/m (Maas 1990, note (c)). */
  public static final double GYPSIFEROUS_DS_M = 2;

  /** The model of a crop that has numbers. */
  public static MaasHoffman1977 of(Crop.Tolerance tolerance) {
    return of(tolerance, false);
  }

  /** The same; on soil with confirmed gypsum in the root zone its threshold is 2 dS/m higher. */
  public static MaasHoffman1977 of(Crop.Tolerance tolerance, boolean gypsiferous) {
    double threshold = tolerance.thresholdDsPerM() + (gypsiferous ? GYPSIFEROUS_DS_M : 0);
    return new MaasHoffman1977(threshold, tolerance.slopePctPerDsPerM());
  }

  @Override
  public double pct(double ece) {
    double raw = 100 - slopePctPerDsPerM * Math.max(0, ece - thresholdDsPerM);
    return Math.max(0, raw);
  }

  @Override
  public double eceAtPct(double pct) {
    return thresholdDsPerM + (100 - pct) / slopePctPerDsPerM;
  }

  /** Closed form: 100 - b [C(a) - C(a + 100/b)], C(k) the mean excess of a lognormal over k. */
  @Override
  public double expectedPct(double logMean, double logSd) {
    double loss = excess(thresholdDsPerM, logMean, logSd) - excess(eceAtPct(0), logMean, logSd);
    return Math.min(100, Math.max(0, 100 - slopePctPerDsPerM * loss));
  }

  /** E[(X - k)+] of a lognormal X. */
  static double excess(double k, double logMean, double logSd) {
    double mean = Math.exp(logMean + 0.5 * logSd * logSd);
    if (k <= 0 || logSd == 0) {
      return Math.max(0, mean - k);
    }
    double d = (logMean - Math.log(k)) / logSd;
    return mean * Normal.below(d + logSd) - k * Normal.below(d);
  }

  @Override
  public String citation() {
    return "Maas & Hoffman 1977, threshold and slope";
  }
}
