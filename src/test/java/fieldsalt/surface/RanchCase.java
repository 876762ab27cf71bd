package fieldsalt.surface;

import fieldsalt.basis.Scale;
import fieldsalt.basis.SiteReadings;
import fieldsalt.gaussian.Semidefinite;
import fieldsalt.geo.PlaceM;
import fieldsalt.read.FieldBoundary;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * A simulated ranch with a known truth: fields of 1,000 x 500 m, each with its own mean and an
 * exponential field on top; cheap rows share one offset, some sites have a paste row too.
 *
 * @param truth z at {@link #places}, micro-scale included, one array a field
 */
record RanchCase(
    SiteReadings readings,
    List<FieldBoundary> fields,
    List<List<PlaceM>> places,
    List<double[]> truth,
    List<double[]> smooth) {

  /**
   * What to simulate.
   *
   * @param sites a field
   * @param places a field at which the truth is kept, on a lattice
   * @param model of z
   * @param sharedSd of the cheap rows' offset
   * @param pastePairs sites a field with a paste row beside the cheap one
   */
  record Plan(
      int fields, int sites, int places, CovarianceModel model, double sharedSd, int pastePairs) {}

  static final double OWN_CHEAP_SD = 0.15;
  static final double OWN_PASTE_SD = 0.08;
  private static final double WIDE = 1000;
  private static final double HIGH = 500;

  static RanchCase simulated(Plan plan, long seed) {
    Random random = new Random(seed);
    double offset = plan.sharedSd() * random.nextGaussian();
    List<SiteReadings.Site> sites = new ArrayList<>();
    List<SiteReadings.Row> rows = new ArrayList<>();
    List<FieldBoundary> fields = new ArrayList<>();
    List<List<PlaceM>> places = new ArrayList<>();
    List<double[]> truth = new ArrayList<>();
    List<double[]> smooth = new ArrayList<>();
    for (int f = 0; f < plan.fields(); f++) {
      double west = 1500.0 * f;
      String name = "field " + f;
      fields.add(SurfaceCases.rectangle(name, west, 0, west + WIDE, HIGH));
      List<PlaceM> at = new ArrayList<>(lattice(west, plan.places()));
      int targets = at.size();
      for (int s = 0; s < plan.sites(); s++) {
        at.add(new PlaceM(west + WIDE * random.nextDouble(), HIGH * random.nextDouble()));
      }
      double[] z = field(at, plan.model(), 1 + 0.3 * random.nextGaussian(), random);
      double[] whole = new double[at.size()];
      for (int i = 0; i < z.length; i++) {
        whole[i] = z[i] + Math.sqrt(plan.model().microScale()) * random.nextGaussian();
      }
      for (int s = 0; s < plan.sites(); s++) {
        double value = whole[targets + s];
        int site = sites.size();
        PlaceM place = at.get(targets + s);
        sites.add(SurfaceCases.site(String.format("f%d-%03d", f, s), name, place.xM(), place.yM()));
        double cheap = value + offset + OWN_CHEAP_SD * random.nextGaussian();
        rows.add(SurfaceCases.cheap(site, cheap, OWN_CHEAP_SD * OWN_CHEAP_SD, 0));
        if (s < plan.pastePairs()) {
          double paste = value + OWN_PASTE_SD * random.nextGaussian();
          rows.add(SurfaceCases.paste(site, paste, OWN_PASTE_SD * OWN_PASTE_SD));
        }
      }
      places.add(at.subList(0, targets));
      truth.add(java.util.Arrays.copyOf(whole, targets));
      smooth.add(java.util.Arrays.copyOf(z, targets));
    }
    double variance = plan.sharedSd() * plan.sharedSd();
    return new RanchCase(
        SurfaceCases.readings(Scale.LOG, sites, rows, variance), fields, places, truth, smooth);
  }

  private static List<PlaceM> lattice(double west, int count) {
    int rows = (int) Math.max(1, Math.round(Math.sqrt(count / 2.0)));
    int columns = 2 * rows;
    List<PlaceM> at = new ArrayList<>();
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        at.add(new PlaceM(west + WIDE * (column + 0.5) / columns, HIGH * (row + 0.5) / rows));
      }
    }
    return at;
  }

  private static double[] field(
      List<PlaceM> at, CovarianceModel model, double mean, Random random) {
    int n = at.size();
    double[][] c = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        c[i][j] = model.covariance(at.get(i).distanceM(at.get(j))) + (i == j ? 1e-9 : 0);
      }
    }
    double[][] root = Semidefinite.root(c);
    double[] w = random.doubles(n).map(u -> fieldsalt.gaussian.Normal.quantile(u)).toArray();
    double[] z = new double[n];
    for (int i = 0; i < n; i++) {
      z[i] = mean + Linear.dot(root[i], w);
    }
    return z;
  }

  List<Target> targets(int field) {
    return places.get(field).stream().map(p -> new Target(fields.get(field).name(), p)).toList();
  }
}
