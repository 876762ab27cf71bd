package fieldsalt.plan.setting;

import fieldsalt.classes.OwnCrops;
import fieldsalt.facts.Crop;
import fieldsalt.facts.Hoffman1980.Application;
import fieldsalt.read.job.JobDocument;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/** The settings of the plan, from the keys of a job. */
public final class PlanKeys {
  private final JobDocument job;

  private PlanKeys(JobDocument job) {
    this.job = job;
  }

  /** The settings that a job gives. */
  public static PlanSettings of(JobDocument job) {
    PlanKeys keys = new PlanKeys(job);
    return new PlanSettings(
        keys.water(),
        keys.ground(),
        keys.leaching(),
        keys.gypsum(),
        new MachineSettings(
            job.number("machine.min"),
            job.number("machine.max"),
            job.number("machine.step"),
            job.flag("machine.drafts")),
        keys.money(),
        keys.crops());
  }

  private WaterSettings water() {
    Optional<Blend> blend = blend();
    OptionalDouble ec = job.number("water.ec-dS-m");
    OptionalDouble sar = job.number("water.sar");
    if (blend.isPresent() && blend.get().share().isPresent()) {
      Blend b = blend.get();
      double share = b.share().getAsDouble();
      boolean both = sar.isPresent() && b.sar().isPresent();
      OptionalDouble mixed =
          both
              ? OptionalDouble.of(
                  Blend.sar(
                      b.firstEcDsPerM(),
                      sar.getAsDouble(),
                      b.ecDsPerM(),
                      b.sar().getAsDouble(),
                      share))
              : OptionalDouble.empty();
      double mix = Blend.ec(b.firstEcDsPerM(), b.ecDsPerM(), share);
      return water(OptionalDouble.of(mix), mixed, WaterSettings.WaterIons.none(), blend);
    }
    return water(ec, sar, ions(), blend);
  }

  /** A second water; empty without the salinity of both. */
  private Optional<Blend> blend() {
    OptionalDouble first = job.number("water.ec-dS-m");
    OptionalDouble second = job.number("water.blend-with.ec-dS-m");
    OptionalDouble pct = job.number("water.blend-with.share-pct");
    return first.isPresent() && second.isPresent()
        ? Optional.of(
            new Blend(
                second.getAsDouble(),
                job.number("water.blend-with.sar"),
                pct.isPresent() ? OptionalDouble.of(pct.getAsDouble() / 100) : pct,
                first.getAsDouble()))
        : Optional.empty();
  }

  private WaterSettings.WaterIons ions() {
    return new WaterSettings.WaterIons(
        job.number("water.na"),
        job.number("water.ca"),
        job.number("water.mg"),
        job.number("water.hco3"),
        job.number("water.cl"),
        job.number("water.b"));
  }

  private WaterSettings water(
      OptionalDouble ec, OptionalDouble sar, WaterSettings.WaterIons ions, Optional<Blend> blend) {
    return new WaterSettings(
        ec,
        sar,
        ions,
        Irrigation.valueOf(upper("water.method")),
        job.number("water.efficiency-pct"),
        job.number("water.season-et-mm"),
        job.number("water.rain-mm").orElse(0),
        new WaterSettings.Season(
            job.number("water.applied-mm"), job.number("water.leaching-fraction"), blend));
  }

  private GroundSettings ground() {
    return new GroundSettings(
        GroundSettings.Drainage.valueOf(upper("drainage")), job.number("water-table-cm"));
  }

  private LeachingSettings leaching() {
    return new LeachingSettings(
        job.number("leaching.target-ece"),
        job.number("leaching.depth-cm"),
        application(),
        job.amount("leaching.tolerable-yield-pct"));
  }

  private Optional<Application> application() {
    return job.text("leaching.method")
        .map(
            word ->
                switch (word) {
                  case "continuous" -> Application.PONDING;
                  case "intermittent" -> Application.INTERMITTENT;
                  default -> Application.SPRINKLING;
                });
  }

  private GypsumSettings gypsum() {
    return new GypsumSettings(
        job.amount("gypsum.target-esp"),
        job.amount("gypsum.depth-cm"),
        job.number("gypsum.purity-pct"),
        job.number("gypsum.moisture-pct").orElse(0),
        job.amount("gypsum.cap-t-ha"),
        job.amount("gypsum.min-t-ha"),
        GypsumSettings.Lime.valueOf(upper("gypsum.lime")));
  }

  private MoneySettings money() {
    Map<String, Double> prices = new TreeMap<>();
    for (String name : job.names("prices")) {
      prices.put(name, job.number("prices", name).orElseThrow());
    }
    return new MoneySettings(
        Prices.of(prices), (int) job.amount("years"), job.number("act-above").orElse(0.5));
  }

  private CropSettings crops() {
    List<Crop> named =
        job.texts("crops").stream().map(name -> OwnCrops.in(job).find(name).crop()).toList();
    boolean sCurve = job.word("yield-curve").equals("s-curve");
    CropSettings settings =
        CropSettings.defaults()
            .withCurve(sCurve ? CropSettings.Curve.S_CURVE : CropSettings.Curve.THRESHOLD);
    return named.isEmpty() ? settings : settings.withCompare(named);
  }

  private String upper(String key) {
    return job.word(key).toUpperCase(Locale.ROOT);
  }
}
