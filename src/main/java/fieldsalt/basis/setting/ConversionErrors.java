package fieldsalt.basis.setting;

/**
 * How the error of a conversion is divided and where it grows; standard deviations of ln ECe.
 *
 * @param sharedShare share of the conversion variance common to many rows: half of it to those of
 *     one laboratory and method, half to those of one method and texture group; 0 to 1
 * @param lowEnd added in quadrature where ECe comes out below 1.5 dS/m
 * @param highEnd added in quadrature above 25 dS/m, beyond the soils that were ever fitted
 * @param belowDetection own error of a reading "&lt; L", used as L/2
 * @param aboveRange own error of a reading "&gt; L", used as 1.4 L
 * @param otherCore added in quadrature to both readings of a pair from two cores
 * @param unsampled added in quadrature per unsampled share of the mapped depth
 */
public record ConversionErrors(
    double sharedShare,
    double lowEnd,
    double highEnd,
    double belowDetection,
    double aboveRange,
    double otherCore,
    double unsampled) {
  public static final double LOW_END_DS_M = 1.5;
  public static final double HIGH_END_DS_M = 25;

  public ConversionErrors {
    if (!(sharedShare >= 0 && sharedShare <= 1)) {
      throw new IllegalArgumentException("shared share must be 0 to 1, was " + sharedShare);
    }
  }

  public static ConversionErrors defaults() {
    return new ConversionErrors(2.0 / 3, 0.10, 0.20, 0.6, 0.4, 0.20, 0.3);
  }
}
