package fieldsalt.plan.leaching;

import fieldsalt.classes.MaasHoffman1977;
import fieldsalt.facts.Crop;
import fieldsalt.facts.Hoffman1980;
import fieldsalt.facts.Hoffman1980.Application;
import fieldsalt.facts.RootZones;
import fieldsalt.facts.UsSalinityLaboratory1954;
import fieldsalt.plan.draw.Draws;
import fieldsalt.plan.draw.Middle;
import fieldsalt.plan.draw.Odds;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.soil.FieldGround;
import fieldsalt.plan.soil.ZoneSalt;
import fieldsalt.plan.zone.Reclamation;
import fieldsalt.plan.zone.Reclamation.Status;
import fieldsalt.plan.zone.ZoneWork;
import fieldsalt.quantity.TextureGroup;

/** Works out the reclamation depth of a zone. */
public final class ReclamationNeed {
  /** Error of K, of its logarithm (judgement: no published figure). */
  static final double K_ERROR_LN = 0.25;

  /** Root zones shallower than this are reclaimed over 60 cm, others over 90 cm. */
  private static final double SHALLOW_ROOTS_CM = 60;

  private final PlanSettings settings;
  private final double[] kError;

  public ReclamationNeed(PlanSettings settings, double[] kError) {
    this.settings = settings;
    this.kError = kError;
  }

  /** ECe to reclaim to: as set, else 90 % yield of the crop, else Handbook 60's 4 dS/m. */
  private double target(FieldGround field) {
    double usual =
        field
            .crop()
            .flatMap(Crop::tolerance)
            .map(t -> MaasHoffman1977.of(t, field.soil().isGypsiferous()).eceAtPct(90))
            .orElse(UsSalinityLaboratory1954.SALINE_DS_M);
    return settings.leaching().targetEce().orElse(usual);
  }

  /** Depth to reclaim in a field, cm. */
  static double depthCm(FieldGround field, PlanSettings settings) {
    boolean shallow = RootZones.depthCm(field.crop()) < SHALLOW_ROOTS_CM;
    return settings.leaching().depthCm().orElse(shallow ? 60 : 90);
  }

  /** Needed or not by the chance that the zone is above its target. */
  public Reclamation of(FieldGround field, TextureGroup texture, ZoneSalt salt) {
    Application application = settings.leaching().applicationFor(settings.water().method());
    double target = target(field);
    double depthCm = depthCm(field, settings);
    double k = Hoffman1980.k(application, texture);
    double chance = salt.chanceMeanAbove(target);
    boolean reachable = target > settings.water().equilibriumEce();
    double[] mm = reachable ? depths(salt, target, depthCm, k) : Draws.constant(0);
    Status needed = reachable ? Status.NEEDED : Status.TARGET_OUT_OF_REACH;
    return new Reclamation(
        chance >= settings.money().actAbove() ? needed : Status.NOT_NEEDED,
        Draws.mean(salt.draws()),
        Odds.of(mm),
        chance,
        Middle.ofPositive(mm),
        target,
        depthCm,
        k,
        application);
  }

  /** Millimetres in each future of a zone whose reclamation was worked out. */
  public double[] depths(ZoneWork work) {
    Reclamation plan = work.reclamation();
    return depths(work.toReclaim(), plan.targetEce(), plan.depthCm(), plan.k());
  }

  private double[] depths(ZoneSalt salt, double target, double depthCm, double k) {
    double[] mm = new double[Draws.COUNT];
    for (int d = 0; d < mm.length; d++) {
      double drawnK = k * Math.exp(K_ERROR_LN * kError[d]);
      mm[d] =
          Hoffman1980.depth(
              drawnK, depthCm * 10, salt.draws()[d], target, settings.water().equilibriumEce());
    }
    return mm;
  }
}
