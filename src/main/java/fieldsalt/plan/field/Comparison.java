package fieldsalt.plan.field;

/**
 * One rate over a field against a rate by zone. Tonnes of product, cubic metres, money; yields in
 * percent.
 *
 * @param uniform one gypsum rate and one leaching depth for the field's means
 * @param byZone the plan
 */
public record Comparison(Side uniform, Side byZone) {
  /**
   * One of the two.
   *
   * @param tonnes of gypsum product
   * @param shortTonnes what zones would still lack, expected
   * @param excessTonnes what zones would get beyond their need, expected
   * @param leachingM3 water through the soil
   * @param cost of both, by the user's prices; 0 without
   * @param net gain less cost of both, by the user's prices; 0 without
   * @param expectedYieldPct of the field's crop after leaching; NaN never: 0 without crop numbers
   */
  public record Side(
      double tonnes,
      double shortTonnes,
      double excessTonnes,
      double leachingM3,
      double cost,
      double net,
      double expectedYieldPct) {}
}
