package fieldsalt.surface;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.gaussian.Semidefinite;
import fieldsalt.geo.PlaceM;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.fit.Linear;
import fieldsalt.surface.site.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * A simulated ranch with a known truth: fields side by side, each with its own mean and a Gaussian
 * field on top; the cheap rows come from two laboratories and share errors, some sites have a paste
 * row instead or too.
 *
 * @param places where the truth is kept, on a lattice, one list a field
 * @param truth z at the places, micro-scale included, one array a field
 * @param smooth z without micro-scale
 */
public record RanchCase(
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
   * @param shared errors that cheap rows have in common
   * @param pasteOnly sites a field with a paste row only
   * @param pairs sites a field with a paste row beside the cheap one
   */
  public record Plan(
      int fields,
      int sites,
      int places,
      double wideM,
      CovarianceModel model,
      Shared shared,
      int pasteOnly,
      int pairs) {
    /** Each laboratory with an offset of its own, nothing else shared. */
    public Plan(
        int fields,
        int sites,
        int places,
        double wideM,
        CovarianceModel model,
        double laboratorySd,
        int pasteOnly,
        int pairs) {
      this(fields, sites, places, wideM, model, new Shared(laboratorySd, 0, 0), pasteOnly, pairs);
    }
  }

  /**
   * Standard deviations of errors that cheap rows share.
   *
   * @param laboratorySd of the offset of each laboratory
   * @param methodSd of the offset of the method, which both laboratories use
   * @param slopeSd of the slope of the method, about the mean of all ranches; the readings do not
   *     state it
   */
  record Shared(double laboratorySd, double methodSd, double slopeSd) {
    /** A total split evenly between laboratory and method, as conversions are. */
    static Shared evenly(double totalSd, double slopeSd) {
      double half = totalSd / Math.sqrt(2);
      return new Shared(half, half, slopeSd);
    }
  }

  private static final double MEAN = 1;

  /** Errors of one 1:5 conversion and of a paste reading: facts of the reference setting. */
  static final double OWN_CHEAP_SD = 0.25;

  public static final double OWN_PASTE_SD = 0.08;

  public static RanchCase simulated(Plan plan, long seed) {
    Builder builder = new Builder(plan, new Random(seed));
    for (int f = 0; f < plan.fields(); f++) {
      builder.addField(f);
    }
    double laboratory = plan.shared().laboratorySd() * plan.shared().laboratorySd();
    double method = plan.shared().methodSd() * plan.shared().methodSd();
    return new RanchCase(
        method > 0
            ? SurfaceCases.readings(
                Scale.LOG, builder.sites, builder.rows, laboratory, laboratory, method)
            : SurfaceCases.readings(Scale.LOG, builder.sites, builder.rows, laboratory, laboratory),
        builder.fields,
        builder.places,
        builder.truth,
        builder.smooth);
  }

  private static final class Builder {
    private final Plan plan;
    private final Random random;
    private final double[] offsets;
    private final double slope;
    private final List<SiteReadings.Site> sites = new ArrayList<>();
    private final List<SiteReadings.Row> rows = new ArrayList<>();
    private final List<FieldBoundary> fields = new ArrayList<>();
    private final List<List<PlaceM>> places = new ArrayList<>();
    private final List<double[]> truth = new ArrayList<>();
    private final List<double[]> smooth = new ArrayList<>();

    Builder(Plan plan, Random random) {
      this.plan = plan;
      this.random = random;
      Shared shared = plan.shared();
      double common = shared.methodSd() > 0 ? shared.methodSd() * random.nextGaussian() : 0;
      offsets =
          new double[] {
            common + shared.laboratorySd() * random.nextGaussian(),
            common + shared.laboratorySd() * random.nextGaussian()
          };
      slope = shared.slopeSd() > 0 ? shared.slopeSd() * random.nextGaussian() : 0;
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
      double[] z = field(at, plan.model(), MEAN + 0.3 * random.nextGaussian(), random);
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

    private SiteReadings.Row cheap(int site, double value, int laboratory) {
      SiteReadings.Row row =
          SurfaceCases.cheap(site, value, OWN_CHEAP_SD * OWN_CHEAP_SD, laboratory);
      if (plan.shared().methodSd() == 0) {
        return row;
      }
      List<SiteReadings.Loading> both = new ArrayList<>(row.loadings());
      both.add(new SiteReadings.Loading(2, 1));
      return new SiteReadings.Row(
          site, value, row.ownVariance(), both, false, row.method(), "B" + laboratory);
    }

    private void addRows(int s, double value) {
      int site = sites.size() - 1;
      if (s >= plan.pasteOnly()) {
        int laboratory = s % 2;
        double sharedError = offsets[laboratory] + slope * (value - MEAN);
        double cheap = value + sharedError + OWN_CHEAP_SD * random.nextGaussian();
        rows.add(cheap(site, cheap, laboratory));
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

  public List<Target> targets(int field) {
    return places.get(field).stream().map(p -> new Target(fields.get(field).name(), p)).toList();
  }
}
