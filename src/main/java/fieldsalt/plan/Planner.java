package fieldsalt.plan;

import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.InputProblem;
import fieldsalt.finding.Place;
import fieldsalt.plan.draw.Draws;
import fieldsalt.plan.draw.Odds;
import fieldsalt.plan.field.Comparisons;
import fieldsalt.plan.field.CropTable;
import fieldsalt.plan.field.FieldPlan;
import fieldsalt.plan.gypsum.MachineRates;
import fieldsalt.plan.gypsum.RateRow;
import fieldsalt.plan.leaching.BoronNeed;
import fieldsalt.plan.leaching.LeachingNeed;
import fieldsalt.plan.money.GypsumMoney;
import fieldsalt.plan.money.LeachingMoney;
import fieldsalt.plan.order.DraftMarks;
import fieldsalt.plan.order.ZonePlans;
import fieldsalt.plan.order.ZoneWorks;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.soil.FieldGround;
import fieldsalt.plan.soil.PlanInput;
import fieldsalt.plan.zone.Draft;
import fieldsalt.plan.zone.GypsumPlan;
import fieldsalt.plan.zone.GypsumPlan.Advice;
import fieldsalt.plan.zone.LeachingRequirement;
import fieldsalt.plan.zone.MoneyOutlook;
import fieldsalt.plan.zone.Reclamation;
import fieldsalt.plan.zone.Step;
import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.plan.zone.ZoneWork;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Entry of the stage: zones and what is known of their soil to leaching, gypsum, yield, money. */
public final class Planner {
  private final PlanInput input;
  private final PlanSettings settings;
  private final ZoneWorks works;
  private final ZonePlans plans;

  private Planner(PlanInput input, PlanSettings settings) {
    this.input = input;
    this.settings = settings;
    works = new ZoneWorks(input, settings);
    plans = new ZonePlans(settings, input.ece());
  }

  /**
   * Plans a ranch. Every figure is finite; what cannot be told is empty and has its sentence.
   *
   * @throws InputProblem if settings cannot be planned with (a purity of 0, a negative price, ...),
   *     naming all of them
   */
  public static RanchPlan plan(PlanInput input, PlanSettings settings) {
    settings.refuseProblems();
    return new Planner(input, settings).plan();
  }

  private RanchPlan plan() {
    List<ZoneWork> all = works.all();
    List<FieldPlan> fields = new ArrayList<>();
    List<ZoneWork> ordered = new ArrayList<>();
    for (FieldGround field : input.fields()) {
      List<ZoneWork> own = all.stream().filter(w -> w.field().equals(field)).toList();
      if (!own.isEmpty()) {
        ordered.addAll(own);
        fields.add(of(field, own));
      }
    }
    return ranch(fields, ordered);
  }

  private FieldPlan of(FieldGround field, List<ZoneWork> own) {
    LeachingRequirement leaching =
        new LeachingNeed(settings).of(field.crop(), field.soil().isGypsiferous());
    MachineRates rates =
        MachineRates.of(
            own.stream().mapToDouble(w -> w.gypsum().wantedProduct()).toArray(),
            own.stream().mapToDouble(ZoneWork::areaHa).toArray(),
            settings);
    List<ZonePlan> zones = new ArrayList<>();
    for (int z = 0; z < own.size(); z++) {
      zones.add(plans.of(own.get(z), leaching, rates.product()[z], rates.passes()[z]));
    }
    boolean treats = zones.stream().anyMatch(z -> z.firstStep() != Step.NOTHING);
    return new FieldPlan(
        field,
        Odds.of(meanEce(own)),
        leaching,
        BoronNeed.of(field, settings),
        zones,
        Odds.of(gypsumTonnes(own)),
        rates.plannedT(),
        rates.unmetT(),
        Odds.of(leachingM3(own)),
        new Comparisons(settings).of(own, rates),
        DraftMarks.of(field, treats, settings));
  }

  private static double[] meanEce(List<ZoneWork> own) {
    double[] mean = new double[Draws.COUNT];
    double ha = own.stream().mapToDouble(ZoneWork::areaHa).sum();
    own.forEach(w -> Draws.add(mean, w.salt().draws(), w.areaHa() / ha));
    return mean;
  }

  /** Tonnes of product that the zones to be treated need, in each future. */
  private static double[] gypsumTonnes(List<ZoneWork> works) {
    double[] sum = new double[Draws.COUNT];
    for (ZoneWork work : works) {
      if (work.gypsum().advice() == Advice.RECOMMENDED) {
        Draws.add(sum, work.pure(), work.areaHa() * work.gypsum().productPerPure().orElse(1));
      }
    }
    return sum;
  }

  /** Cubic metres that the zones to be leached need, in each future. */
  private double[] leachingM3(List<ZoneWork> works) {
    double[] sum = new double[Draws.COUNT];
    for (ZoneWork work : works) {
      if (work.reclamation().status() == Reclamation.Status.NEEDED) {
        Draws.add(sum, this.works.reclamationNeed().depths(work), work.areaHa() * 10);
      }
    }
    return sum;
  }

  private RanchPlan ranch(List<FieldPlan> fields, List<ZoneWork> all) {
    GypsumMoney gypsum = new GypsumMoney(settings);
    LeachingMoney leaching = new LeachingMoney(settings);
    List<RateRow> rates = new ArrayList<>();
    double cost = 0;
    double net = 0;
    double planned = 0;
    for (FieldPlan field : fields) {
      planned += field.plannedT();
      for (ZonePlan zone : field.zones()) {
        double perHa =
            gypsum.costPerHa(zone.productTPerHa())
                + leaching.costPerHa(zone.reclamation().plannedMm());
        cost += perHa * zone.zone().areaHa();
        net += zone.plannedMoney().stream().mapToDouble(MoneyOutlook::expectedNet).sum();
        rates.add(row(zone, perHa));
      }
    }
    return new RanchPlan(
        settings,
        fields,
        CropTable.of(all, settings.crops()),
        Odds.of(gypsumTonnes(all)),
        planned,
        Odds.of(leachingM3(all)),
        cost,
        net,
        rates,
        findings(fields, settings.machine().drafts()));
  }

  private RateRow row(ZonePlan zone, double costPerHa) {
    int passes = zone.passes();
    GypsumPlan gypsum = zone.gypsum();
    boolean priced = !settings.money().prices().byName().isEmpty();
    return new RateRow(
        zone.zone().field(),
        zone.zone().name(),
        zone.zone().areaHa(),
        passes == 0 ? 0 : zone.productTPerHa() / passes,
        passes,
        zone.productT(),
        when(gypsum.isSized(), gypsum.product().p10()),
        when(gypsum.isSized(), gypsum.product().p90()),
        when(gypsum.sources().esp().isKnown(), gypsum.chance()),
        zone.reclamation().plannedMm(),
        when(priced, costPerHa),
        zone.firstStep().label(),
        zone.draft().isDraft());
  }

  private static OptionalDouble when(boolean known, double value) {
    return known ? OptionalDouble.of(value) : OptionalDouble.empty();
  }

  private static List<Finding> findings(List<FieldPlan> fields, boolean drafts) {
    List<Finding> findings = new ArrayList<>();
    for (FieldPlan field : fields) {
      for (Draft.Reason reason : field.draft().reasons()) {
        findings.add(
            new Finding(
                reason.code(),
                Place.field(field.field()),
                reason.why(),
                "the plan is a draft; to lift it: " + reason.lift()));
      }
      if (field.zones().stream().anyMatch(z -> z.passes() > 0 && !z.goesToMachine(drafts))) {
        findings.add(
            new Finding(
                Code.DRAFT_NOT_ON_MACHINE,
                Place.field(field.field()),
                "the plan is a draft",
                "its zones are in no task of TASKDATA.zip, and rates.csv marks them; lift the draft,"
                    + " or say machine.drafts: yes"));
      }
    }
    return findings;
  }
}
