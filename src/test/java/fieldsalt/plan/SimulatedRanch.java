package fieldsalt.plan;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.facts.Crops;
import fieldsalt.facts.GypsumStoichiometry;
import fieldsalt.facts.UsSalinityLaboratory1954;
import fieldsalt.facts.UsualSoil;
import fieldsalt.gaussian.Cholesky;
import fieldsalt.geo.PlaceM;
import fieldsalt.plan.setting.CropSettings;
import fieldsalt.plan.setting.GypsumSettings;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.soil.FieldEvidence;
import fieldsalt.plan.soil.FieldGround;
import fieldsalt.plan.soil.FieldSoil;
import fieldsalt.plan.soil.PlanInput;
import fieldsalt.plan.soil.SoilDraws;
import fieldsalt.plan.soil.SoilProperties;
import fieldsalt.plan.soil.ZoneGround;
import fieldsalt.quantity.Texture;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.SampledProperty;
import fieldsalt.surface.SurfaceFitter;
import fieldsalt.surface.choice.SurfaceSettings;
import fieldsalt.surface.site.Target;
import fieldsalt.zones.field.Zone;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * A ranch whose truth is known: a field of 40 ha in four square zones, ln SAR an exponential
 * Gaussian field about an unknown mean, 30 sites whose SAR carries the laboratory's shared and own
 * error. The surface handed to the plan is the exact posterior under a flat prior on the mean, so
 * what is tested is the plan alone. CEC is measured at the sites in every other ranch and known
 * from texture in the others; bulk density never is.
 */
final class SimulatedRanch {
  static final double TARGET_PCT = 10;

  private static final double SIDE_M = Math.sqrt(100_000);
  private static final int ZONES = 4;
  private static final int SITES = 30;
  private static final int ACROSS = 5;
  private static final double SAR_SHARED = 0.08;
  private static final double SAR_OWN = 0.10;
  private static final double CEC_SHARED = 0.10;
  private static final double CEC_OWN = 0.10;
  private static final double USUAL_CEC = 22;
  private static final double USUAL_DENSITY = 1.35;

  private final boolean fitted;
  private final Random random;
  private final List<PlaceM> sites = new ArrayList<>();
  private final List<Target> points = new ArrayList<>();
  private final Map<Target, Integer> at = new HashMap<>();
  private final List<ZoneGround> zones = new ArrayList<>();
  private final double[] trueEsp = new double[ZONES];
  private final double[] trueCec = new double[ZONES];
  private final double trueDensity;
  private final PlanInput input;

  SimulatedRanch(long seed, boolean cecMeasured) {
    this(seed, cecMeasured, false);
  }

  /**
   * @param fitted whether the plan gets the surface that the product fits to the readings instead
   *     of the exact posterior
   */
  SimulatedRanch(long seed, boolean cecMeasured, boolean fitted) {
    this.fitted = fitted;
    random = new Random(seed);
    lay();
    Simulated sar = simulate(Math.log(13) + 0.7 * gauss(), 0.45, SAR_SHARED, SAR_OWN);
    double regression = Math.max(0, 1 + SoilDraws.ESR_ERROR * gauss());
    double shared = USUAL_CEC * Math.exp(UsualSoil.CEC_ERROR_LN * gauss());
    Simulated cec = simulate(Math.log(20) + 0.3 * gauss(), 0.08, CEC_SHARED, CEC_OWN);
    trueDensity = USUAL_DENSITY * (1 + UsualSoil.BULK_DENSITY_ERROR * gauss());
    for (int z = 0; z < ZONES; z++) {
      double esr = UsSalinityLaboratory1954.esr(sar.zoneMean(z)) * regression;
      trueEsp[z] = UsSalinityLaboratory1954.espOfEsr(esr);
      trueCec[z] = cecMeasured ? cec.zoneMean(z) : shared;
    }
    input =
        PlanInputs.of(
            zones,
            List.of(
                new FieldGround(
                    "north",
                    Optional.of(Crops.standard().find("alfalfa").crop()),
                    FieldSoil.unknown().withTexture(Texture.CLAY_LOAM),
                    FieldEvidence.firm(SITES),
                    PlanSettings.defaults())),
            new FixedSurface(t -> Math.log(3), (a, b) -> 0.01, 0),
            new SoilProperties(
                Optional.empty(),
                Optional.of(sar.property("SAR")),
                cecMeasured ? Optional.of(cec.property("CEC")) : Optional.empty(),
                Optional.empty()),
            List.of(),
            seed);
  }

  private void lay() {
    for (int z = 0; z < ZONES; z++) {
      Envelope box = new Envelope(z * SIDE_M, (z + 1) * SIDE_M, 0, SIDE_M);
      List<Target> own = new ArrayList<>();
      for (int i = 0; i < ACROSS * ACROSS; i++) {
        int row = i / ACROSS;
        double x = box.getMinX() + (i % ACROSS + 0.5) * SIDE_M / ACROSS;
        own.add(new Target("north", new PlaceM(x, (row + 0.5) * SIDE_M / ACROSS)));
      }
      zones.add(
          new ZoneGround(
              new Zone("north-" + z, "north", z, "", new GeometryFactory().toGeometry(box)), own));
      own.forEach(t -> at.put(t, at.size()));
      points.addAll(own);
    }
    for (int s = 0; s < SITES; s++) {
      sites.add(new PlaceM(ZONES * SIDE_M * random.nextDouble(), SIDE_M * random.nextDouble()));
    }
  }

  private double gauss() {
    return random.nextGaussian();
  }

  RanchPlan plan() {
    PlanSettings settings =
        Changed.withGypsum(
            Changed.withCrops(Ranches.drained(), CropSettings.defaults().withCompare(List.of())),
            Changed.withTargetEspPct(GypsumSettings.defaults(), TARGET_PCT));
    return Planner.plan(PlanInputs.with(input, settings), settings);
  }

  double trueEsp(int zone) {
    return trueEsp[zone];
  }

  /** Pure gypsum that the zone truly needs, t/ha. */
  double trueNeed(int zone) {
    return GypsumStoichiometry.requirement(
        1.2, 0.15, trueDensity, trueCec[zone], trueEsp[zone], TARGET_PCT);
  }

  private Simulated simulate(double mean, double sill, double sharedSd, double ownSd) {
    int all = SITES + points.size();
    List<PlaceM> places = new ArrayList<>(sites);
    points.forEach(p -> places.add(p.place()));
    double[][] field = new double[all][all];
    for (int i = 0; i < all; i++) {
      for (int j = 0; j < all; j++) {
        double h = places.get(i).distanceM(places.get(j));
        field[i][j] = sill * Math.exp(-h / 200) + (i == j ? 1e-9 : 0);
      }
    }
    double[][] kept = new double[all][];
    for (int i = 0; i < all; i++) {
      kept[i] = field[i].clone();
    }
    double[] z = new double[all];
    for (int i = 0; i < all; i++) {
      z[i] = gauss();
    }
    double[] truth = Cholesky.factor(field).correlate(z);
    double offset = sharedSd * gauss();
    double[] read = new double[SITES];
    for (int s = 0; s < SITES; s++) {
      read[s] = mean + truth[s] + offset + ownSd * gauss();
    }
    double[] values = new double[points.size()];
    for (int p = 0; p < values.length; p++) {
      values[p] = mean + truth[SITES + p];
    }
    return new Simulated(values, read, kept, sharedSd, ownSd);
  }

  /** A truth, its readings, and the exact posterior of the points given the readings. */
  private final class Simulated {
    private final double[] truth;
    private final double[] read;
    private final double sharedVariance;
    private final double ownVariance;
    private final double[] posterior = new double[points.size()];
    private final double[][] covariance = new double[points.size()][points.size()];

    Simulated(double[] truth, double[] read, double[][] field, double sharedSd, double ownSd) {
      this.truth = truth;
      this.read = read;
      sharedVariance = sharedSd * sharedSd;
      ownVariance = ownSd * ownSd;
      krige(field, sharedVariance, ownVariance);
    }

    private void krige(double[][] field, double shared, double own) {
      double[][] v = new double[SITES][SITES];
      for (int i = 0; i < SITES; i++) {
        for (int j = 0; j < SITES; j++) {
          v[i][j] = field[i][j] + shared + (i == j ? own : 0);
        }
      }
      double[][] inverse = Cholesky.factor(v).inverse();
      double[] ones = new double[SITES];
      java.util.Arrays.fill(ones, 1);
      double[] w = times(inverse, ones);
      double information = dot(ones, w);
      double mean = dot(read, w) / information;
      double[] residual = new double[SITES];
      for (int i = 0; i < SITES; i++) {
        residual[i] = read[i] - mean;
      }
      double[] solved = times(inverse, residual);
      int n = points.size();
      double[][] solvedC = new double[n][];
      double[] gap = new double[n];
      for (int p = 0; p < n; p++) {
        double[] c = field[SITES + p].clone();
        solvedC[p] = times(inverse, c);
        posterior[p] = mean + dot(c, solved);
        gap[p] = 1 - dot(ones, solvedC[p]);
      }
      for (int p = 0; p < n; p++) {
        for (int q = 0; q < n; q++) {
          covariance[p][q] =
              field[SITES + p][SITES + q]
                  - dot(field[SITES + q], solvedC[p])
                  + gap[p] * gap[q] / information;
        }
      }
    }

    double zoneMean(int zone) {
      int each = ACROSS * ACROSS;
      double sum = 0;
      for (int p = zone * each; p < (zone + 1) * each; p++) {
        sum += Math.exp(truth[p]);
      }
      return sum / each;
    }

    SampledProperty property(String name) {
      SiteReadings readings = readings(name);
      return new SampledProperty(
          readings,
          Optional.of(
              fitted
                  ? SurfaceFitter.fit(readings, List.of(boundary()), SurfaceSettings.defaults())
                  : exact()));
    }

    private FixedSurface exact() {
      return new FixedSurface(
          t -> posterior[at.get(t)], (a, b) -> covariance[at.get(a)][at.get(b)], 0);
    }

    private SiteReadings readings(String name) {
      List<SiteReadings.Site> places = new ArrayList<>();
      List<SiteReadings.Row> rows = new ArrayList<>();
      List<SiteReadings.Loading> shared = List.of(new SiteReadings.Loading(0, 1));
      for (int s = 0; s < SITES; s++) {
        String id = String.format(java.util.Locale.ROOT, "s%02d", s);
        places.add(new SiteReadings.Site(id, "north", sites.get(s), Optional.empty()));
        rows.add(new SiteReadings.Row(s, read[s], ownVariance, shared, true, "paste", "one"));
      }
      double[][] prior = {{sharedVariance}};
      return new SiteReadings(
          name, "", Scale.LOG, places, rows, List.of("laboratory: one"), prior, List.of());
    }
  }

  private static FieldBoundary boundary() {
    return new FieldBoundary(
        "north",
        new GeometryFactory().toGeometry(new Envelope(0, ZONES * SIDE_M, 0, SIDE_M)),
        Optional.empty(),
        Texture.CLAY_LOAM,
        OptionalDouble.empty());
  }

  /** Row by row, over as many elements as there are sites. */
  private static double[] times(double[][] a, double[] b) {
    double[] out = new double[SITES];
    for (int i = 0; i < SITES; i++) {
      out[i] = dot(a[i], b);
    }
    return out;
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < SITES; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}
