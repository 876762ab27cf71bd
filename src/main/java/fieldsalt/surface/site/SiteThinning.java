package fieldsalt.surface.site;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.geo.PlaceM;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Fewer sites of a large field for what must be solved whole (the covariance model, the shared
 * offsets): sites read by several methods first, because they tell the offsets, then a spread of
 * the others: every so-many-th along a curve that fills the plane (Morton 1966), which keeps both
 * the cover and the short distances that chance gave.
 */
public final class SiteThinning {
  private final SiteReadings readings;
  private final Map<Integer, Long> methods;

  private SiteThinning(SiteReadings readings) {
    this.readings = readings;
    methods =
        readings.rows().stream()
            .collect(
                Collectors.groupingBy(
                    SiteReadings.Row::site,
                    TreeMap::new,
                    Collectors.collectingAndThen(
                        Collectors.mapping(SiteReadings.Row::method, Collectors.toSet()),
                        set -> (long) set.size())));
  }

  /**
   * All rows of at most {@code most} sites of each field; the readings themselves where no field
   * has more.
   */
  public static SiteReadings of(SiteReadings readings, int most) {
    return new SiteThinning(readings).thinned(most);
  }

  private SiteReadings thinned(int most) {
    TreeMap<String, List<Integer>> byField = new TreeMap<>();
    methods
        .keySet()
        .forEach(s -> byField.computeIfAbsent(site(s).field(), f -> new ArrayList<>()).add(s));
    if (byField.values().stream().allMatch(sites -> sites.size() <= most)) {
      return readings;
    }
    Set<Integer> kept = new HashSet<>();
    byField
        .values()
        .forEach(sites -> kept.addAll(sites.size() <= most ? sites : spread(sites, most)));
    return readings.withRows(
        readings.rows().stream().filter(r -> kept.contains(r.site())).toList());
  }

  private SiteReadings.Site site(int s) {
    return readings.sites().get(s);
  }

  private List<Integer> spread(List<Integer> sites, int wanted) {
    List<Integer> along = sites.stream().sorted(alongCurve(sites)).toList();
    List<Integer> kept = new ArrayList<>();
    take(along.stream().filter(s -> methods.get(s) > 1).toList(), wanted, kept);
    take(along.stream().filter(s -> methods.get(s) == 1).toList(), wanted - kept.size(), kept);
    return kept;
  }

  private static void take(List<Integer> from, int wanted, List<Integer> kept) {
    int count = Math.min(wanted, from.size());
    for (int i = 0; i < count; i++) {
      kept.add(from.get((int) ((i + 0.5) * from.size() / count)));
    }
  }

  private Comparator<Integer> alongCurve(List<Integer> sites) {
    double west = sites.stream().mapToDouble(s -> site(s).place().xM()).min().orElse(0);
    double south = sites.stream().mapToDouble(s -> site(s).place().yM()).min().orElse(0);
    return Comparator.<Integer>comparingLong(s -> morton(site(s).place(), west, south))
        .thenComparing(s -> site(s).id())
        .thenComparing(s -> s);
  }

  /** Bits of the whole metres east and north, interleaved. */
  private static long morton(PlaceM place, double west, double south) {
    long x = (long) (place.xM() - west);
    long y = (long) (place.yM() - south);
    long key = 0;
    for (int bit = 20; bit >= 0; bit--) {
      key = key << 2 | (x >> bit & 1) << 1 | (y >> bit & 1);
    }
    return key;
  }
}
