package fieldsalt.report.input;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.classes.ClassScheme;
import fieldsalt.finding.Finding;
import fieldsalt.plan.RanchPlan;
import fieldsalt.read.Ranch;
import fieldsalt.surface.fit.SurfaceMethod;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * All that the page shows.
 *
 * @param schemes by field, in the fields' order; a field left out is absent
 * @param zones in the order of fields, then of names
 * @param findings of every stage, in the order in which they were made
 * @param citations of the crop table and of the plan's rules, as far as they were used
 * @param plan empty where another property than ECe is mapped
 * @param zoning how good the zones are, a mapped field each, in the fields' order
 */
public record PageInput(
    Ranch ranch,
    PageSettings settings,
    PageReadings readings,
    SiteReadings sites,
    PageSurface surface,
    Map<String, ClassScheme> schemes,
    List<PageZone> zones,
    List<Finding> findings,
    List<String> citations,
    Optional<RanchPlan> plan,
    List<PageZoning> zoning) {
  public PageInput {
    schemes = new LinkedHashMap<>(schemes);
    zones = List.copyOf(zones);
    findings = List.copyOf(findings);
    citations = List.copyOf(citations);
    zoning = List.copyOf(zoning);
  }

  /** Without the plan's totals, fields and crops, and without figures of the zones' quality. */
  public PageInput(
      Ranch ranch,
      PageSettings settings,
      PageReadings readings,
      SiteReadings sites,
      PageSurface surface,
      Map<String, ClassScheme> schemes,
      List<PageZone> zones,
      List<Finding> findings,
      List<String> citations) {
    this(
        ranch,
        settings,
        readings,
        sites,
        surface,
        schemes,
        zones,
        findings,
        citations,
        Optional.empty(),
        List.of());
  }

  /** More mapped fields than this have a page each, and the first page is an overview. */
  public static final int MOST_ON_ONE_PAGE = 15;

  /** Whether the ranch is so large that its fields have pages of their own. */
  public boolean isOverview() {
    return schemes.size() > MOST_ON_ONE_PAGE;
  }

  /** Whether zones of this field are divided by sodicity too. */
  public boolean isBySodicity(String field) {
    return zoning.stream().anyMatch(z -> z.field().equals(field) && z.sodicity().isPresent());
  }

  /** Whether any of them are. */
  public boolean isBySodicity() {
    return zoning.stream().anyMatch(z -> z.sodicity().isPresent());
  }

  /** Whether the map was found no better than the mean of each field. */
  public boolean isFlat() {
    return surface.report().isFlat();
  }

  /** Whether zones follow sodium where nothing is known of where the salt is. */
  public boolean followsSodiumAlone() {
    return isFlat()
        && zoning.stream()
            .flatMap(z -> z.sodicity().stream())
            .anyMatch(s -> s.method() != SurfaceMethod.MEAN);
  }

  public double areaHa() {
    return zones.stream().mapToDouble(z -> z.zone().areaHa()).sum();
  }
}
