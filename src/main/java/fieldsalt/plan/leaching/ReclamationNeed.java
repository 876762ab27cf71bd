package fieldsalt.plan.leaching;

import static fieldsalt.quantity.Dimension.BORON;
import static fieldsalt.quantity.Dimension.CONDUCTIVITY;
import static fieldsalt.quantity.Dimension.PERCENT;
import static fieldsalt.quantity.Dimension.SOIL_DEPTH;
import static fieldsalt.quantity.Dimension.VOLUME;
import static fieldsalt.quantity.Dimension.WATER_DEPTH;

import fieldsalt.classes.MaasHoffman1977;
import fieldsalt.facts.BoronTolerance;
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
import fieldsalt.plan.word.Sentence;
import fieldsalt.plan.zone.Reclamation;
import fieldsalt.plan.zone.Reclamation.Status;
import fieldsalt.plan.zone.ZoneWork;
import fieldsalt.quantity.Measure;
import fieldsalt.quantity.TextureGroup;
import java.util.List;
import java.util.Optional;

/** Works out the reclamation depth of a zone. */
public final class ReclamationNeed {
  /** Error of K, of its logarithm (judgement: no published figure). */
  static final double K_ERROR_LN = 0.25;

  /** Root zones shallower than this are reclaimed over 60 cm, others over 90 cm. */
  private static final double SHALLOW_ROOTS_CM = 60;

  private static final Sentence ONE_PORE_VOLUME =
      Sentence.of(
          "about-one-pore-volume",
          "The zone is hardly above its target: about one pore volume moves the salt down rather"
              + " than out; low confidence.");

  private final PlanSettings settings;
  private final double[] kError;

  public ReclamationNeed(PlanSettings settings, double[] kError) {
    this.settings = settings;
    this.kError = kError;
  }

  /** ECe to reclaim to: as set, else 90 % yield of the crop, else Handbook 60's 4 dS/m. */
  double target(FieldGround field) {
    return settings
        .leaching()
        .targetEce()
        .orElseGet(
            () ->
                field
                    .crop()
                    .flatMap(c -> c.tolerance())
                    .map(MaasHoffman1977::of)
                    .map(m -> field.soil().isGypsiferous() ? m.onGypsiferousSoil() : m)
                    .map(m -> m.eceAtPct(90))
                    .orElse(UsSalinityLaboratory1954.SALINE_DS_M));
  }

  double depthCm(FieldGround field) {
    boolean shallow = RootZones.depthCm(field.crop()) < SHALLOW_ROOTS_CM;
    return settings.leaching().depthCm().orElse(shallow ? 60 : 90);
  }

  /** ECe that the soil comes to with this water: half of its EC (soil water twice the paste). */
  public double equilibrium() {
    return settings.water().ecDsPerM().orElse(0) / 2;
  }

  /** By the chance that the zone is above its target. */
  public Reclamation of(FieldGround field, TextureGroup texture, ZoneSalt salt, double areaHa) {
    double chance = salt.chanceMeanAbove(target(field));
    return of(field, texture, salt, areaHa, chance >= settings.money().actAbove());
  }

  /** As decided. */
  public Reclamation of(
      FieldGround field, TextureGroup texture, ZoneSalt salt, double areaHa, boolean act) {
    Application application = settings.leaching().applicationFor(settings.water().method());
    double k = Hoffman1980.k(application, texture);
    Ground ground = new Ground(target(field), depthCm(field), k, application);
    double chance = salt.chanceMeanAbove(ground.target);
    boolean reachable = ground.target > equilibrium();
    if (act && !reachable) {
      return ground.result(
          Status.TARGET_OUT_OF_REACH, Odds.none(), chance, 0, List.of(outOfReach(ground.target)));
    }
    double[] mm = reachable ? depths(salt, ground) : Draws.constant(0);
    double planned = act ? Middle.ofPositive(mm) : 0;
    return ground.result(
        act ? Status.NEEDED : Status.NOT_NEEDED,
        Odds.of(mm),
        chance,
        planned,
        act
            ? ground.needed(Odds.of(mm), planned, chance, areaHa)
            : List.of(notNeeded(ground.target, chance)));
  }

  /** What is to be reclaimed, and how. */
  private record Ground(double target, double depthCm, double k, Application application) {
    Reclamation result(Status status, Odds mm, double chance, double planned, List<Sentence> said) {
      return new Reclamation(
          status, mm, chance, planned, target, depthCm, k, application, isLow(planned), said);
    }

    /** Within a quarter of the least depth for which the equation holds. */
    private boolean isLow(double planned) {
      return planned > 0 && planned < 1.25 * k * depthCm * 10;
    }

    List<Sentence> needed(Odds mm, double planned, double chance, double areaHa) {
      Sentence amount =
          Sentence.of(
              "reclamation",
              "To bring the top {0} to {1}: {2} of water through the soil by "
                  + application.label()
                  + " ({3} over the zone); chance that it is needed {4}. Add what refills the dry"
                  + " soil and what evaporates meanwhile.",
              Measure.of(depthCm, SOIL_DEPTH),
              Measure.of(target, CONDUCTIVITY),
              new Measure(planned, mm.p10(), mm.p90(), WATER_DEPTH),
              Measure.of(planned * areaHa * 10, VOLUME),
              Measure.of(100 * chance, PERCENT));
      return isLow(planned) ? List.of(amount, ONE_PORE_VOLUME) : List.of(amount);
    }
  }

  private static Sentence notNeeded(double target, double chance) {
    return Sentence.of(
        "no-reclamation",
        "No one-off leaching: the zone is at or below {0} with a chance of {1}.",
        Measure.of(target, CONDUCTIVITY),
        Measure.of(100 * (1 - chance), PERCENT));
  }

  /** Millimetres in each future of a zone whose reclamation was worked out. */
  public double[] depths(ZoneWork work) {
    Reclamation plan = work.reclamation();
    return depths(
        work.toReclaim(),
        new Ground(plan.targetEce(), plan.depthCm(), plan.k(), plan.application()));
  }

  private double[] depths(ZoneSalt salt, Ground ground) {
    double[] mm = new double[Draws.COUNT];
    for (int d = 0; d < mm.length; d++) {
      double k = ground.k * Math.exp(K_ERROR_LN * kError[d]);
      mm[d] =
          Hoffman1980.depth(k, ground.depthCm * 10, salt.draws()[d], ground.target, equilibrium());
    }
    return mm;
  }

  private Sentence outOfReach(double target) {
    return Sentence.of(
        "target-below-water",
        "This water alone keeps the soil at about {0}: leaching with it cannot bring the zone to"
            + " {1}. Leach with better water, or take a crop that stands more.",
        Measure.of(equilibrium(), CONDUCTIVITY),
        Measure.of(target, CONDUCTIVITY));
  }

  /** Boron: depth for the crop's tolerance over the depth to reclaim; empty where not needed. */
  public Optional<Sentence> boron(FieldGround field) {
    Optional<BoronTolerance> tolerance = field.crop().flatMap(BoronTolerance::of);
    if (tolerance.isEmpty() || field.soil().boronMgL().isEmpty()) {
      return Optional.empty();
    }
    double found = field.soil().boronMgL().getAsDouble();
    double limit = tolerance.get().highMgL();
    double left = settings.water().ions().boronMgL().orElse(0) / 2;
    if (found <= limit || limit <= left) {
      return Optional.of(boronWords(found, limit, left));
    }
    double mm = Hoffman1980.depth(Hoffman1980.K_BORON, depthCm(field) * 10, found, limit, left);
    return Optional.of(
        Sentence.of(
            "boron-leaching",
            "Boron of the paste averages {0}, the crop stands {1}: washing it down takes about {2}"
                + " through the soil, two to three times what salt takes; it may come back, and the"
                + " drainage water needs a place.",
            Measure.of(found, BORON),
            Measure.of(limit, BORON),
            Measure.of(mm, WATER_DEPTH)));
  }

  private static Sentence boronWords(double found, double limit, double left) {
    boolean fine = found <= limit;
    return Sentence.of(
        fine ? "boron-fine" : "boron-out-of-reach",
        fine
            ? "Boron of the paste averages {0}; the crop stands {1}."
            : "Boron of the paste averages {0}, the crop stands {1}; this water alone leaves about"
                + " {2}, so leaching with it cannot help.",
        Measure.of(found, BORON),
        Measure.of(limit, BORON),
        Measure.of(left, BORON));
  }
}
