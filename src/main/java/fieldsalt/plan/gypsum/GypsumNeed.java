package fieldsalt.plan.gypsum;

import fieldsalt.facts.GypsumStoichiometry;
import fieldsalt.facts.InfiltrationHazard;
import fieldsalt.facts.UsSalinityLaboratory1954;
import fieldsalt.plan.draw.Draws;
import fieldsalt.plan.draw.Middle;
import fieldsalt.plan.draw.Odds;
import fieldsalt.plan.draw.ZoneDraws;
import fieldsalt.plan.setting.GroundSettings.Drainage;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.soil.FieldSoil;
import fieldsalt.plan.soil.SoilDraws;
import fieldsalt.plan.zone.GypsumPlan;
import fieldsalt.plan.zone.GypsumPlan.Advice;
import fieldsalt.plan.zone.GypsumPlan.Sources;
import fieldsalt.quantity.TextureGroup;
import java.util.List;

/** Works out the gypsum of a zone: gates, requirement, what stands in the way. */
public final class GypsumNeed {
  /** From here sodium may harm fine soil where the water seals it, ESP percent. */
  static final double CONSIDER_ESP_PCT = 6;

  private final PlanSettings settings;
  private final SoilDraws draws;

  public GypsumNeed(PlanSettings settings, SoilDraws draws) {
    this.settings = settings;
    this.draws = draws;
  }

  /** Target ESP: as set, never below the ESP that the water's own SAR keeps. */
  double target() {
    double ofWater = UsSalinityLaboratory1954.espFromSar(settings.water().sarKnown().orElse(0));
    return Math.max(settings.gypsum().targetEspPct(), ofWater);
  }

  /** Futures of ESP in a zone, percent; zeros where sodium is not known. */
  public double[] esp(int zone) {
    return draws.esp().has(zone) ? draws.esp().values()[zone] : Draws.constant(0);
  }

  /**
   * Futures of the requirement in a zone, t/ha of pure gypsum, less what the soil holds; zeros
   * where sodium or CEC is not known.
   */
  public double[] pure(int zone, FieldSoil soil) {
    return pure(zone, soil, settings.gypsum().depthCm());
  }

  private double[] pure(int zone, FieldSoil soil, double depthCm) {
    if (!draws.esp().has(zone) || !draws.cec().has(zone)) {
      return Draws.constant(0);
    }
    double depthM = depthCm / 100;
    double target = target();
    double factor = GypsumStoichiometry.factor(target);
    double[] esp = draws.esp().values()[zone];
    double[] cec = draws.cec().values()[zone];
    double[] density = draws.bulkDensity().values()[zone];
    double own = soil.gypsumPct().orElse(0);
    double[] out = new double[Draws.COUNT];
    for (int d = 0; d < out.length; d++) {
      double asked =
          GypsumStoichiometry.requirement(
              factor, depthM, density[d], cec[d], Math.min(100, esp[d]), target);
      double held = GypsumStoichiometry.nativeGypsum(own, depthM, density[d]);
      out[d] = Math.max(0, asked - held);
    }
    return out;
  }

  /** Chance that ESP is at or above 15, or SAR at or above 13 where ESP was worked out from it. */
  private double chanceSodic(int zone) {
    boolean bySar = draws.esp().known().get(zone).workedOut();
    ZoneDraws read = bySar ? draws.sar() : draws.esp();
    double limit =
        bySar ? UsSalinityLaboratory1954.SODIC_SAR : UsSalinityLaboratory1954.SODIC_ESP_PCT;
    return read.has(zone) ? Draws.share(read.values()[zone], x -> x >= limit) : 0;
  }

  /**
   * The gypsum of a zone.
   *
   * @param pure futures of its requirement
   * @param sitesToMeasure of the zone, best first
   */
  public GypsumPlan of(int zone, FieldSoil soil, double[] pure, List<String> sitesToMeasure) {
    double chance = chanceSodic(zone);
    double needed = Draws.share(pure, x -> x > 0);
    double middle = needed < settings.money().actAbove() ? 0 : Middle.ofPositive(pure);
    double wanted = middle * settings.gypsum().productPerPure().orElse(1);
    Advice advice = advice(zone, soil, chance, pure, wanted);
    double otherCm = settings.gypsum().otherDepthCm();
    return new GypsumPlan(
        advice,
        Odds.of(esp(zone)),
        chance,
        Odds.of(pure),
        middle,
        middle > 0 ? Middle.ofPositive(pure(zone, soil, otherCm)) : 0,
        target(),
        advice == Advice.RECOMMENDED ? wanted : 0,
        settings.gypsum().productPerPure(),
        soil.laboratoryRequirement(),
        new Sources(
            draws.esp().known().get(zone),
            draws.cec().known().get(zone),
            draws.bulkDensity().known().get(zone)),
        sitesToMeasure);
  }

  private Advice advice(int zone, FieldSoil soil, double chance, double[] pure, double wanted) {
    boolean sodic = chance >= settings.money().actAbove();
    if (!draws.esp().has(zone)) {
      return Advice.MEASURE_SODIUM;
    }
    if (!sodic && !isConsidered(esp(zone), soil)) {
      return Advice.NOT_NEEDED;
    }
    if (!draws.cec().has(zone)) {
      return Advice.MEASURE_CEC;
    }
    if (soil.gypsumPct().orElse(0) > 0 && Odds.of(pure).p50() <= 0) {
      return Advice.OWN_GYPSUM;
    }
    return sodic ? sized(pure, wanted) : Advice.CONSIDER;
  }

  private Advice sized(double[] pure, double wanted) {
    if (Draws.share(pure, x -> x > 0) < settings.money().actAbove()) {
      return Advice.AT_TARGET;
    }
    if (settings.ground().drainage() == Drainage.POOR) {
      return Advice.NO_DRAINAGE;
    }
    return wanted < settings.gypsum().minTPerHa() ? Advice.BELOW_SMALLEST : Advice.RECOMMENDED;
  }

  private boolean isConsidered(double[] esp, FieldSoil soil) {
    boolean seals = settings.water().hazard().filter(h -> h != InfiltrationHazard.NONE).isPresent();
    boolean fine = soil.texture().group() == TextureGroup.FINE;
    double likely = Draws.share(esp, x -> x >= CONSIDER_ESP_PCT);
    boolean water = seals || settings.water().isUnknown();
    return water && fine && likely >= settings.money().actAbove();
  }
}
