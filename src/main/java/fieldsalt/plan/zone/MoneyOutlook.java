package fieldsalt.plan.zone;

import fieldsalt.plan.draw.Odds;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * What a treatment of one zone brings and costs, in the user's money over the years it has to pay
 * back.
 *
 * @param of which treatment
 * @param gainPerHa over all futures
 * @param costPerHa of the plan's rate
 * @param expectedNet gain less cost over the zone
 * @param chancePaysBack share of the futures in which gain exceeds cost
 * @param breakEven ECe (dS/m) or ESP (percent) from which it pays; empty where it never or always
 *     does within reach
 * @param perfectInformation what certainty would be worth over the zone
 * @param halfInformation what sampling that halves the variance would be worth
 * @param measureFirst whether that exceeds the price of a sample
 */
public record MoneyOutlook(
    Treated of,
    Odds gainPerHa,
    double costPerHa,
    double expectedNet,
    double chancePaysBack,
    OptionalDouble breakEven,
    double perfectInformation,
    double halfInformation,
    boolean measureFirst) {
  /** What can be done to a zone for money. */
  public enum Treated {
    GYPSUM,
    LEACHING;

    /** As people say it. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }
}
