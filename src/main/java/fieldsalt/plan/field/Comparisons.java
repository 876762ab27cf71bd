package fieldsalt.plan.field;

import fieldsalt.facts.UsSalinityLaboratory1954;
import fieldsalt.plan.draw.Draws;
import fieldsalt.plan.draw.Middle;
import fieldsalt.plan.field.Comparison.Side;
import fieldsalt.plan.gypsum.MachineRates;
import fieldsalt.plan.money.GypsumMoney;
import fieldsalt.plan.money.LeachingMoney;
import fieldsalt.plan.setting.GroundSettings;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.zone.Digits;
import fieldsalt.plan.zone.ZoneWork;
import java.util.List;

/** One rate over a field, as someone without a map would choose it, against the plan. */
public final class Comparisons {
  private final PlanSettings settings;

  public Comparisons(PlanSettings settings) {
    this.settings = settings;
  }

  public Comparison of(List<ZoneWork> works, MachineRates rates) {
    double[] uniformRate = new double[works.size()];
    double[] uniformMm = new double[works.size()];
    double[] plannedMm = new double[works.size()];
    double rate = uniformProduct(works);
    double mm = uniformMm(works);
    for (int z = 0; z < works.size(); z++) {
      uniformRate[z] = rate;
      uniformMm[z] = mm;
      plannedMm[z] = works.get(z).reclamation().plannedMm();
    }
    return new Comparison(
        side(works, uniformRate, uniformMm), side(works, rates.product(), plannedMm));
  }

  /** Where the field's mean ESP asks for gypsum: its mean need, or with prices what pays best. */
  private double uniformProduct(List<ZoneWork> works) {
    double[] esp = new double[Draws.COUNT];
    double[] product = new double[Draws.COUNT];
    double ha = hectares(works);
    for (ZoneWork work : works) {
      double share = work.areaHa() / ha;
      Draws.add(esp, work.esp(), share);
      Draws.add(product, work.pure(), share * work.gypsum().productPerPure().orElse(1));
    }
    double chance = Draws.share(esp, x -> x >= UsSalinityLaboratory1954.SODIC_ESP_PCT);
    boolean held = settings.ground().drainage() == GroundSettings.Drainage.POOR;
    if (held || chance < settings.money().actAbove()) {
      return 0;
    }
    GypsumMoney money = new GypsumMoney(settings);
    return money.isPriced() ? money.bestUniform(works, product) : Middle.ofPositive(product);
  }

  /**
   * Depth that the field's mean asks for, by area; with prices only where it is expected to pay.
   */
  private double uniformMm(List<ZoneWork> works) {
    double ha = hectares(works);
    double mm = 0;
    double chance = 0;
    for (ZoneWork work : works) {
      mm += work.reclamation().mm().mean() * work.areaHa() / ha;
      chance += work.reclamation().chance() * work.areaHa() / ha;
    }
    LeachingMoney money = new LeachingMoney(settings);
    if (!money.isPriced()) {
      return chance < settings.money().actAbove() ? 0 : mm;
    }
    return uniformNet(works, mm, money) > 0 ? mm : 0;
  }

  private double uniformNet(List<ZoneWork> works, double mm, LeachingMoney money) {
    double net = 0;
    for (ZoneWork work : works) {
      double gained = yieldAfter(work, mm) - yieldAfter(work, 0);
      net += work.areaHa() * (money.valuePerPct() * gained - money.costPerHa(mm));
    }
    return net;
  }

  private static double hectares(List<ZoneWork> works) {
    return works.stream().mapToDouble(ZoneWork::areaHa).sum();
  }

  private Side side(List<ZoneWork> works, double[] product, double[] mm) {
    GypsumMoney gypsum = new GypsumMoney(settings);
    LeachingMoney leaching = new LeachingMoney(settings);
    double[] sums = new double[6];
    double ha = hectares(works);
    for (int z = 0; z < works.size(); z++) {
      ZoneWork work = works.get(z);
      double area = work.areaHa();
      double perPure = work.gypsum().productPerPure().orElse(1);
      double rate = product[z];
      sums[0] += area * rate;
      sums[1] += area * Draws.mean(Draws.map(work.pure(), p -> Math.max(0, p * perPure - rate)));
      sums[2] += area * Draws.mean(Draws.map(work.pure(), p -> Math.max(0, rate - p * perPure)));
      sums[3] += area * mm[z] * 10;
      sums[4] += area * (gypsum.costPerHa(rate) + leaching.costPerHa(mm[z]));
      sums[5] += area / ha * yieldAfter(work, mm[z]);
    }
    return new Side(
        sums[0], Digits.of(sums[1], 2), Digits.of(sums[2], 2), sums[3], sums[4], sums[5]);
  }

  private double yieldAfter(ZoneWork work, double mm) {
    if (work.model().isEmpty()) {
      return 0;
    }
    double[] left = new LeachingMoney(settings).left(work.toReclaim(), work.reclamation(), mm);
    return Draws.mean(work.salt().yieldDraws(work.model().get(), left));
  }
}
