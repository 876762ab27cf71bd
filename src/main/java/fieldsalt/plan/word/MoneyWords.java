package fieldsalt.plan.word;

import static fieldsalt.quantity.Dimension.CONDUCTIVITY;
import static fieldsalt.quantity.Dimension.MONEY;
import static fieldsalt.quantity.Dimension.MONEY_PER_AREA;
import static fieldsalt.quantity.Dimension.PERCENT;

import fieldsalt.plan.zone.MoneyOutlook;
import fieldsalt.plan.zone.MoneyOutlook.Treated;
import fieldsalt.quantity.Measure;
import java.util.ArrayList;
import java.util.List;

/** What is said of the money that a treatment brings and costs. */
final class MoneyWords {
  private MoneyWords() {}

  static Sentence of(MoneyOutlook money, int years) {
    String text =
        "Over "
            + years
            + " years "
            + money.of().word()
            + " here brings {0} and costs {1} (your prices): expected net {2} over the zone, and it"
            + " pays back with a chance of {3}.";
    List<Measure> numbers = new ArrayList<>();
    numbers.add(money.gainPerHa().measure(MONEY_PER_AREA));
    numbers.add(Measure.of(money.costPerHa(), MONEY_PER_AREA));
    numbers.add(Measure.of(money.expectedNet(), MONEY));
    numbers.add(Measure.of(100 * money.chancePaysBack(), PERCENT));
    if (money.breakEven().isPresent()) {
      boolean gypsum = money.of() == Treated.GYPSUM;
      text +=
          " It breaks even at "
              + (gypsum ? "ESP" : "ECe")
              + " {4}. Certainty would be worth {5}, samples that halve the doubt {6}.";
      numbers.add(Measure.of(money.breakEven().getAsDouble(), gypsum ? PERCENT : CONDUCTIVITY));
      numbers.add(Measure.of(money.perfectInformation(), MONEY));
      numbers.add(Measure.of(money.halfInformation(), MONEY));
    }
    String first = money.measureFirst() ? " That is more than a sample costs: measure first." : "";
    return new Sentence("money-" + money.of().word(), text + first, numbers);
  }
}
