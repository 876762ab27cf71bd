package fieldsalt.surface;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.area.FieldMeans;
import fieldsalt.surface.choice.FittedGroup;
import fieldsalt.surface.choice.Tried;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.fit.SurfaceMethod;
import fieldsalt.surface.kernel.LocalKriging;
import fieldsalt.surface.site.Observations;
import fieldsalt.surface.site.SiteThinning;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Fields of more sites than can be solved whole: fitted from some of them, mapped from all, near
 * each place; and what composites tell of the fields that are solved whole.
 */
final class ManySites {
  /** Sites of a field that are solved whole at most. */
  private static final int MOST_WHOLE = 1000;

  private final SiteReadings all;
  private final SiteReadings fewer;

  /** Names of the fields that have too many. */
  private final Set<String> thinned;

  private final List<Finding> findings;

  ManySites(SiteReadings all, List<Finding> findings) {
    this.all = all;
    this.fewer = SiteThinning.of(all, MOST_WHOLE);
    this.thinned = thinned(all, fewer);
    this.findings = findings;
  }

  /** The readings that are fitted. */
  SiteReadings fewer() {
    return fewer;
  }

  /**
   * The method chosen for some fields, from all sites and composites of them.
   *
   * @param first whether composites of fields that are not mapped are told of here
   */
  Tried whole(FittedGroup group, boolean first, List<FieldBoundary> mapped) {
    tellManySites(group);
    return informed(fromAllSites(group), first, group, mapped);
  }

  /** Composites of a field of too many sites say nothing that those do not. */
  private Tried informed(
      Tried chosen, boolean first, FittedGroup group, List<FieldBoundary> mapped) {
    Set<String> elsewhere =
        mapped.stream()
            .map(FieldBoundary::name)
            .filter(f -> !group.fields().contains(f))
            .collect(Collectors.toSet());
    List<SiteReadings.FieldMean> used = new ArrayList<>();
    for (SiteReadings.FieldMean composite : all.fieldMeans()) {
      String field = composite.field();
      boolean mine = group.fields().contains(field) || (first && !elsewhere.contains(field));
      if (mine && thinned.contains(field)) {
        findings.add(
            new Finding(
                Code.COMPOSITE_UNUSED,
                new Place.Site(composite.sample(), field, true),
                "a composite of a field of more than 1,000 sites",
                "not used for the map: the sites say more than it could"));
      } else if (mine) {
        used.add(composite);
      }
    }
    return FieldMeans.inform(chosen, used, all.scale(), mapped, findings);
  }

  /** Fields of which not all sites are solved whole. */
  private static Set<String> thinned(SiteReadings all, SiteReadings fewer) {
    Map<String, Long> sites = sites(all);
    Map<String, Long> kept = sites(fewer);
    return sites.keySet().stream()
        .filter(f -> !sites.get(f).equals(kept.get(f)))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** Sites with readings, by field. */
  private static Map<String, Long> sites(SiteReadings readings) {
    return readings.rows().stream()
        .map(SiteReadings.Row::site)
        .distinct()
        .collect(
            Collectors.groupingBy(s -> readings.sites().get(s).field(), Collectors.counting()));
  }

  /** The map of a thinned field is made from all of its sites again. */
  private Tried fromAllSites(FittedGroup group) {
    Tried chosen = group.choice().chosen();
    Set<String> large = new TreeSet<>(thinned);
    large.retainAll(group.fields());
    if (large.isEmpty() || !isKriged(chosen)) {
      return chosen;
    }
    Observations rows =
        Observations.of(
            all.withRows(
                all.rows().stream()
                    .filter(r -> large.contains(all.sites().get(r.site()).field()))
                    .toList()),
            List.of());
    List<Predictor> local =
        chosen.predictors().stream()
            .<Predictor>map(p -> new LocalKriging(p.solved(), rows))
            .toList();
    return new Tried(chosen.method(), chosen.data(), local, chosen.leftOut());
  }

  private static boolean isKriged(Tried tried) {
    return tried.method() == SurfaceMethod.KRIGING || tried.method() == SurfaceMethod.DRIFT;
  }

  private void tellManySites(FittedGroup group) {
    Map<String, Long> sites = sites(all);
    String map =
        isKriged(group.choice().chosen())
            ? "each place is predicted from its neighbours among all sites"
            : "and so is the map";
    Set<String> large = new TreeSet<>(thinned);
    large.retainAll(group.fields());
    for (String field : large) {
      findings.add(
          new Finding(
              Code.MANY_SITES,
              Place.field(field),
              sites.get(field) + " sites",
              "variogram, shared errors and validation rest on "
                  + MOST_WHOLE
                  + " of them (those read by several methods first, then a spread); "
                  + map));
    }
  }
}
