package fieldsalt.plan;

import fieldsalt.facts.RootZones;
import fieldsalt.finding.Code;
import fieldsalt.finding.FieldFault;
import fieldsalt.finding.Finding;
import fieldsalt.finding.InputProblem;
import fieldsalt.finding.Place;
import fieldsalt.plan.draw.Draws;
import fieldsalt.plan.draw.Futures;
import fieldsalt.plan.draw.Odds;
import fieldsalt.plan.field.Comparisons;
import fieldsalt.plan.field.CropTable;
import fieldsalt.plan.field.CropYields;
import fieldsalt.plan.field.FieldPlan;
import fieldsalt.plan.gypsum.MachineRates;
import fieldsalt.plan.gypsum.RateRow;
import fieldsalt.plan.leaching.BoronNeed;
import fieldsalt.plan.leaching.SaltBalance;
import fieldsalt.plan.leaching.SteadyState;
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
  /** Fields planned side by side; their futures are added to the totals and forgotten. */
  private static final int TOGETHER = 16;

  private final PlanInput input;
  private final PlanSettings settings;
  private final Futures futures;

  private Planner(PlanInput input, PlanSettings settings) {
    this.input = input;
    this.settings = settings;
    futures = new Futures(input.seed());
  }

  /**
   * Plans a ranch. Every figure is finite; what cannot be told is empty and has its sentence.
   *
   * @throws InputProblem if settings cannot be planned with (a purity of 0, a negative price, ...),
   *     naming all of them
   */
  public static RanchPlan plan(PlanInput input, PlanSettings settings) {
    settings.refuseProblems();
    input.fields().forEach(f -> f.settings().refuseProblems());
    return new Planner(input, settings).plan();
  }

  /**
   * A field with what the ranch's totals need of it.
   *
   * @param gypsumT tonnes in each future
   * @param leachingM3 cubic metres in each future
   * @param yields of each compared crop by zone
   */
  private record Planned(
      FieldPlan plan, double[] gypsumT, double[] leachingM3, List<List<Double>> yields) {}

  private RanchPlan plan() {
    List<FieldGround> fields =
        input.fields().stream().filter(f -> input.zones().containsKey(f.field())).toList();
    List<FieldPlan> made = new ArrayList<>();
    double[] gypsumT = new double[Draws.COUNT];
    double[] leachingM3 = new double[Draws.COUNT];
    CropTable crops = new CropTable(settings.crops());
    for (int from = 0; from < fields.size(); from += TOGETHER) {
      List<FieldGround> some = fields.subList(from, Math.min(fields.size(), from + TOGETHER));
      for (Planned field : together(some)) {
        made.add(field.plan());
        Draws.add(gypsumT, field.gypsumT(), 1);
        Draws.add(leachingM3, field.leachingM3(), 1);
        crops.add(
            field.yields(), field.plan().zones().stream().map(z -> z.zone().areaHa()).toList());
      }
    }
    return ranch(made, crops.table(), Odds.of(gypsumT), Odds.of(leachingM3));
  }

  private List<Planned> together(List<FieldGround> fields) {
    return fields.parallelStream()
        .map(field -> FieldFault.naming(field.field(), () -> of(field)))
        .toList();
  }

  private Planned of(FieldGround field) {
    ZoneWorks works = new ZoneWorks(input, field, field.settings(), futures);
    List<ZoneWork> own = works.all();
    double[] gypsumT = gypsumTonnes(own);
    double[] leachingM3 = leachingM3(works, own);
    return new Planned(
        of(field, works.requirement(), own, gypsumT, leachingM3),
        gypsumT,
        leachingM3,
        CropTable.yields(own, settings.crops()));
  }

  private FieldPlan of(
      FieldGround field,
      LeachingRequirement leaching,
      List<ZoneWork> works,
      double[] gypsumT,
      double[] leachingM3) {
    PlanSettings own = field.settings();
    ZonePlans plans =
        new ZonePlans(
            own, input.ece(), new SaltBalance(own, futures), RootZones.depthCm(field.crop()));
    MachineRates rates =
        MachineRates.of(
            works.stream().mapToDouble(w -> w.gypsum().wantedProduct()).toArray(),
            works.stream().mapToDouble(ZoneWork::areaHa).toArray(),
            own);
    List<ZonePlan> zones = new ArrayList<>();
    for (int z = 0; z < works.size(); z++) {
      zones.add(plans.of(works.get(z), leaching, rates.product()[z], rates.passes()[z]));
    }
    boolean treats = zones.stream().anyMatch(z -> z.firstStep() != Step.NOTHING);
    return new FieldPlan(
        field,
        Odds.of(meanEce(works)),
        leaching,
        SteadyState.of(own.water()),
        BoronNeed.of(field, own),
        zones,
        Odds.of(gypsumT),
        rates.plannedT(),
        rates.unmetT(),
        Odds.of(leachingM3),
        new Comparisons(own).of(works, rates),
        DraftMarks.of(field, treats, own));
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
  private static double[] leachingM3(ZoneWorks field, List<ZoneWork> works) {
    double[] sum = new double[Draws.COUNT];
    for (ZoneWork work : works) {
      if (work.reclamation().status() == Reclamation.Status.NEEDED) {
        Draws.add(sum, field.reclamationNeed().depths(work), work.areaHa() * 10);
      }
    }
    return sum;
  }

  private RanchPlan ranch(
      List<FieldPlan> fields, List<CropYields> crops, Odds gypsumT, Odds leachingM3) {
    List<RateRow> rates = new ArrayList<>();
    double cost = 0;
    double net = 0;
    double planned = 0;
    for (FieldPlan field : fields) {
      planned += field.plannedT();
      GypsumMoney gypsum = new GypsumMoney(field.ground().settings());
      LeachingMoney leaching = new LeachingMoney(field.ground().settings());
      for (ZonePlan zone : field.zones()) {
        double perHa =
            gypsum.costPerHa(zone.productTPerHa())
                + leaching.costPerHa(zone.reclamation().plannedMm());
        cost += perHa * zone.zone().areaHa();
        net += zone.plannedMoney().stream().mapToDouble(MoneyOutlook::expectedNet).sum();
        rates.add(row(zone, perHa, field.ground().settings()));
      }
    }
    return new RanchPlan(
        settings,
        fields,
        crops,
        gypsumT,
        planned,
        leachingM3,
        cost,
        net,
        rates,
        findings(fields, settings.machine().drafts()));
  }

  private static RateRow row(ZonePlan zone, double costPerHa, PlanSettings settings) {
    int passes = zone.passes();
    GypsumPlan gypsum = zone.gypsum();
    boolean priced = !settings.money().prices().byName().isEmpty();
    return new RateRow(
        zone.zone().field(),
        zone.zone().name(),
        zone.zone().areaHa(),
        when(!gypsum.isUnknown(), passes == 0 ? 0 : zone.productTPerHa() / passes),
        passes,
        when(!gypsum.isUnknown(), zone.productT()),
        when(gypsum.isSized(), gypsum.product().p50()),
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
