package fieldsalt.plan.setting;

import fieldsalt.classes.OwnCrops;
import fieldsalt.facts.Crop;
import fieldsalt.facts.Hoffman1980.Application;
import fieldsalt.read.job.JobDocument;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
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
    return new WaterSettings(
        job.number("water.ec-dS-m"),
        job.number("water.sar"),
        new WaterSettings.WaterIons(
            job.number("water.na"),
            job.number("water.ca"),
            job.number("water.mg"),
            job.number("water.hco3"),
            job.number("water.cl"),
            job.number("water.b")),
        Irrigation.valueOf(upper("water.method")),
        job.number("water.efficiency-pct"),
        job.number("water.season-et-mm"),
        job.number("water.rain-mm").orElse(0));
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
