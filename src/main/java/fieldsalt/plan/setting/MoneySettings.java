package fieldsalt.plan.setting;

/**
 * When to act.
 *
 * @param years over which a treatment has to pay back
 * @param actAbove without prices: act where the chance is at least this, above 0, below 1
 */
public record MoneySettings(Prices prices, int years, double actAbove) {
  public static MoneySettings defaults() {
    return new MoneySettings(Prices.none(), 3, 0.5);
  }

  public MoneySettings withPrices(Prices other) {
    return new MoneySettings(other, years, actAbove);
  }

  public MoneySettings withYears(int other) {
    return new MoneySettings(prices, other, actAbove);
  }

  public MoneySettings withActAbove(double chance) {
    return new MoneySettings(prices, years, chance);
  }
}
