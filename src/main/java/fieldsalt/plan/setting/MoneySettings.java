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
}
