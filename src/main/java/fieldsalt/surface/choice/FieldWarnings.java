package fieldsalt.surface.choice;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.geo.PlaceM;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.site.FieldLattice;
import fieldsalt.surface.site.FieldRows;
import fieldsalt.surface.site.NeighbourSearch;
import fieldsalt.surface.site.Observations;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * What a map through the sites of a field cannot show by itself: most sites in one patch, and two
 * kinds of ground with a sharp edge between them. The limits are judgement, no source.
 */
public final class FieldWarnings {
  private static final int FEWEST = 10;
  private static final int PLACES = 400;

  /** Half of the sites stand for less of the ground than this; of a random spread for 0.3. */
  private static final double PATCH = 0.12;

  /** Distance of the two means in root mean squares of the spread within; a cut normal has 2.7. */
  private static final double APART = 4.5;

  private static final double EMPTY = 0.35;
  private static final double FEWEST_OF_A_KIND = 0.15;
  private static final double NEIGHBOURS_ALIKE = 0.85;

  private final Observations data;
  private final Scale scale;
  private final String unit;

  /** Of the data without drift. */
  public FieldWarnings(Observations data, SiteReadings readings) {
    this.data = data;
    this.scale = readings.scale();
    this.unit = readings.unit();
  }

  /** The warnings of one field. */
  public List<Finding> of(FieldBoundary field) {
    int part = data.indexOf(field.name());
    if (part < 0 || data.parts().get(part).sites().size() < FEWEST) {
      return List.of();
    }
    FieldRows rows = data.parts().get(part);
    NeighbourSearch search = new NeighbourSearch(rows.x(), rows.y());
    return patch(field, rows, search).or(() -> edge(field, rows, search)).stream().toList();
  }

  private Optional<Finding> patch(FieldBoundary field, FieldRows rows, NeighbourSearch search) {
    int n = rows.sites().size();
    double[] ground = new double[n];
    List<PlaceM> places = FieldLattice.of(field, PLACES);
    NeighbourSearch.Found found = new NeighbourSearch.Found(1);
    for (PlaceM p : places) {
      search.nearest(p.xM() - data.origin().xM(), p.yM() - data.origin().yM(), found);
      ground[found.index(0)] += 1.0 / places.size();
    }
    double[] values = rows.siteValues();
    double weighted = IntStream.range(0, n).mapToDouble(s -> ground[s] * values[s]).sum();
    double spread = 1 / Arrays.stream(ground).map(g -> g * g).sum();
    double[] sorted = ground.clone();
    Arrays.sort(sorted);
    double half = Arrays.stream(sorted, 0, n / 2).sum();
    if (half >= PATCH) {
      return Optional.empty();
    }
    double mean = Arrays.stream(values).average().orElseThrow();
    return Optional.of(
        new Finding(
            Code.SITES_IN_PATCH,
            Place.field(field.name()),
            String.format(
                Locale.ROOT,
                "half of its %d sites stand for %.0f %% of its ground; their mean is %.3g %s, with"
                    + " each weighted by its ground %.3g",
                n,
                100 * half,
                back(mean),
                unit,
                back(weighted)),
            String.format(
                Locale.ROOT,
                "kriging allows for it, the mean of the sites does not; they tell the field's mean"
                    + " about as well as %.0f sites evenly spread: put the next ones where none are",
                Math.max(1, spread))));
  }

  private double back(double z) {
    return scale == Scale.LOG ? Math.exp(z) : z;
  }

  private Optional<Finding> edge(FieldBoundary field, FieldRows rows, NeighbourSearch search) {
    double[] values = rows.siteValues();
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int n = sorted.length;
    int fewest = (int) Math.ceil(Math.max(3, FEWEST_OF_A_KIND * n));
    int cut = -1;
    double most = APART;
    for (int low = fewest; low <= n - fewest; low++) {
      double apart = apart(sorted, low);
      if (apart > most && isEmptyBetween(sorted, low)) {
        most = apart;
        cut = low;
      }
    }
    if (cut < 0) {
      return Optional.empty();
    }
    double limit = (sorted[cut - 1] + sorted[cut]) / 2;
    NeighbourSearch.Found found = new NeighbourSearch.Found(2);
    int alike = 0;
    for (int s = 0; s < n; s++) {
      search.nearest(rows.x()[s], rows.y()[s], found);
      int other = found.index(0) == s ? found.index(1) : found.index(0);
      alike += values[s] > limit == values[other] > limit ? 1 : 0;
    }
    if (alike < NEIGHBOURS_ALIKE * n) {
      return Optional.empty();
    }
    return Optional.of(
        new Finding(
            Code.TWO_POPULATIONS,
            Place.field(field.name()),
            String.format(
                Locale.ROOT,
                "%d sites around %.3g %s and %d around %.3g, none between, and neighbours of one"
                    + " kind: two kinds of ground with a sharp edge (a seep, a fill, an old line)",
                cut,
                back(mean(sorted, 0, cut)),
                unit,
                n - cut,
                back(mean(sorted, cut, n))),
            "the map draws a ramp where the edge is; sample across it, or draw it as the boundary of"
                + " two fields"));
  }

  /** Whether the gap at a cut is a good part of the distance of the two kinds. */
  private static boolean isEmptyBetween(double[] sorted, int cut) {
    double gap = sorted[cut] - sorted[cut - 1];
    return gap > EMPTY * (mean(sorted, cut, sorted.length) - mean(sorted, 0, cut));
  }

  /**
   * Difference of the means of both parts over the spread within them (Ashman, Bird and Zepf 1994,
   * Astronomical Journal 108:2348, from memory).
   */
  private static double apart(double[] sorted, int cut) {
    double low = mean(sorted, 0, cut);
    double high = mean(sorted, cut, sorted.length);
    double within =
        (variance(sorted, 0, cut, low) + variance(sorted, cut, sorted.length, high)) / 2;
    return within > 0 ? (high - low) / Math.sqrt(within) : high > low ? Double.MAX_VALUE : 0;
  }

  private static double mean(double[] sorted, int from, int to) {
    return Arrays.stream(sorted, from, to).average().orElseThrow();
  }

  private static double variance(double[] sorted, int from, int to, double mean) {
    return Arrays.stream(sorted, from, to).map(v -> (v - mean) * (v - mean)).sum() / (to - from);
  }
}
