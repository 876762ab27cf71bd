package fieldsalt.plan.money;

import fieldsalt.plan.draw.Draws;
import fieldsalt.plan.draw.Odds;
import fieldsalt.plan.setting.MoneySettings;
import fieldsalt.plan.setting.Prices;
import fieldsalt.plan.zone.MoneyOutlook;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * A treatment of one zone as a bet on what is uncertain.
 *
 * @param driver futures of what it depends on (ESP or ECe)
 * @param gainPerHa money per ha over the years, in each future
 * @param gainAt the same against the driver, all else in the middle; never falling
 * @param costPerHa money
 */
record Treatment(
    MoneyOutlook.Treated of,
    double[] driver,
    double[] gainPerHa,
    DoubleUnaryOperator gainAt,
    double costPerHa,
    double areaHa) {

  MoneyOutlook outlook(MoneySettings money) {
    double[] net = Draws.map(gainPerHa, g -> g - costPerHa);
    OptionalDouble even = breakEven();
    double half = information(even, 0.5);
    return new MoneyOutlook(
        of,
        Odds.of(gainPerHa),
        costPerHa,
        Draws.mean(net) * areaHa,
        Draws.share(net, x -> x > 0),
        even,
        information(even, 1),
        half,
        half > money.prices().get(Prices.SAMPLE).orElse(Double.POSITIVE_INFINITY));
  }

  /** What it is worth to take away a share of the variance; 0 where nothing would change. */
  private double information(OptionalDouble even, double share) {
    if (even.isEmpty()) {
      return 0;
    }
    double at = even.getAsDouble();
    double sd = Draws.sd(driver);
    return ValueOfInformation.sampling(areaHa, slope(at, sd), Draws.mean(driver), sd, at, share);
  }

  /**
   * Driver at which the gain meets the cost, looked for between 0 and far beyond what is likely.
   */
  private OptionalDouble breakEven() {
    double low = 0;
    double high = Draws.mean(driver) + 8 * Draws.sd(driver) + 1;
    if (gainAt.applyAsDouble(high) < costPerHa || gainAt.applyAsDouble(low) > costPerHa) {
      return OptionalDouble.empty();
    }
    for (int step = 0; step < 60; step++) {
      double middle = (low + high) / 2;
      if (gainAt.applyAsDouble(middle) < costPerHa) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return OptionalDouble.of(high);
  }

  private double slope(double at, double sd) {
    double reach = Math.max(sd, 1e-6);
    return (gainAt.applyAsDouble(at + reach) - gainAt.applyAsDouble(Math.max(0, at - reach)))
        / (at + reach - Math.max(0, at - reach));
  }
}
