package fieldsalt.surface.kernel;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.surface.fit.Linear;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.site.FieldRows;
import fieldsalt.surface.site.Observations;
import fieldsalt.surface.site.Points;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Kriging where some fields have more sites than can be solved whole: covariance model and shared
 * offsets come from fewer sites, each place of such a field is predicted from its neighbourhood
 * among all of the field's sites, and the offsets' remaining error, (l'H)Var(u)(l'H)', is part of
 * every variance and covariance: shared error never goes through a search. Other fields are solved
 * as ever.
 *
 * <p>Covariances between places of one field are those given its {@link #FOR_COVARIANCES} sites
 * nearest to the first places' middle; between fields only the offsets' error is shared.
 */
public final class LocalKriging implements Predictor {
  private static final int NEIGHBOURS = 96;
  private static final int FOR_COVARIANCES = 500;

  private final Solved solved;
  private final Kriging whole;
  private final Map<Integer, KernelData> data = new HashMap<>();
  private final Map<Integer, PredictionKernel> kernels = new HashMap<>();
  private Near latest;

  /**
   * @param solved from fewer sites
   * @param all the rows of all sites of the fields that have too many, each a field of {@code
   *     solved}
   */
  public LocalKriging(Solved solved, Observations all) {
    this.solved = solved;
    this.whole = new Kriging(solved);
    LocalSites sites = new LocalSites(solved);
    double eastM = all.origin().xM() - solved.data().origin().xM();
    double northM = all.origin().yM() - solved.data().origin().yM();
    for (FieldRows rows : all.parts()) {
      int part = solved.data().indexOf(rows.field());
      KernelData own = sites.of(rows, eastM, northM);
      data.put(part, solved.model().microScale() > 0 ? own : own.withPlacesMerged());
      kernels.put(part, new SharedKernel(new KernelSites(solved.model(), own, true), NEIGHBOURS));
    }
  }

  @Override
  public Solved solved() {
    return solved;
  }

  /** What the shared errors still are is taken as unknown to the map: rather too wide. */
  @Override
  public Predicted readings(Points points, double[] loadings) {
    if (!kernels.containsKey(points.part())) {
      return whole.readings(points, loadings);
    }
    int n = points.size();
    int trends = 1 + points.drift().length;
    KernelGroup group = new KernelGroup(n, trends, solved.data().shared());
    for (int i = 0; i < n; i++) {
      group.add(i, points.x()[i], points.y()[i]);
      for (int d = 1; d < trends; d++) {
        group.trend[d][i] = points.drift()[d - 1][i];
      }
    }
    kernels.get(points.part()).solver().predict(group);
    return new Local(points, group, Linear.dot(loadings, loadings));
  }

  /** Results in the order of the points. */
  private final class Local implements Predicted {
    private final Points points;
    private final double[] mean;
    private final double[] variance;
    private final double[][] shared;

    Local(Points points, KernelGroup group, double more) {
      this.points = points;
      mean = ordered(group, group.estimate);
      variance = Arrays.stream(ordered(group, group.variance)).map(v -> v + more).toArray();
      shared = new double[group.shared.length][];
      Arrays.setAll(
          shared, m -> Arrays.stream(ordered(group, group.shared[m])).map(v -> -v).toArray());
    }

    private double[] ordered(KernelGroup group, double[] values) {
      double[] ordered = new double[group.count()];
      for (int i = 0; i < ordered.length; i++) {
        ordered[group.id[i]] = values[i];
      }
      return ordered;
    }

    @Override
    public double[] mean() {
      return mean.clone();
    }

    @Override
    public double[] variance() {
      return variance.clone();
    }

    @Override
    public double[][] covariance(Predicted other) {
      if (!(other instanceof Local that) || points.part() != that.points.part()) {
        return sharedCovariance(other);
      }
      Near near = near(this);
      Predicted here = near.seen();
      return here.covariance(that == this ? here : near.kriging().predict(alone(that.points)));
    }

    @Override
    public double[][] shared() {
      return shared;
    }
  }

  private static Points alone(Points p) {
    return new Points(0, p.x(), p.y(), p.drift(), p.unknown(), p.beyond());
  }

  /** Some points as seen from the sites nearest to them, solved whole. */
  private record Near(Local of, Kriging kriging, Predicted seen) {}

  /** The last one is kept: an area is set against all areas before it. */
  private synchronized Near near(Local of) {
    if (latest == null || latest.of() != of) {
      Kriging kriging = kriging(of.points);
      latest = new Near(of, kriging, kriging.predict(alone(of.points)));
    }
    return latest;
  }

  private Kriging kriging(Points points) {
    KernelData own = data.get(points.part());
    double x = Arrays.stream(points.x()).average().orElseThrow();
    double y = Arrays.stream(points.y()).average().orElseThrow();
    int[] nearest =
        IntStream.range(0, own.size())
            .boxed()
            .sorted(
                Comparator.<Integer>comparingDouble(
                        i -> Math.hypot(own.xM()[i] - x, own.yM()[i] - y))
                    .thenComparing(i -> i))
            .limit(FOR_COVARIANCES)
            .mapToInt(i -> i)
            .sorted()
            .toArray();
    Observations fewer = solved.data();
    Observations some =
        new Observations(
            List.of(rows(own, nearest)),
            fewer.shared(),
            fewer.offsetRoot(),
            fewer.drifts(),
            fewer.origin());
    return new Kriging(Solved.of(some, solved.model()));
  }

  private static FieldRows rows(KernelData data, int[] chosen) {
    List<SiteReadings.Row> rows = new ArrayList<>();
    for (int i = 0; i < chosen.length; i++) {
      double variance = data.errorVariance()[chosen[i]];
      double value = data.value()[chosen[i]];
      rows.add(new SiteReadings.Row(i, value, variance, List.of(), true, "", ""));
    }
    int[] siteOf = IntStream.range(0, chosen.length).toArray();
    double[] own = pick(data.errorVariance(), chosen);
    double[][] drift = Arrays.copyOfRange(data.trend(), 1, data.trend().length);
    return new FieldRows(
        "",
        List.of(),
        pick(data.xM(), chosen),
        pick(data.yM(), chosen),
        rows,
        siteOf,
        own,
        pick(data.shared(), chosen),
        pick(drift, chosen),
        new double[chosen.length]);
  }

  private static double[][] pick(double[][] columns, int[] chosen) {
    return Arrays.stream(columns).map(c -> pick(c, chosen)).toArray(double[][]::new);
  }

  private static double[] pick(double[] column, int[] chosen) {
    return Arrays.stream(chosen).mapToDouble(i -> column[i]).toArray();
  }
}
