package fieldsalt.surface.site;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.gaussian.Cholesky;
import fieldsalt.gaussian.MixedModel;
import fieldsalt.gaussian.NotPositiveDefinite;
import fieldsalt.gaussian.Semidefinite;
import fieldsalt.geo.PlaceM;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * SiteReadings arranged for the solver, in an order that does not depend on that of the input.
 *
 * @param parts one a field that has rows, sorted by name
 * @param offsets number of standardised shared offsets
 * @param offsetRoot T with offset covariance = T T'
 * @param drifts what steers the surface, with the centre and spread that standardise it
 * @param origin place that x and y count from
 * @param prior of the standardised offsets: what other fields, solved apart, say of them
 */
public record Observations(
    List<FieldRows> parts,
    int offsets,
    double[][] offsetRoot,
    List<ScaledDrift> drifts,
    PlaceM origin,
    MixedModel.Prior prior) {

  /** Data of which no other field says anything. */
  public Observations(
      List<FieldRows> parts,
      int offsets,
      double[][] offsetRoot,
      List<ScaledDrift> drifts,
      PlaceM origin) {
    this(parts, offsets, offsetRoot, drifts, origin, MixedModel.Prior.standard(offsets));
  }

  private static final Comparator<SiteReadings.Site> SITE_ORDER =
      Comparator.comparing(SiteReadings.Site::id)
          .thenComparing(s -> s.date().map(Object::toString).orElse(""))
          .thenComparing(s -> s.place().xM())
          .thenComparing(s -> s.place().yM());

  private static final Comparator<SiteReadings.Row> ROW_ORDER =
      Comparator.comparing(SiteReadings.Row::method)
          .thenComparing(SiteReadings.Row::laboratory)
          .thenComparing(SiteReadings.Row::value)
          .thenComparing(SiteReadings.Row::ownVariance);

  /**
   * A drift, standardised so that it has mean 0 and variance 1 over the sites.
   *
   * @param least standardised value of the site that has the smallest
   * @param most likewise the largest
   */
  public record ScaledDrift(Drift drift, double centre, double spread, double least, double most) {
    public double at(PlaceM place) {
      return (drift.at(place) - centre) / spread;
    }
  }

  /** All sites that have rows, and for each the drifts' values. */
  public static Observations of(SiteReadings readings, List<Drift> drifts) {
    double[][] root = Semidefinite.root(readings.offsetCovariance());
    List<SiteReadings.Site> used =
        readings.rows().stream()
            .map(r -> readings.sites().get(r.site()))
            .distinct()
            .sorted(SITE_ORDER)
            .toList();
    PlaceM origin = origin(used);
    List<ScaledDrift> scaled = drifts.stream().map(d -> scale(d, used)).toList();
    TreeMap<String, List<Integer>> sitesByField = new TreeMap<>();
    for (int s : order(readings)) {
      sitesByField.computeIfAbsent(readings.sites().get(s).field(), f -> new ArrayList<>()).add(s);
    }
    double floor = 1e-10 * spread(readings);
    Map<Integer, List<SiteReadings.Row>> rowsBySite =
        readings.rows().stream()
            .sorted(ROW_ORDER)
            .collect(Collectors.groupingBy(SiteReadings.Row::site));
    List<FieldRows> parts =
        sitesByField.entrySet().stream()
            .map(
                e ->
                    part(
                        e.getKey(),
                        e.getValue(),
                        readings,
                        rowsBySite,
                        root,
                        scaled,
                        origin,
                        floor))
            .toList();
    return new Observations(parts, root.length, root, scaled, origin);
  }

  private static PlaceM origin(List<SiteReadings.Site> sites) {
    double x = sites.stream().mapToDouble(s -> s.place().xM()).min().orElse(0);
    double y = sites.stream().mapToDouble(s -> s.place().yM()).min().orElse(0);
    return new PlaceM(x, y);
  }

  private static List<Integer> order(SiteReadings readings) {
    return readings.rows().stream()
        .map(SiteReadings.Row::site)
        .distinct()
        .sorted(Comparator.comparing(s -> readings.sites().get(s), SITE_ORDER))
        .toList();
  }

  private static double spread(SiteReadings readings) {
    double mean = readings.rows().stream().mapToDouble(SiteReadings.Row::value).average().orElse(0);
    double sum =
        readings.rows().stream().mapToDouble(r -> (r.value() - mean) * (r.value() - mean)).sum();
    return sum > 0 ? sum / readings.rows().size() : 1;
  }

  private static ScaledDrift scale(Drift drift, List<SiteReadings.Site> sites) {
    double[] at =
        sites.stream().mapToDouble(s -> drift.at(s.place())).filter(Double::isFinite).toArray();
    double mean = Arrays.stream(at).average().orElse(0);
    double square = Arrays.stream(at).map(v -> (v - mean) * (v - mean)).sum();
    double root = Math.sqrt(square / Math.max(1, at.length));
    double spread = root > 0 ? root : 1;
    double least = Arrays.stream(at).min().orElse(mean);
    double most = Arrays.stream(at).max().orElse(mean);
    return new ScaledDrift(drift, mean, spread, (least - mean) / spread, (most - mean) / spread);
  }

  private static FieldRows part(
      String field,
      List<Integer> siteIds,
      SiteReadings readings,
      Map<Integer, List<SiteReadings.Row>> rowsBySite,
      double[][] root,
      List<ScaledDrift> drifts,
      PlaceM origin,
      double floor) {
    List<SiteReadings.Site> sites = siteIds.stream().map(s -> readings.sites().get(s)).toList();
    List<SiteReadings.Row> rows = new ArrayList<>();
    List<Integer> siteOf = new ArrayList<>();
    for (int s = 0; s < siteIds.size(); s++) {
      List<SiteReadings.Row> here = rowsBySite.get(siteIds.get(s));
      rows.addAll(here);
      siteOf.addAll(java.util.Collections.nCopies(here.size(), s));
    }
    int[] site = siteOf.stream().mapToInt(i -> i).toArray();
    return new FieldRows(
        field,
        sites,
        sites.stream().mapToDouble(s -> s.place().xM() - origin.xM()).toArray(),
        sites.stream().mapToDouble(s -> s.place().yM() - origin.yM()).toArray(),
        List.copyOf(rows),
        site,
        ownVariances(rows, site, floor),
        loadings(rows, root),
        drifts.stream()
            .map(d -> sites.stream().mapToDouble(s -> d.at(s.place())).toArray())
            .toArray(double[][]::new),
        new double[sites.size()]);
  }

  /** The same data with other rows of its fields. */
  Observations withParts(List<FieldRows> other) {
    return new Observations(other, offsets, offsetRoot, drifts, origin, prior);
  }

  /** Two rows of one site without any error would contradict one another: a floor keeps both. */
  private static double[] ownVariances(List<SiteReadings.Row> rows, int[] site, double floor) {
    double[] own = rows.stream().mapToDouble(SiteReadings.Row::ownVariance).toArray();
    for (int i = 0; i + 1 < own.length; i++) {
      if (site[i] == site[i + 1]) {
        own[i] = Math.max(own[i], floor);
        own[i + 1] = Math.max(own[i + 1], floor);
      }
    }
    return own;
  }

  private static double[][] loadings(List<SiteReadings.Row> rows, double[][] root) {
    double[][] loadings = new double[root.length][rows.size()];
    for (int r = 0; r < rows.size(); r++) {
      for (SiteReadings.Loading l : rows.get(r).loadings()) {
        for (int k = 0; k <= l.offset(); k++) {
          loadings[k][r] += l.weight() * root[l.offset()][k];
        }
      }
    }
    return loadings;
  }

  /** The same data with the variances of own errors multiplied. */
  public Observations withOwnErrors(double factor) {
    return new Observations(
        parts.stream().map(p -> p.withOwnErrors(factor)).toList(),
        offsets,
        offsetRoot,
        drifts,
        origin,
        prior);
  }

  /** The same data with what other fields say of the offsets. */
  public Observations withPrior(MixedModel.Prior other) {
    return new Observations(parts, offsets, offsetRoot, drifts, origin, other);
  }

  /**
   * The same data with another error at some sites, independent between them.
   *
   * @param sites by part and site
   * @param variance of that error, which all rows of a site have in common
   */
  public Observations withSiteErrors(boolean[][] sites, double variance) {
    List<FieldRows> other = new ArrayList<>();
    for (int part = 0; part < parts.size(); part++) {
      other.add(parts.get(part).withSiteErrors(sites[part], variance));
    }
    return new Observations(other, offsets, offsetRoot, drifts, origin, prior);
  }

  /** Loadings on the offsets as loadings on unit-variance errors: T'l. */
  public double[] standardised(double[] loadings) {
    double[] unit = new double[offsets];
    for (int j = 0; j < loadings.length; j++) {
      for (int k = 0; k <= j; k++) {
        unit[k] += loadings[j] * offsetRoot[j][k];
      }
    }
    return unit;
  }

  public int fixed() {
    return parts.size() + drifts.size();
  }

  public int siteCount() {
    return parts.stream().mapToInt(p -> p.sites().size()).sum();
  }

  /** Sites of the field that has most. */
  public int largestField() {
    return parts.stream().mapToInt(p -> p.sites().size()).max().orElse(0);
  }

  /** Position of a field among the parts, which are sorted by name; -1 if it has no rows. */
  public int indexOf(String field) {
    int low = 0;
    int high = parts.size() - 1;
    while (low <= high) {
      int middle = (low + high) / 2;
      int order = parts.get(middle).field().compareTo(field);
      if (order == 0) {
        return middle;
      }
      low = order < 0 ? middle + 1 : low;
      high = order < 0 ? high : middle - 1;
    }
    return -1;
  }

  /** Number of effects that fields share: drifts, then offsets. */
  public int shared() {
    return drifts.size() + offsets;
  }

  /** Values of the shared effects in a part's rows: effects x rows. */
  public double[][] sharedDesign(int part) {
    FieldRows rows = parts.get(part);
    int n = rows.rows().size();
    double[][] design = new double[shared()][n];
    for (int d = 0; d < drifts.size(); d++) {
      for (int i = 0; i < n; i++) {
        design[d][i] = rows.drift()[d][rows.siteOf()[i]];
      }
    }
    for (int k = 0; k < offsets; k++) {
      design[drifts.size() + k] = rows.loadings()[k].clone();
    }
    return design;
  }

  /**
   * ln |X'X| over all rows.
   *
   * @throws NotPositiveDefinite if a drift is a combination of the field means
   */
  public double logDesign() {
    int p = drifts.size();
    double[][] xx = new double[p][p];
    double[] whole = new double[p];
    double constants = 0;
    for (int part = 0; part < parts.size(); part++) {
      double[][] x = sharedDesign(part);
      int n = parts.get(part).rows().size();
      constants += Math.log(n);
      for (int i = 0; i < p; i++) {
        double mean = Arrays.stream(x[i]).sum() / n;
        for (int r = 0; r < n; r++) {
          whole[i] += x[i][r] * x[i][r];
          x[i][r] -= mean;
        }
      }
      for (int i = 0; i < p; i++) {
        for (int j = 0; j < p; j++) {
          for (int r = 0; r < n; r++) {
            xx[i][j] += x[i][r] * x[j][r];
          }
        }
      }
    }
    for (int i = 0; i < p; i++) {
      xx[i][i] = xx[i][i] > 1e-14 * whole[i] ? xx[i][i] : 0;
    }
    return constants + Cholesky.factor(xx).logDeterminant();
  }

  /**
   * Pooled variance of the sites' values around their fields' means; 0 if no field has two sites. A
   * site counts once, its rows weighted by their own precision.
   */
  public double pooledVariance() {
    double sum = 0;
    int freedom = 0;
    for (FieldRows part : parts) {
      double[] v = part.siteValues();
      double mean = Arrays.stream(v).average().orElse(0);
      sum += Arrays.stream(v).map(y -> (y - mean) * (y - mean)).sum();
      freedom += v.length - 1;
    }
    return freedom > 0 ? sum / freedom : 0;
  }
}
