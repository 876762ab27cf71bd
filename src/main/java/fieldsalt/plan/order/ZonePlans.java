package fieldsalt.plan.order;

import fieldsalt.classes.MaasHoffman1977;
import fieldsalt.facts.Crop;
import fieldsalt.facts.UsSalinityLaboratory1954;
import fieldsalt.facts.UsSalinityLaboratory1954.SoilClass;
import fieldsalt.plan.draw.Draws;
import fieldsalt.plan.draw.Middle;
import fieldsalt.plan.draw.Odds;
import fieldsalt.plan.leaching.SaltBalance;
import fieldsalt.plan.money.GypsumMoney;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.soil.ZoneSalt;
import fieldsalt.plan.zone.LeachingRequirement;
import fieldsalt.plan.zone.MoneyOutlook;
import fieldsalt.plan.zone.Step;
import fieldsalt.plan.zone.YieldOutlook;
import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.plan.zone.ZoneWork;
import fieldsalt.quantity.Dimension;
import fieldsalt.quantity.Measure;
import fieldsalt.surface.Surface;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Puts together the plan of a zone from what was worked out and the machine's rate. */
public final class ZonePlans {
  private final PlanSettings settings;
  private final Surface ece;
  private final SaltBalance balance;
  private final double rootZoneCm;

  /**
   * @param balance of the water of the field
   * @param rootZoneCm depth of the field's root zone
   */
  public ZonePlans(PlanSettings settings, Surface ece, SaltBalance balance, double rootZoneCm) {
    this.settings = settings;
    this.ece = ece;
    this.balance = balance;
    this.rootZoneCm = rootZoneCm;
  }

  public ZonePlan of(ZoneWork work, LeachingRequirement leaching, double product, int passes) {
    List<MoneyOutlook> money = new ArrayList<>();
    double weighed = product > 0 ? product : toWeigh(work);
    new GypsumMoney(settings)
        .outlook(work.gypsum(), work.pure(), work.esp(), weighed, work.areaHa())
        .ifPresent(money::add);
    work.leachingMoney().ifPresent(money::add);
    boolean treats = work.steps().get(0) != Step.NOTHING;
    return new ZonePlan(
        work.ground().zone(),
        Odds.of(work.salt().draws()),
        new Measure(
            work.salt().meanEce(), work.salt().low(), work.salt().high(), Dimension.CONDUCTIVITY),
        work.situation(),
        soilClass(work),
        yieldOutlook(work),
        leaching,
        work.reclamation(),
        work.gypsum(),
        product,
        passes,
        work.steps(),
        balance.of(work, rootZoneCm),
        money,
        DraftMarks.of(work.field(), treats, settings));
  }

  /** Where none is planned but the zone may need it: the middle of what it would take. */
  private static double toWeigh(ZoneWork work) {
    boolean open = work.gypsum().chance() >= ZoneWorks.WORTH_A_THOUGHT;
    double perPure = work.gypsum().productPerPure().orElse(1);
    return open ? Middle.ofPositive(work.pure()) * perPure : 0;
  }

  private static Optional<SoilClass> soilClass(ZoneWork work) {
    return work.gypsum().sources().esp().isKnown()
        ? Optional.of(
            UsSalinityLaboratory1954.classOf(work.salt().meanEce(), work.gypsum().esp().p50()))
        : Optional.empty();
  }

  private Optional<YieldOutlook> yieldOutlook(ZoneWork work) {
    if (work.model().isEmpty()) {
      return Optional.empty();
    }
    double threshold = threshold(work);
    double share = ZoneSalt.shareAbove(ece, work.ground().points(), threshold);
    return Optional.of(
        new YieldOutlook(
            work.salt().expectedYield(work.model().get()),
            Odds.of(work.salt().yieldDraws(work.model().get(), Draws.constant(1))),
            share * work.areaHa(),
            threshold));
  }

  private static double threshold(ZoneWork work) {
    Crop.Tolerance tolerance = work.field().crop().flatMap(Crop::tolerance).orElseThrow();
    return MaasHoffman1977.of(tolerance, work.soil().isGypsiferous()).thresholdDsPerM();
  }
}
