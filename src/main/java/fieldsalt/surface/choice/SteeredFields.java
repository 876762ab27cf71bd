package fieldsalt.surface.choice;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.geo.PlaceM;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.site.Drift;
import fieldsalt.surface.site.FieldLattice;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Which fields a drift can steer: those in which at most one usable site in ten has no value of it
 * (one may always lack it), at most a tenth of the ground has none, and the values at the sites
 * differ.
 */
final class SteeredFields {
  private static final int PLACES = 400;
  private static final double MOST_WITHOUT = 0.1;
  private static final int FEWEST_SITES = 3;
  private static final String KRIGED =
      "this field is mapped from its readings alone; fill the gaps, and it can be steered too";

  private final Map<String, List<SiteReadings.Site>> sites;
  private final List<FieldBoundary> fields;
  private final List<Finding> findings;

  /**
   * @param fields that are mapped
   * @param findings takes what keeps a drift from fields of which it has values
   */
  SteeredFields(SiteReadings readings, List<FieldBoundary> fields, List<Finding> findings) {
    this.sites =
        readings.rows().stream()
            .map(SiteReadings.Row::site)
            .distinct()
            .map(s -> readings.sites().get(s))
            .collect(Collectors.groupingBy(SiteReadings.Site::field));
    this.fields = fields;
    this.findings = findings;
  }

  /** Names of the fields that a drift can steer, sorted. */
  Set<String> of(Drift drift) {
    Set<String> steered = new TreeSet<>();
    boolean known = false;
    for (FieldBoundary field : fields) {
      double[] at =
          sites.getOrDefault(field.name(), List.of()).stream()
              .mapToDouble(s -> drift.at(s.place()))
              .toArray();
      double[] values = Arrays.stream(at).filter(Double::isFinite).toArray();
      known |= values.length > 0;
      String against = values.length == 0 ? "" : against(drift, field, at.length, values);
      if (!against.isEmpty()) {
        findings.add(
            new Finding(
                Code.DRIFT_NOT_USED,
                Place.field(field.name()),
                drift.name() + ": " + against,
                KRIGED));
      } else if (values.length > 0) {
        steered.add(field.name());
      }
    }
    if (!known) {
      findings.add(
          new Finding(
              Code.DRIFT_NOT_USED,
              new Place.Source(drift.name()),
              "it has no value at any site",
              "ignored: only what has values where samples were taken can steer the map"));
    }
    return steered;
  }

  /** Why a drift cannot steer a field; empty if it can. */
  private static String against(Drift drift, FieldBoundary field, int all, double[] values) {
    int missing = all - values.length;
    if (missing > Math.max(1, all * MOST_WITHOUT)) {
      return "it has no value at " + missing + " of " + all + " sites";
    }
    if (values.length < FEWEST_SITES) {
      return "it has a value at " + values.length + " of " + all + " sites, 3 are needed";
    }
    double low = Arrays.stream(values).min().orElseThrow();
    double high = Arrays.stream(values).max().orElseThrow();
    if (!(high - low > 1e-9 * (1 + Math.abs(high)))) {
      return "it has one and the same value at every site";
    }
    List<PlaceM> ground = FieldLattice.of(field, PLACES);
    long without = ground.stream().filter(p -> Double.isNaN(drift.at(p))).count();
    return without > MOST_WITHOUT * ground.size()
        ? "it has no value on about " + Math.round(100.0 * without / ground.size()) + " % of it"
        : "";
  }

  /** Fields that all of some drifts can steer. */
  static Set<String> common(List<Set<String>> each) {
    Set<String> common = new TreeSet<>(each.get(0));
    new ArrayList<>(each).forEach(common::retainAll);
    return common;
  }
}
