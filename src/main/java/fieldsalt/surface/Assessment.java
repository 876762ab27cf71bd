package fieldsalt.surface;

import fieldsalt.basis.site.ReadingErrors;
import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.surface.map.PointDistribution;
import fieldsalt.surface.site.Target;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.ToDoubleFunction;

/**
 * A surface against samples that it did not use; each site counts once, by its paste reading if it
 * has one. Errors are map less reading, in the unit of the map.
 *
 * @param n sites compared
 * @param meanError of the map's mean
 * @param rootMeanSquaredError of the map's mean
 * @param meanAbsoluteError of the map's median
 * @param coverage50 share of readings within the 50 % interval of a reading there
 * @param coverage90 share of readings within the 90 % interval of a reading there
 */
public record Assessment(
    int n,
    double meanError,
    double rootMeanSquaredError,
    double meanAbsoluteError,
    double coverage50,
    double coverage90) {

  /** One site: what was read, and what the map says there. */
  private record Compared(double read, double mean, double median, double chanceBelow) {}

  /**
   * Compares every site that lies in a mapped field; {@code n} is 0 where there is none.
   *
   * @param own readings that the surface was fitted to
   * @param others readings that it did not use
   */
  public static Assessment of(Surface surface, SiteReadings own, SiteReadings others) {
    Set<String> mapped = new HashSet<>(surface.mappedFields());
    ReadingErrors errors = ReadingErrors.of(others);
    List<Compared> compared = new ArrayList<>();
    for (int s = 0; s < others.sites().size(); s++) {
      SiteReadings.Site site = others.sites().get(s);
      List<SiteReadings.Row> rows = errors.ofSite(s);
      if (!rows.isEmpty() && mapped.contains(site.field())) {
        Target there = new Target(site.field(), site.place());
        compared.add(compare(surface, own, others, rows.get(0), there));
      }
    }
    return of(compared);
  }

  private static Assessment of(List<Compared> compared) {
    return new Assessment(
        compared.size(),
        average(compared, c -> c.mean - c.read),
        Math.sqrt(average(compared, c -> Math.pow(c.mean - c.read, 2))),
        average(compared, c -> Math.abs(c.median - c.read)),
        average(compared, c -> Math.abs(c.chanceBelow - 0.5) <= 0.25 ? 1 : 0),
        average(compared, c -> Math.abs(c.chanceBelow - 0.5) <= 0.45 ? 1 : 0));
  }

  private static double average(List<Compared> compared, ToDoubleFunction<Compared> figure) {
    return compared.stream().mapToDouble(figure).average().orElse(Double.NaN);
  }

  private static Compared compare(
      Surface surface, SiteReadings own, SiteReadings others, SiteReadings.Row row, Target target) {
    double[] loadings = new double[own.offsets().size()];
    double elsewhere = 0;
    for (SiteReadings.Loading loading : row.loadings()) {
      int known = own.offsets().indexOf(others.offsets().get(loading.offset()));
      if (known >= 0) {
        loadings[known] += loading.weight();
      } else {
        double variance = others.offsetCovariance()[loading.offset()][loading.offset()];
        elsewhere += loading.weight() * loading.weight() * variance;
      }
    }
    double read = own.scale() == Scale.LOG ? Math.exp(row.value()) : row.value();
    PointDistribution there = surface.at(target);
    PointDistribution seen = surface.reading(target, loadings, row.ownVariance() + elsewhere);
    return new Compared(read, there.mean(), there.median(), 1 - seen.chanceAbove(read));
  }
}
