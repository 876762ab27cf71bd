package fieldsalt.basis.pair;

/** The 95 % point of Student's t. */
final class StudentT {
  private StudentT() {}

  /** By the expansion of Abramowitz &amp; Stegun 1964, 26.7.5; right to 0.002 from 6 degrees on. */
  static double quantile95(int degrees) {
    double z = 1.6448536269514722;
    double z2 = z * z;
    double n = degrees;
    double g1 = z * (z2 + 1) / 4;
    double g2 = z * ((5 * z2 + 16) * z2 + 3) / 96;
    double g3 = z * (((3 * z2 + 19) * z2 + 17) * z2 - 15) / 384;
    return z + g1 / n + g2 / (n * n) + g3 / (n * n * n);
  }
}
