package fieldsalt.plan.order;

import fieldsalt.classes.YieldModel;
import fieldsalt.plan.draw.Draws;
import fieldsalt.plan.draw.Futures;
import fieldsalt.plan.draw.Futures.Kind;
import fieldsalt.plan.gypsum.GypsumNeed;
import fieldsalt.plan.leaching.LeachingNeed;
import fieldsalt.plan.leaching.ReclamationNeed;
import fieldsalt.plan.money.GypsumMoney;
import fieldsalt.plan.money.LeachingMoney;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.soil.FieldGround;
import fieldsalt.plan.soil.FieldSoil;
import fieldsalt.plan.soil.PlanInput;
import fieldsalt.plan.soil.SodiumSites;
import fieldsalt.plan.soil.SoilDraws;
import fieldsalt.plan.soil.ZoneGround;
import fieldsalt.plan.soil.ZoneSalt;
import fieldsalt.plan.zone.GypsumPlan;
import fieldsalt.plan.zone.GypsumPlan.Advice;
import fieldsalt.plan.zone.LeachingRequirement;
import fieldsalt.plan.zone.MoneyOutlook;
import fieldsalt.plan.zone.Reclamation;
import fieldsalt.plan.zone.Situation;
import fieldsalt.plan.zone.ZoneWork;
import fieldsalt.read.sample.Sample;
import fieldsalt.surface.Surface;
import fieldsalt.surface.area.JointMeans;
import fieldsalt.surface.site.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Works out the zones of one field, with futures in which they move together. */
public final class ZoneWorks {
  /** With prices a treatment is weighed from this chance on that it is needed. */
  public static final double WORTH_A_THOUGHT = 0.05;

  private final FieldGround field;
  private final List<ZoneGround> zones;
  private final List<Sample> samples;
  private final PlanSettings settings;
  private final List<FieldSoil> soils;
  private final List<ZoneSalt> salts;
  private final List<ZoneSalt> toReclaim;
  private final SoilDraws soilDraws;
  private final GypsumNeed gypsumNeed;
  private final ReclamationNeed reclamationNeed;
  private final LeachingRequirement requirement;

  public ZoneWorks(PlanInput input, FieldGround field, PlanSettings settings, Futures futures) {
    this.field = field;
    this.settings = settings;
    String name = field.field();
    zones = input.zones().getOrDefault(name, List.of());
    samples = input.samples().getOrDefault(name, List.of());
    soils = zones.stream().map(z -> SodiumSites.soilOf(z, field.soil(), samples)).toList();
    Draws draws = futures.field(name);
    salts = salts(input.ece(), input.eceMeans().apply(name), draws, Kind.SALT, futures);
    toReclaim =
        input
            .eceToReclaim()
            .map(s -> salts(s, s.areaMeans(points()), draws, Kind.SALT_TO_RECLAIM, futures))
            .orElse(salts);
    soilDraws = SoilDraws.of(name, zones, soils, input.soil(), futures);
    requirement = new LeachingNeed(settings).of(field.crop(), field.soil().isGypsiferous());
    gypsumNeed = new GypsumNeed(settings, soilDraws);
    reclamationNeed = new ReclamationNeed(settings, futures.shared(Kind.LEACHING_COEFFICIENT));
  }

  private List<List<Target>> points() {
    return zones.stream().map(ZoneGround::points).toList();
  }

  private List<ZoneSalt> salts(
      Surface ece, JointMeans means, Draws draws, Kind kind, Futures futures) {
    double[][] scores = futures.shared(kind, means.shared()[0].length);
    return ZoneSalt.of(zones, ece, means, draws, scores);
  }

  /** What the field's crop needs of its water every season. */
  public LeachingRequirement requirement() {
    return requirement;
  }

  public ReclamationNeed reclamationNeed() {
    return reclamationNeed;
  }

  public List<ZoneWork> all() {
    List<ZoneWork> works = new ArrayList<>();
    for (int z = 0; z < zones.size(); z++) {
      works.add(of(z));
    }
    return works;
  }

  private ZoneWork of(int z) {
    ZoneGround ground = zones.get(z);
    FieldSoil soil = soils.get(z);
    double ha = ground.zone().areaHa();
    Optional<YieldModel> model =
        field
            .crop()
            .flatMap(c -> c.tolerance())
            .map(t -> settings.crops().model(t, soil.isGypsiferous()));
    Leaching leaching = leaching(field, soil, toReclaim.get(z), model, ha);
    double[] esp = gypsumNeed.esp(z);
    double[] pure = gypsumNeed.pure(z, soil);
    GypsumPlan gypsum = priced(gypsumNeed.of(z, soil, pure, sites(z)), pure, esp);
    OrderOfWork order = new OrderOfWork(settings);
    Situation situation = order.situation(leaching.plan, salts.get(z).meanEce(), gypsum);
    return new ZoneWork(
        ground,
        field,
        soil,
        salts.get(z),
        toReclaim.get(z),
        model,
        leaching.plan,
        leaching.money,
        gypsum,
        pure,
        esp,
        situation,
        order.steps(situation, field, requirement, leaching.plan, gypsum));
  }

  private record Leaching(Reclamation plan, Optional<MoneyOutlook> money) {}

  /** By the chance that it is needed; with prices by what it is expected to bring. */
  private Leaching leaching(
      FieldGround field, FieldSoil soil, ZoneSalt salt, Optional<YieldModel> model, double ha) {
    Reclamation byChance = reclamationNeed.of(field, soil.texture().group(), salt);
    LeachingMoney money = new LeachingMoney(settings);
    if (byChance.chance() < WORTH_A_THOUGHT) {
      return new Leaching(byChance, Optional.empty());
    }
    Reclamation bet = byChance.with(Reclamation.Status.NEEDED);
    Optional<MoneyOutlook> outlook = money.outlook(salt, bet, model, ha);
    boolean pays = outlook.filter(o -> o.expectedNet() > 0).isPresent();
    if (outlook.isEmpty() || pays) {
      return new Leaching(pays ? bet : byChance, outlook);
    }
    boolean needed = byChance.status() == Reclamation.Status.NEEDED;
    return new Leaching(
        needed ? byChance.with(Reclamation.Status.DOES_NOT_PAY) : byChance, outlook);
  }

  private List<String> sites(int z) {
    return soilDraws.esp().has(z) && soilDraws.cec().has(z)
        ? List.of()
        : SodiumSites.of(zones.get(z), samples);
  }

  /** With prices the rate of the largest expected value replaces the middle of the requirement. */
  private GypsumPlan priced(GypsumPlan plan, double[] pure, double[] esp) {
    GypsumMoney money = new GypsumMoney(settings);
    if (plan.advice() != Advice.RECOMMENDED || !money.isPriced()) {
      return plan;
    }
    double best =
        money.bestProduct(pure, esp, plan.targetEspPct(), plan.productPerPure().orElse(1));
    return best > 0 ? plan.with(Advice.RECOMMENDED, best) : plan.with(Advice.DOES_NOT_PAY, 0);
  }
}
