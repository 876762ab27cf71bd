package fieldsalt.plan;

import fieldsalt.basis.Samples;
import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.facts.Crop;
import fieldsalt.facts.Crops;
import fieldsalt.geo.PlaceM;
import fieldsalt.plan.setting.GroundSettings;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.setting.WaterSettings;
import fieldsalt.plan.soil.FieldEvidence;
import fieldsalt.plan.soil.FieldGround;
import fieldsalt.plan.soil.FieldSoil;
import fieldsalt.plan.soil.PlanInput;
import fieldsalt.plan.soil.SoilProperties;
import fieldsalt.plan.soil.ZoneGround;
import fieldsalt.quantity.DepthRange;
import fieldsalt.quantity.Method;
import fieldsalt.quantity.ReadingKind;
import fieldsalt.quantity.Texture;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.sample.Ec;
import fieldsalt.read.sample.Ions;
import fieldsalt.read.sample.PairKind;
import fieldsalt.read.sample.Sample;
import fieldsalt.read.sample.Soil;
import fieldsalt.surface.SampledProperty;
import fieldsalt.surface.Surface;
import fieldsalt.surface.site.Target;
import fieldsalt.zones.field.Zone;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;

/** Small ranches for tests: one field, square zones of 10 ha side by side, values by zone. */
public final class Ranches {
  private static final double SIDE_M = Math.sqrt(100_000);
  private static final GeometryFactory SHAPES = new GeometryFactory();

  private final List<ZoneGround> zones = new ArrayList<>();
  private final Map<Integer, Double> ece = new LinkedHashMap<>();
  private String crop = "alfalfa";
  private FieldSoil soil = FieldSoil.unknown().withTexture(Texture.CLAY_LOAM);
  private FieldEvidence evidence = FieldEvidence.firm(30);
  private SoilProperties properties = SoilProperties.none();
  private double zoneVariance = 0.01;
  private final List<Sample> samples = new ArrayList<>();

  /** One zone for each ECe (dS/m, median at every point). */
  public static Ranches of(double... eces) {
    Ranches ranch = new Ranches();
    for (double value : eces) {
      ranch.add(value);
    }
    return ranch;
  }

  private void add(double value) {
    int k = zones.size();
    Envelope box = new Envelope(k * SIDE_M, (k + 1) * SIDE_M, 0, SIDE_M);
    Zone zone = new Zone("north-" + (k + 1), "north", k, "class " + k, SHAPES.toGeometry(box));
    List<Target> points = new ArrayList<>();
    for (int i = 0; i < 25; i++) {
      double x = box.getMinX() + (i % 5 + 0.5) * SIDE_M / 5;
      int row = i / 5;
      double y = (row + 0.5) * SIDE_M / 5;
      points.add(new Target("north", new PlaceM(x, y)));
    }
    zones.add(new ZoneGround(zone, points));
    ece.put(k, value);
  }

  static int zoneOf(Target t) {
    return (int) Math.floor(t.place().xM() / SIDE_M);
  }

  public Ranches crop(String name) {
    crop = name;
    return this;
  }

  public Ranches soil(FieldSoil other) {
    soil = other;
    return this;
  }

  public Ranches evidence(FieldEvidence other) {
    evidence = other;
    return this;
  }

  public Ranches zoneVariance(double variance) {
    zoneVariance = variance;
    return this;
  }

  /** SAR by zone, as a surface through 12 sites with a standard error of 10 % in ln. */
  public Ranches sar(double... byZone) {
    properties =
        new SoilProperties(
            properties.esp(),
            Optional.of(mapped("SAR", byZone)),
            properties.cec(),
            properties.bulkDensity());
    return this;
  }

  /** ESP by zone, the same way. */
  public Ranches esp(double... byZone) {
    properties =
        new SoilProperties(
            Optional.of(mapped("ESP", byZone)),
            properties.sar(),
            properties.cec(),
            properties.bulkDensity());
    return this;
  }

  /** CEC by zone, the same way. */
  public Ranches cec(double... byZone) {
    properties =
        new SoilProperties(
            properties.esp(),
            properties.sar(),
            Optional.of(mapped("CEC", byZone)),
            properties.bulkDensity());
    return this;
  }

  private static SampledProperty mapped(String name, double[] byZone) {
    FixedSurface surface = new FixedSurface(t -> Math.log(byZone[zoneOf(t)]), (a, b) -> 0.01, 0);
    return new SampledProperty(readings(name, 12, byZone[0]), Optional.of(surface));
  }

  /** Readings of a property at some sites of the field, without error of their own. */
  public static SiteReadings readings(String name, int sites, double value) {
    List<SiteReadings.Site> places = new ArrayList<>();
    List<SiteReadings.Row> rows = new ArrayList<>();
    for (int i = 0; i < sites; i++) {
      places.add(new SiteReadings.Site("s" + i, "north", new PlaceM(10 * i, 10), Optional.empty()));
      rows.add(
          new SiteReadings.Row(i, Math.log(value), 0, List.of(), true, "paste", "a laboratory"));
    }
    return new SiteReadings(
        name, "", Scale.LOG, places, rows, List.of(), new double[0][0], List.of());
  }

  public Ranches properties(SoilProperties other) {
    properties = other;
    return this;
  }

  /** Four sites of the first zone, none with sodium: mid, near it, and two far corners. */
  Ranches withSites() {
    sample("mid", SIDE_M / 2, SIDE_M / 2);
    sample("near", SIDE_M / 2 + 20, SIDE_M / 2);
    sample("far", 5, 5);
    sample("low", SIDE_M - 5, SIDE_M - 40);
    return this;
  }

  private void sample(String id, double x, double y) {
    samples.add(
        new Sample(
            id,
            "north",
            Optional.of(new PlaceM(x, y)),
            new DepthRange(0, 30),
            Optional.of(Method.PASTE),
            ReadingKind.EXTRACT,
            Optional.of(new Ec(5, Ec.Censored.NO)),
            OptionalDouble.empty(),
            true,
            Soil.unknown(),
            Ions.none(),
            "a laboratory",
            Optional.empty(),
            PairKind.SPLIT,
            OptionalDouble.empty(),
            false,
            new SourceRow("samples.csv", 2),
            Samples.noExtras()));
  }

  Surface surface() {
    return new FixedSurface(
        t -> Math.log(ece.get(zoneOf(t))),
        (a, b) -> 0.005 + (zoneOf(a) == zoneOf(b) ? zoneVariance : 0),
        0.02);
  }

  public PlanInput input() {
    Optional<Crop> grown =
        crop.isEmpty() ? Optional.empty() : Optional.of(Crops.standard().find(crop).crop());
    return PlanInputs.of(
        zones,
        List.of(new FieldGround("north", grown, soil, evidence, PlanSettings.defaults())),
        surface(),
        properties,
        samples,
        1);
  }

  public RanchPlan plan(PlanSettings settings) {
    return Planner.plan(PlanInputs.with(input(), settings), settings);
  }

  /** Settings of a ranch that drains and has a water of 1 dS/m. */
  public static PlanSettings drained() {
    return Changed.withWater(
        Changed.withGround(
            PlanSettings.defaults(),
            Changed.withDrainage(GroundSettings.defaults(), GroundSettings.Drainage.GOOD)),
        Changed.withEc(WaterSettings.defaults(), 1));
  }
}
