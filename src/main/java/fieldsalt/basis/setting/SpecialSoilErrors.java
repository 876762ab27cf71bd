package fieldsalt.basis.setting;

/**
 * Least conversion error (standard deviation of ln ECe) of soils that no multiplier was made for,
 * and additions to a reading's own error. Judgement; see the methods page.
 *
 * @param organic least conversion error above 8 % organic matter without a measured SP
 * @param highSp least conversion error at a saturation percentage above 100
 * @param sodicCarbonate least conversion error of sodic soils with carbonate (pH 8.5 and above)
 * @param pasteProbe conversion error of a probe in the paste, inverted with the measured SP
 * @param unrestedPaste added in quadrature to a clay paste read before it stood 12 hours
 * @param uncompensated added in quadrature where temperature was not compensated and is not known
 */
public record SpecialSoilErrors(
    double organic,
    double highSp,
    double sodicCarbonate,
    double pasteProbe,
    double unrestedPaste,
    double uncompensated) {
  public static SpecialSoilErrors defaults() {
    return new SpecialSoilErrors(0.5, 0.30, 0.5, 0.35, 0.10, 0.10);
  }
}
