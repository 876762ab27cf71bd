package fieldsalt.surface.fit;

import fieldsalt.gaussian.Normal;

/**
 * Continuous ranked probability score, E|Z - y| - ½ E|Z - Z'|, in closed form (Gneiting and Raftery
 * 2007, JASA 102:359-378; mixtures: Grimit et al. 2006, QJRMS 132:2925-2942). Smaller is better.
 */
public final class Crps {
  private Crps() {}

  /** Of a mixture of normals against the value y. */
  public static double of(Mixture z, double y) {
    double score = 0;
    int n = z.weight().length;
    for (int i = 0; i < n; i++) {
      double wi = z.weight()[i];
      score += wi * absolute(z.mean()[i] - y, z.sd()[i]);
      score -= 0.5 * wi * wi * absolute(0, Math.sqrt(2) * z.sd()[i]);
      for (int j = 0; j < i; j++) {
        double spread = Math.sqrt(z.sd()[i] * z.sd()[i] + z.sd()[j] * z.sd()[j]);
        score -= wi * z.weight()[j] * absolute(z.mean()[i] - z.mean()[j], spread);
      }
    }
    return score;
  }

  /** E|X| of a normal. */
  private static double absolute(double mean, double sd) {
    if (sd <= 0) {
      return Math.abs(mean);
    }
    double u = mean / sd;
    return mean * (2 * Normal.below(u) - 1) + 2 * sd * Normal.density(u);
  }

  /** Of exp(Z), Z the mixture, against y &gt; 0. */
  public static double ofExp(Mixture z, double y) {
    double score = 0;
    int n = z.weight().length;
    for (int i = 0; i < n; i++) {
      score += z.weight()[i] * absoluteExp(z.mean()[i], z.sd()[i], Math.log(y), 0);
      for (int j = 0; j <= i; j++) {
        double both = absoluteExp(z.mean()[i], z.sd()[i], z.mean()[j], z.sd()[j]);
        score -= (i == j ? 0.5 : 1) * z.weight()[i] * z.weight()[j] * both;
      }
    }
    return score;
  }

  /** E|exp(X) - exp(Y)| of two independent normals. */
  private static double absoluteExp(double m1, double s1, double m2, double s2) {
    double spread = Math.sqrt(s1 * s1 + s2 * s2);
    double e1 = Math.exp(m1 + s1 * s1 / 2);
    double e2 = Math.exp(m2 + s2 * s2 / 2);
    if (spread <= 0) {
      return Math.abs(e1 - e2);
    }
    double d1 = (m1 + s1 * s1 - m2) / spread;
    double d2 = (m2 + s2 * s2 - m1) / spread;
    return e1 * (2 * Normal.below(d1) - 1) + e2 * (2 * Normal.below(d2) - 1);
  }
}
