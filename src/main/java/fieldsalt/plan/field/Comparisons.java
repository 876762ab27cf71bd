package fieldsalt.plan.field;

import fieldsalt.facts.Hoffman1980;
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
  /** Depths that are tried where prices are given. */
  private static final int DEPTHS = 24;

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
   * One depth over the field: with prices the one of greatest expected net, without prices the one
   * that brings the field's mean to its target, where that is likely above it.
   */
  private double uniformMm(List<ZoneWork> works) {
    double[] mean = new double[Draws.COUNT];
    double ha = hectares(works);
    double k = 0;
    double target = 0;
    for (ZoneWork work : works) {
      double share = work.areaHa() / ha;
      Draws.add(mean, work.toReclaim().draws(), share);
      k += share * work.reclamation().k();
      target += share * work.reclamation().targetEce();
    }
    double floor = settings.water().equilibriumEce();
    if (target <= floor) {
      return 0;
    }
    double depthMm = works.get(0).reclamation().depthCm() * 10;
    double kMean = k;
    double wanted = target;
    double[] mm = Draws.map(mean, ece -> Hoffman1980.depth(kMean, depthMm, ece, wanted, floor));
    LeachingMoney money = new LeachingMoney(settings);
    if (!money.isPriced()) {
      double chance = Draws.share(mean, ece -> ece > wanted);
      return chance < settings.money().actAbove() ? 0 : Middle.ofPositive(mm);
    }
    double best = 0;
    double bestNet = 0;
    double most = works.stream().mapToDouble(w -> w.reclamation().mm().p90()).max().orElse(0);
    for (int step = 1; step <= DEPTHS; step++) {
      double depth = most * step / DEPTHS;
      double net = uniformNet(works, depth, money);
      if (net > bestNet) {
        bestNet = net;
        best = depth;
      }
    }
    return best;
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
    double[] sums = new double[7];
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
      double gained = leaching.isPriced() ? yieldAfter(work, mm[z]) - yieldAfter(work, 0) : 0;
      sums[6] += area * (leaching.valuePerPct() * gained + gypsum.gain(work, rate));
    }
    return new Side(
        sums[0],
        Digits.of(sums[1], 2),
        Digits.of(sums[2], 2),
        sums[3],
        sums[4],
        sums[6] - sums[4],
        sums[5]);
  }

  private double yieldAfter(ZoneWork work, double mm) {
    if (work.model().isEmpty()) {
      return 0;
    }
    double[] left = new LeachingMoney(settings).left(work.toReclaim(), work.reclamation(), mm);
    return Draws.mean(work.salt().yieldDraws(work.model().get(), left));
  }
}
