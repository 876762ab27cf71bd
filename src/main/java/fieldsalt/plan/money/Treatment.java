package fieldsalt.plan.money;

import static fieldsalt.quantity.Dimension.MONEY;
import static fieldsalt.quantity.Dimension.MONEY_PER_AREA;
import static fieldsalt.quantity.Dimension.PERCENT;

import fieldsalt.plan.draw.Draws;
import fieldsalt.plan.draw.Odds;
import fieldsalt.plan.setting.MoneySettings;
import fieldsalt.plan.setting.Prices;
import fieldsalt.plan.word.Sentence;
import fieldsalt.plan.zone.MoneyOutlook;
import fieldsalt.quantity.Dimension;
import fieldsalt.quantity.Measure;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * A treatment of one zone as a bet on what is uncertain.
 *
 * @param name {@code gypsum} or {@code leaching}
 * @param driver futures of what it hangs on (ESP or ECe)
 * @param dimension of the driver
 * @param gainPerHa money per ha over the years, in each future
 * @param gainAt the same against the driver, all else in the middle; never falling
 * @param costPerHa money
 */
record Treatment(
    MoneyOutlook.Treated of,
    double[] driver,
    Dimension dimension,
    double[] gainPerHa,
    DoubleUnaryOperator gainAt,
    double costPerHa,
    double areaHa) {

  MoneyOutlook outlook(MoneySettings money) {
    double[] net = Draws.map(gainPerHa, g -> g - costPerHa);
    double mean = Draws.mean(driver);
    double sd = Draws.sd(driver);
    OptionalDouble even = breakEven(mean, sd);
    double slope = slope(even.orElse(mean), sd);
    boolean open = even.isPresent();
    double perfect =
        open ? ValueOfInformation.perfect(areaHa, slope, mean, sd, even.getAsDouble()) : 0;
    double half =
        open ? ValueOfInformation.sampling(areaHa, slope, mean, sd, even.getAsDouble(), 0.5) : 0;
    OptionalDouble sample = money.prices().get(Prices.SAMPLE);
    boolean measure = sample.isPresent() && half > sample.getAsDouble();
    double pays = Draws.share(net, x -> x > 0);
    double expected = Draws.mean(net) * areaHa;
    return new MoneyOutlook(
        of,
        Odds.of(gainPerHa),
        costPerHa,
        expected,
        pays,
        even,
        perfect,
        half,
        measure,
        told(money, pays, expected, even, perfect, half, measure));
  }

  /**
   * Driver at which the gain meets the cost, looked for between 0 and far beyond what is likely.
   */
  private OptionalDouble breakEven(double mean, double sd) {
    double low = 0;
    double high = mean + 8 * sd + 1;
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

  private Sentence told(
      MoneySettings money,
      double pays,
      double expected,
      OptionalDouble even,
      double perfect,
      double half,
      boolean measure) {
    List<Measure> numbers = new ArrayList<>();
    numbers.add(Odds.of(gainPerHa).measure(MONEY_PER_AREA));
    numbers.add(Measure.of(costPerHa, MONEY_PER_AREA));
    numbers.add(Measure.of(expected, MONEY));
    numbers.add(Measure.of(100 * pays, PERCENT));
    StringBuilder text = new StringBuilder();
    text.append("Over ")
        .append(money.years())
        .append(" years ")
        .append(of.word())
        .append(
            " here brings {0} and costs {1} (your prices): expected net {2} over the zone, and it"
                + " pays back with a chance of {3}.");
    if (even.isPresent()) {
      numbers.add(Measure.of(even.getAsDouble(), dimension));
      text.append(" It breaks even at ")
          .append(dimension == PERCENT ? "ESP" : "ECe")
          .append(" {4}.");
      numbers.add(Measure.of(perfect, MONEY));
      numbers.add(Measure.of(half, MONEY));
      text.append(" Certainty would be worth {5}, samples that halve the doubt {6}.");
    }
    if (measure) {
      text.append(" That is more than a sample costs: measure first.");
    }
    return new Sentence("money-" + of.word(), text.toString(), numbers);
  }
}
