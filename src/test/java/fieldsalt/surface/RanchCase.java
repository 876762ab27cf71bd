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
 * A simulated ranch with a known truth: fields side by side, each with its own mean and an
 * exponential field on top; two laboratories' cheap rows share one offset each, some sites have a
 * paste row instead or too.
 *
 * @param places where the truth is kept, on a lattice, one list a field
 * @param truth z at the places, micro-scale included, one array a field
 * @param smooth z without micro-scale
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
   * @param places a field at which the truth is kept
   * @param wideM width of a field; it is half as high
   * @param sharedSd of each laboratory's offset
   * @param pasteOnly sites a field with a paste row only
   * @param pairs sites a field with a paste row beside the cheap one
   */
  record Plan(
      int fields,
      int sites,
      int places,
      double wideM,
      CovarianceModel model,
      double sharedSd,
      int pasteOnly,
      int pairs) {}

  /** Errors of one 1:5 conversion and of a paste reading: facts of the reference setting. */
  static final double OWN_CHEAP_SD = 0.25;

  static final double OWN_PASTE_SD = 0.08;

  static RanchCase simulated(Plan plan, long seed) {
    Builder builder = new Builder(plan, new Random(seed));
    for (int f = 0; f < plan.fields(); f++) {
      builder.addField(f);
    }
    double variance = plan.sharedSd() * plan.sharedSd();
    return new RanchCase(
        SurfaceCases.readings(Scale.LOG, builder.sites, builder.rows, variance, variance),
        builder.fields,
        builder.places,
        builder.truth,
        builder.smooth);
  }

  private static final class Builder {
    private final Plan plan;
    private final Random random;
    private final double[] offsets;
    private final List<SiteReadings.Site> sites = new ArrayList<>();
    private final List<SiteReadings.Row> rows = new ArrayList<>();
    private final List<FieldBoundary> fields = new ArrayList<>();
    private final List<List<PlaceM>> places = new ArrayList<>();
    private final List<double[]> truth = new ArrayList<>();
    private final List<double[]> smooth = new ArrayList<>();

    Builder(Plan plan, Random random) {
      this.plan = plan;
      this.random = random;
      offsets =
          new double[] {
            plan.sharedSd() * random.nextGaussian(), plan.sharedSd() * random.nextGaussian()
          };
    }

    void addField(int f) {
      double west = 1.5 * plan.wideM() * f;
      double high = plan.wideM() / 2;
      String name = "field " + f;
      fields.add(SurfaceCases.rectangle(name, west, 0, west + plan.wideM(), high));
      List<PlaceM> at = new ArrayList<>(lattice(west, plan.wideM(), plan.places()));
      int targets = at.size();
      for (int s = 0; s < plan.sites(); s++) {
        at.add(new PlaceM(west + plan.wideM() * random.nextDouble(), high * random.nextDouble()));
      }
      double[] z = field(at, plan.model(), 1 + 0.3 * random.nextGaussian(), random);
      double[] whole = new double[z.length];
      for (int i = 0; i < z.length; i++) {
        whole[i] = z[i] + Math.sqrt(plan.model().microScale()) * random.nextGaussian();
      }
      for (int s = 0; s < plan.sites(); s++) {
        PlaceM place = at.get(targets + s);
        String id = String.format("f%d-%03d", f, s);
        sites.add(SurfaceCases.site(id, name, place.xM(), place.yM()));
        addRows(s, whole[targets + s]);
      }
      places.add(at.subList(0, targets));
      truth.add(java.util.Arrays.copyOf(whole, targets));
      smooth.add(java.util.Arrays.copyOf(z, targets));
    }

    private void addRows(int s, double value) {
      int site = sites.size() - 1;
      if (s >= plan.pasteOnly()) {
        int laboratory = s % 2;
        double cheap = value + offsets[laboratory] + OWN_CHEAP_SD * random.nextGaussian();
        rows.add(SurfaceCases.cheap(site, cheap, OWN_CHEAP_SD * OWN_CHEAP_SD, laboratory));
      }
      if (s < plan.pasteOnly() + plan.pairs()) {
        double paste = value + OWN_PASTE_SD * random.nextGaussian();
        rows.add(SurfaceCases.paste(site, paste, OWN_PASTE_SD * OWN_PASTE_SD));
      }
    }
  }

  private static List<PlaceM> lattice(double west, double wide, int count) {
    int rows = (int) Math.max(1, Math.round(Math.sqrt(count / 2.0)));
    int columns = 2 * rows;
    List<PlaceM> at = new ArrayList<>();
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        at.add(new PlaceM(west + wide * (column + 0.5) / columns, wide / 2 * (row + 0.5) / rows));
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
