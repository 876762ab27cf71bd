package fieldsalt.plan.money;

import fieldsalt.classes.YieldModel;
import fieldsalt.plan.draw.Draws;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.setting.Prices;
import fieldsalt.plan.soil.ZoneSalt;
import fieldsalt.plan.zone.MoneyOutlook;
import fieldsalt.plan.zone.Reclamation;
import java.util.Optional;

/** What reclaiming a zone brings: yield at the ECe that it leaves against yield as it is. */
public final class LeachingMoney {
  private static final double M3_PER_MM_HA = 10;

  private final PlanSettings settings;

  public LeachingMoney(PlanSettings settings) {
    this.settings = settings;
  }

  /** Whether the prices that it takes are given. */
  public boolean isPriced() {
    Prices prices = settings.money().prices();
    return prices.has(Prices.CROP) && prices.has(Prices.WATER);
  }

  /**
   * ECe left by a depth of water in each future, as a share of what it was. Ground at or below the
   * target is taken as left as it is: so little water only moves its salt down.
   */
  public double[] left(ZoneSalt salt, Reclamation plan, double mm) {
    return Draws.map(salt.draws(), start -> leftAt(start, plan, mm));
  }

  private double leftAt(double start, Reclamation plan, double mm) {
    double ci = settings.water().equilibriumEce();
    if (mm <= 0 || start <= Math.max(ci, plan.targetEce())) {
      return 1;
    }
    double share = Math.min(1, plan.k() * plan.depthCm() * 10 / mm);
    return (ci + (start - ci) * share) / start;
  }

  public double costPerHa(double mm) {
    return mm * M3_PER_MM_HA * settings.money().prices().orZero(Prices.WATER);
  }

  /** Money per ha over the years for one percent of the full yield. */
  public double valuePerPct() {
    return settings.money().prices().orZero(Prices.CROP) * settings.money().years() / 100;
  }

  /** The outlook of the planned depth; empty without prices, crop numbers or a planned depth. */
  public Optional<MoneyOutlook> outlook(
      ZoneSalt salt, Reclamation plan, Optional<YieldModel> model, double ha) {
    if (!isPriced() || model.isEmpty() || plan.plannedMm() <= 0) {
      return Optional.empty();
    }
    double value = valuePerPct();
    double mm = plan.plannedMm();
    double[] before = salt.yieldDraws(model.get(), Draws.constant(1));
    double[] after = salt.yieldDraws(model.get(), left(salt, plan, mm));
    double[] gain = new double[before.length];
    for (int d = 0; d < gain.length; d++) {
      gain[d] = value * (after[d] - before[d]);
    }
    double within = salt.withinLogSd();
    Treatment treatment =
        new Treatment(
            MoneyOutlook.Treated.LEACHING,
            salt.draws(),
            gain,
            ece -> value * gainAt(ece, model.get(), within, plan, mm),
            costPerHa(mm),
            ha);
    return Optional.of(treatment.outlook(settings.money()));
  }

  private double gainAt(double ece, YieldModel model, double within, Reclamation plan, double mm) {
    if (ece <= 0) {
      return 0;
    }
    double logMean = Math.log(ece) - within * within / 2;
    double left = leftAt(ece, plan, mm);
    return model.expectedPct(logMean + Math.log(left), within) - model.expectedPct(logMean, within);
  }
}
