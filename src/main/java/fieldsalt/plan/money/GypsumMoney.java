package fieldsalt.plan.money;

import fieldsalt.facts.GypsumStoichiometry;
import fieldsalt.plan.draw.Draws;
import fieldsalt.plan.draw.Odds;
import fieldsalt.plan.gypsum.Passes;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.setting.Prices;
import fieldsalt.plan.zone.GypsumPlan;
import fieldsalt.plan.zone.MoneyOutlook;
import fieldsalt.plan.zone.ZoneWork;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What gypsum brings: the yield that sodium above the target takes, by the user's own figure. No
 * published curve turns ESP into yield, so none is assumed, and the salinity curve is not used.
 */
public final class GypsumMoney {
  private static final double NO_STEP_T_HA = 0.5;

  private final PlanSettings settings;

  public GypsumMoney(PlanSettings settings) {
    this.settings = settings;
  }

  /** Whether gain and cost can both be told. */
  public boolean isPriced() {
    Prices prices = settings.money().prices();
    return prices.has(Prices.CROP) && prices.has(Prices.GYPSUM) && prices.has(Prices.SODIUM_LOSS);
  }

  /** Money per ha for a product rate; 0 without prices. */
  public double costPerHa(double product) {
    Prices prices = settings.money().prices();
    return product * (prices.orZero(Prices.GYPSUM) + prices.orZero(Prices.HAULAGE))
        + Passes.of(product, settings) * prices.orZero(Prices.SPREADING);
  }

  /** Gain per ha over the years in each future of a rate of pure gypsum. */
  double[] gain(double pure, double[] requirement, double[] esp, double target) {
    double[] out = new double[esp.length];
    for (int d = 0; d < out.length; d++) {
      double above = Math.max(0, Math.min(100, esp[d]) - target);
      double share = requirement[d] > 0 ? Math.min(1, pure / requirement[d]) : 0;
      out[d] = valuePerEsp() * above * share;
    }
    return out;
  }

  /** Expected gain per ha over the years of a rate of product in a zone; 0 without prices. */
  public double gain(ZoneWork work, double product) {
    double pure = product / work.gypsum().productPerPure().orElse(1);
    return Draws.mean(gain(pure, work.pure(), work.esp(), work.gypsum().targetEspPct()));
  }

  private double valuePerEsp() {
    Prices prices = settings.money().prices();
    return settings.money().years()
        * prices.orZero(Prices.CROP)
        * prices.orZero(Prices.SODIUM_LOSS)
        / 100;
  }

  /**
   * Product rate of the largest expected value among what the machine can spread; 0 if none pays.
   */
  public double bestProduct(
      double[] requirement, double[] esp, double target, double productPerPure) {
    double most = Odds.of(requirement).p90() * productPerPure;
    double best = 0;
    double bestNet = 0;
    for (double rate : candidates(most)) {
      double net =
          Draws.mean(gain(rate / productPerPure, requirement, esp, target)) - costPerHa(rate);
      if (net > bestNet) {
        bestNet = net;
        best = rate;
      }
    }
    return best;
  }

  /** The one product rate of the largest expected value over several zones; 0 if none pays. */
  public double bestUniform(List<ZoneWork> works, double[] product) {
    double best = 0;
    double bestNet = 0;
    for (double rate : candidates(Odds.of(product).p90())) {
      double net = 0;
      for (ZoneWork work : works) {
        double pure = rate / work.gypsum().productPerPure().orElse(1);
        double[] gain = gain(pure, work.pure(), work.esp(), work.gypsum().targetEspPct());
        net += work.areaHa() * (Draws.mean(gain) - costPerHa(rate));
      }
      if (net > bestNet) {
        bestNet = net;
        best = rate;
      }
    }
    return best;
  }

  /**
   * Whole steps in every pass, as many passes as the cap asks for, up to {@code most} and one more.
   */
  private List<Double> candidates(double most) {
    double step = settings.machine().step().orElse(NO_STEP_T_HA);
    double least = Math.max(settings.machine().min().orElse(0), step);
    List<Double> rates = new ArrayList<>();
    for (int passes = 1; passes <= 20; passes++) {
      for (int k = (int) Math.ceil(least / step - 1e-9); passes * k * step <= most + step; k++) {
        double rate = passes * k * step;
        if (Passes.of(rate, settings) == passes && rate >= settings.gypsum().minTPerHa()) {
          rates.add(rate);
        }
      }
    }
    return rates;
  }

  /** The outlook of a product rate; empty without prices or rate. */
  public Optional<MoneyOutlook> outlook(
      GypsumPlan plan, double[] requirement, double[] esp, double product, double ha) {
    if (!isPriced() || product <= 0) {
      return Optional.empty();
    }
    double pure = product / plan.productPerPure().orElse(1);
    double target = plan.targetEspPct();
    double perEsp = perEsp(requirement, esp, target);
    Treatment treatment =
        new Treatment(
            MoneyOutlook.Treated.GYPSUM,
            esp,
            gain(pure, requirement, esp, target),
            x -> valuePerEsp() * Math.min(Math.max(0, x - target), pure / perEsp),
            costPerHa(product),
            ha);
    return Optional.of(treatment.outlook(settings.money()));
  }

  /** Pure gypsum that one ESP point takes, t/ha, in the middle of the futures that need any. */
  private static double perEsp(double[] requirement, double[] esp, double target) {
    double sum = 0;
    int n = 0;
    for (int d = 0; d < esp.length; d++) {
      if (requirement[d] > 0) {
        sum += requirement[d] / (Math.min(100, esp[d]) - target);
        n++;
      }
    }
    return n == 0 ? GypsumStoichiometry.perCmolc(0.15, 1.4) * 0.2 : sum / n;
  }
}
