package fieldsalt.plan.money;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.finding.InputProblem;
import fieldsalt.plan.Changed;
import fieldsalt.plan.RanchPlan;
import fieldsalt.plan.Ranches;
import fieldsalt.plan.Said;
import fieldsalt.plan.draw.Draws;
import fieldsalt.plan.draw.Futures;
import fieldsalt.plan.field.Comparison;
import fieldsalt.plan.order.ZoneWorks;
import fieldsalt.plan.setting.GypsumSettings;
import fieldsalt.plan.setting.LeachingSettings;
import fieldsalt.plan.setting.MachineSettings;
import fieldsalt.plan.setting.MoneySettings;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.setting.Prices;
import fieldsalt.plan.setting.WaterSettings;
import fieldsalt.plan.word.PlanWords;
import fieldsalt.plan.word.Sentence;
import fieldsalt.plan.zone.GypsumPlan.Advice;
import fieldsalt.plan.zone.MoneyOutlook;
import fieldsalt.plan.zone.Reclamation.Status;
import fieldsalt.plan.zone.Situation;
import fieldsalt.plan.zone.Step;
import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.plan.zone.ZoneWork;
import fieldsalt.quantity.UnitSystem;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class MoneyTest {
  private static final PlanSettings DRAINED = Ranches.drained();

  private static PlanSettings priced(Map<String, Double> prices) {
    return Changed.withMoney(
        DRAINED, Changed.withPrices(MoneySettings.defaults(), Prices.of(prices)));
  }

  private static ZonePlan zone(Ranches ranch, PlanSettings settings) {
    return ranch.plan(settings).zones().get(0);
  }

  private static MoneyOutlook money(ZonePlan zone, String name) {
    return zone.money().stream().filter(m -> m.of().word().equals(name)).findFirst().orElseThrow();
  }

  private static Map<String, Double> gypsumPrices(double lossPerEsp) {
    return Map.of(
        "crop-per-ha", 2000.0,
        "gypsum-per-t", 40.0,
        "haulage-per-t", 20.0,
        "spreading-per-ha", 30.0,
        "sodium-loss-pct-per-esp", lossPerEsp);
  }

  /** Leaching brings yield(left) - yield(now) over the years, and costs its water. */
  @Test
  void leachingPaysOrDoesNot() {
    ZonePlan cheap =
        zone(Ranches.of(9).sar(3), priced(Map.of("crop-per-ha", 2000.0, "water-per-m3", 0.02)));
    MoneyOutlook pays = money(cheap, "leaching");
    assertThat(cheap.reclamation().status()).isEqualTo(Status.NEEDED);
    assertThat(pays.costPerHa())
        .isCloseTo(cheap.reclamation().plannedMm() * 10 * 0.02, within(1e-9));
    assertThat(pays.gainPerHa().mean())
        .as("about half of the yield, three years of 2000")
        .isBetween(2000.0, 3500.0);
    assertThat(pays.expectedNet())
        .isCloseTo(10 * (pays.gainPerHa().mean() - pays.costPerHa()), within(1e-6));
    assertThat(pays.chancePaysBack()).isGreaterThan(0.95);
    assertThat(pays.breakEven().orElseThrow()).isLessThan(9);
    RanchPlan plan =
        Ranches.of(9).sar(3).plan(priced(Map.of("crop-per-ha", 200.0, "water-per-m3", 0.5)));
    ZonePlan dear = plan.zones().get(0);
    assertThat(dear.reclamation().status()).isEqualTo(Status.DOES_NOT_PAY);
    assertThat(dear.reclamation().plannedMm()).isZero();
    assertThat(Said.ofFirstZone(plan)).extracting(Sentence::code).contains("does-not-pay");
    assertThat(money(dear, "leaching").expectedNet()).isNegative();
  }

  /** The price of water at which leaching neither gains nor loses, found by halving. */
  @Test
  void leachingIsPlannedUpToTheLastDollarAndNotBeyond() {
    double cheap = 0.02;
    double dear = 1;
    for (int i = 0; i < 30; i++) {
      double middle = (cheap + dear) / 2;
      boolean pays = money(leached(middle), "leaching").expectedNet() > 0;
      cheap = pays ? middle : cheap;
      dear = pays ? dear : middle;
    }
    double m3 = 100 * leached(cheap).reclamation().plannedMm();
    ZonePlan justPays = leached(cheap - 20 / m3);
    assertThat(money(justPays, "leaching").expectedNet()).isBetween(10.0, 30.0);
    assertThat(justPays.reclamation().status()).isEqualTo(Status.NEEDED);
    ZonePlan justNot = leached(cheap + 20 / m3);
    assertThat(money(justNot, "leaching").expectedNet()).isBetween(-30.0, -10.0);
    assertThat(justNot.reclamation().status()).isEqualTo(Status.DOES_NOT_PAY);
  }

  private static ZonePlan leached(double waterPerM3) {
    return zone(
        Ranches.of(9).sar(3), priced(Map.of("crop-per-ha", 500.0, "water-per-m3", waterPerM3)));
  }

  /** Prices times amounts: 10 ha, so much a tonne, so much a cubic metre. */
  @Test
  void costOfTheRanchIsPricesTimesAmounts() {
    RanchPlan plan =
        Ranches.of(9).sar(3).plan(priced(Map.of("crop-per-ha", 2000.0, "water-per-m3", 0.02)));
    double mm = plan.zones().get(0).reclamation().plannedMm();
    assertThat(plan.expectedCost()).isCloseTo(10 * mm * 10 * 0.02, within(1e-6));
    double net = money(plan.zones().get(0), "leaching").expectedNet();
    assertThat(plan.expectedNet()).isCloseTo(net, within(1e-6));
  }

  /**
   * Ground at its target is not leached for the last percent of yield: Hoffman does not hold there.
   */
  @Test
  void groundAtItsTargetIsNotLeachedForMoney() {
    ZonePlan zone =
        zone(
            Ranches.of(2.5).sar(3).zoneVariance(0.04),
            priced(Map.of("crop-per-ha", 3000.0, "water-per-m3", 0.03)));
    assertThat(zone.reclamation().chance()).isBetween(ZoneWorks.WORTH_A_THOUGHT, 0.3);
    assertThat(zone.reclamation().plannedMm()).isZero();
    assertThat(zone.situation()).isEqualTo(Situation.FINE);
  }

  /** At the break-even the gain meets the cost; where it never does there is none. */
  @Test
  void breakEvenIsWhereGainMeetsCost() {
    double[] ece = Draws.map(new Draws(1).standard(), z -> Math.exp(2 + 0.2 * z));
    Treatment treatment =
        new Treatment(MoneyOutlook.Treated.LEACHING, ece, ece, x -> 3 * x, 18, 10);
    assertThat(treatment.outlook(MoneySettings.defaults()).breakEven().orElseThrow())
        .isCloseTo(6, within(1e-9));
    Treatment never =
        new Treatment(MoneyOutlook.Treated.LEACHING, ece, ece, x -> Math.min(x, 5), 18, 10);
    assertThat(never.outlook(MoneySettings.defaults()).breakEven()).isEmpty();
    assertThat(never.outlook(MoneySettings.defaults()).perfectInformation()).isZero();
  }

  /** Certainty is worth most where the decision is open, and never less than half of it. */
  @Test
  void certaintyIsWorthMostNearTheBreakEven() {
    double[] worth = new double[3];
    double[] driver = new Draws(1).standard();
    double[] costs = {0.01, 20, 500};
    for (int k = 0; k < 3; k++) {
      double[] esp = Draws.map(driver, z -> Math.max(0, 20 + 3 * z));
      double[] gain = Draws.map(esp, x -> x);
      MoneyOutlook outlook =
          new Treatment(MoneyOutlook.Treated.GYPSUM, esp, gain, x -> x, costs[k], 10)
              .outlook(MoneySettings.defaults());
      worth[k] = outlook.perfectInformation();
      assertThat(outlook.halfInformation()).isLessThanOrEqualTo(outlook.perfectInformation());
    }
    assertThat(worth[1]).as("10 ha x 1 x sd 3 x 0.398942").isCloseTo(11.97, within(0.01));
    assertThat(worth[0]).isLessThan(0.01);
    assertThat(worth[2]).isZero();
  }

  @Test
  void measureFirstWhereSamplesCostLessThanTheyTell() {
    double[] esp = Draws.map(new Draws(1).standard(), z -> 20 + 3 * z);
    Treatment open = new Treatment(MoneyOutlook.Treated.GYPSUM, esp, esp, x -> x, 20, 10);
    double half = open.outlook(MoneySettings.defaults()).halfInformation();
    MoneySettings cheap =
        Changed.withPrices(MoneySettings.defaults(), Prices.of(Map.of("sample", half - 0.1)));
    MoneySettings dear =
        Changed.withPrices(MoneySettings.defaults(), Prices.of(Map.of("sample", half + 0.1)));
    assertThat(open.outlook(cheap).measureFirst()).isTrue();
    assertThat(new PlanWords(DRAINED).of(open.outlook(cheap)).text(UnitSystem.METRIC))
        .contains("measure first");
    assertThat(open.outlook(dear).measureFirst()).isFalse();
  }

  /** Rates are chosen by expected value among whole steps, not by rounding the middle. */
  @Test
  void gypsumRateOfTheLargestExpectedValue() {
    PlanSettings settings =
        Changed.withMachine(priced(gypsumPrices(1)), MachineSettings.of(1, 8, 1));
    ZonePlan zone = zone(Ranches.of(2).esp(25).cec(20), settings);
    double rate = zone.productTPerHa();
    assertThat(rate).isCloseTo(Math.rint(rate), within(1e-9));
    MoneyOutlook chosen = money(zone, "gypsum");
    Ranches ranch = Ranches.of(2).esp(25).cec(20);
    ZoneWork work =
        new ZoneWorks(ranch.input(), ranch.input().fields().get(0), settings, new Futures(1))
            .all()
            .get(0);
    GypsumMoney money = new GypsumMoney(settings);
    for (double other = 1; other <= 16; other++) {
      double net =
          Draws.mean(money.gain(other, work.pure(), work.esp(), 10)) - money.costPerHa(other);
      assertThat(chosen.expectedNet() / 10).isGreaterThanOrEqualTo(net - 1e-6);
    }
    assertThat(rate)
        .as("cheap gypsum is spread beyond the middle of the need")
        .isGreaterThan(zone.gypsum().pure().p50() - 1);
  }

  /**
   * One rate is chosen by the same prices as the rates by zone, so that the two can be compared.
   */
  @Test
  void oneRateIsChosenByTheSamePrices() {
    PlanSettings settings =
        Changed.withMachine(priced(gypsumPrices(1)), MachineSettings.of(1, 8, 1));
    Comparison both =
        Ranches.of(2, 2).esp(20, 40).cec(20, 20).plan(settings).fields().get(0).comparison();
    GypsumMoney money = new GypsumMoney(settings);
    double rate = both.uniform().tonnes() / 20;
    assertThat(rate).isCloseTo(Math.rint(rate), within(1e-9)).isPositive();
    assertThat(both.uniform().cost()).isCloseTo(20 * money.costPerHa(rate), within(1e-6));
    PlanSettings poor =
        Changed.withMachine(priced(gypsumPrices(0.01)), MachineSettings.of(1, 8, 1));
    assertThat(
            Ranches.of(2, 2)
                .esp(20, 40)
                .cec(20, 20)
                .plan(poor)
                .fields()
                .get(0)
                .comparison()
                .uniform()
                .tonnes())
        .isZero();
  }

  /** One depth of leaching over the field only where the prices say that it pays. */
  @Test
  void oneDepthIsWeighedByTheSamePrices() {
    Map<String, Double> cheap = Map.of("crop-per-ha", 2000.0, "water-per-m3", 0.02);
    Map<String, Double> dear = Map.of("crop-per-ha", 200.0, "water-per-m3", 0.5);
    Ranches ranch = Ranches.of(9, 9).sar(3, 3);
    assertThat(ranch.plan(priced(cheap)).fields().get(0).comparison().uniform().leachingM3())
        .isPositive();
    assertThat(ranch.plan(priced(dear)).fields().get(0).comparison().uniform().leachingM3())
        .isZero();
  }

  @Test
  void gypsumThatDoesNotPayIsNotSpread() {
    ZonePlan zone = zone(Ranches.of(2).esp(25).cec(20), priced(gypsumPrices(0.01)));
    assertThat(zone.gypsum().advice()).isEqualTo(Advice.DOES_NOT_PAY);
    assertThat(zone.productTPerHa()).isZero();
    assertThat(zone.firstStep()).isEqualTo(Step.TEST_STRIP);
    assertThat(money(zone, "gypsum").expectedNet()).isNegative();
  }

  /** Gypsum is not priced by the salinity curve: without the user's figure there is no gain. */
  @Test
  void withoutAFigureForSodiumOnlyTheCostIsTold() {
    Map<String, Double> prices = new TreeMap<>(gypsumPrices(1));
    prices.remove("sodium-loss-pct-per-esp");
    RanchPlan plan = Ranches.of(2).esp(25).cec(20).plan(priced(prices));
    ZonePlan zone = plan.zones().get(0);
    assertThat(zone.money()).isEmpty();
    assertThat(zone.gypsum().advice()).isEqualTo(Advice.RECOMMENDED);
    assertThat(plan.expectedCost()).isCloseTo(10 * (zone.productTPerHa() * 60 + 30), within(1e-6));
    assertThat(plan.expectedNet()).isZero();
  }

  /** Without prices: act when the chance passes the ratio that the user sets. */
  @Test
  void withoutPricesTheRatioDecides() {
    Ranches ranch = Ranches.of(3.3).sar(3).zoneVariance(0.03);
    double chance = zone(ranch, DRAINED).reclamation().chance();
    assertThat(chance).isBetween(0.3, 0.7);
    MoneySettings bold = Changed.withActAbove(MoneySettings.defaults(), chance - 0.01);
    MoneySettings shy = Changed.withActAbove(MoneySettings.defaults(), chance + 0.01);
    assertThat(zone(ranch, Changed.withMoney(DRAINED, bold)).reclamation().plannedMm())
        .isPositive();
    assertThat(zone(ranch, Changed.withMoney(DRAINED, shy)).reclamation().plannedMm()).isZero();
  }

  /** International acre, short ton and acre-foot; prices in either system are one price. */
  @Test
  void pricesInUnitsOfTheUnitedStates() {
    Prices us =
        Prices.of(
            Map.of(
                "crop-per-acre", 809.371284,
                "gypsum-per-ton", 36.2873896,
                "water-per-acre-foot", 24.6696));
    assertThat(us.orZero("crop-per-ha")).isCloseTo(2000, within(0.001));
    assertThat(us.orZero("gypsum-per-t")).isCloseTo(40, within(0.0001));
    assertThat(us.orZero("water-per-m3")).isCloseTo(0.02, within(1e-6));
  }

  /** Every price that cannot be planned with is named at once. */
  @Test
  void badPricesAndSettingsAreRefusedTogether() {
    PlanSettings bad =
        Changed.withGypsum(
            priced(Map.of("gypsum-per-t", -5.0, "diesel", 2.0)),
            Changed.withProduct(GypsumSettings.defaults(), 0, 5));
    assertThatThrownBy(() -> Ranches.of(2).plan(bad))
        .isInstanceOf(InputProblem.class)
        .hasMessageContaining("gypsum-per-t: found -5.0; expected a price of at least 0")
        .hasMessageContaining("diesel")
        .hasMessageContaining("purity-pct: found 0 %; expected above 0, at most 100 %");
    assertThat(bad.problems()).hasSize(3);
    assertThat(PlanSettings.defaults().problems()).isEmpty();
    List<PlanSettings> others =
        List.of(
            Changed.withMachine(DRAINED, MachineSettings.of(5, 2, 1)),
            Changed.withMachine(DRAINED, MachineSettings.of(1, 2, 0)),
            Changed.withWater(DRAINED, Changed.withEc(WaterSettings.defaults(), -1)),
            Changed.withWater(DRAINED, Changed.withEc(WaterSettings.defaults(), Double.NaN)),
            Changed.withWater(DRAINED, Changed.withEfficiencyPct(WaterSettings.defaults(), 0)),
            Changed.withLeaching(DRAINED, Changed.withTargetEce(LeachingSettings.defaults(), 0)),
            Changed.withGypsum(DRAINED, Changed.withDepthCm(GypsumSettings.defaults(), -1)),
            Changed.withMoney(DRAINED, Changed.withActAbove(MoneySettings.defaults(), 0)));
    assertThat(others).allSatisfy(s -> assertThat(s.problems()).hasSize(1));
  }
}
