package fieldsalt.report.input;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.map.SurfaceMap;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** What the page of each single field shows; made from indexes, never by scanning the ranch. */
public final class FieldInputs {
  private final PageInput ranch;
  private final Map<String, List<PageZone>> zones;
  private final Map<String, SurfaceMap> maps;
  private final Map<String, PageZoning> zoning;
  private final Map<String, List<Integer>> sites = new HashMap<>();
  private final Map<Integer, List<SiteReadings.Row>> rows;

  public FieldInputs(PageInput ranch) {
    this.ranch = ranch;
    zones = ranch.zones().stream().collect(Collectors.groupingBy(z -> z.zone().field()));
    maps =
        ranch.surface().maps().stream()
            .collect(Collectors.toMap(m -> m.fields().get(0), Function.identity()));
    zoning =
        ranch.zoning().stream().collect(Collectors.toMap(PageZoning::field, Function.identity()));
    List<SiteReadings.Site> all = ranch.sites().sites();
    for (int s = 0; s < all.size(); s++) {
      sites.computeIfAbsent(all.get(s).field(), f -> new ArrayList<>()).add(s);
    }
    rows = ranch.sites().rows().stream().collect(Collectors.groupingBy(SiteReadings.Row::site));
  }

  /** One mapped field. */
  public PageInput of(FieldBoundary field) {
    String name = field.name();
    return new PageInput(
        ranch.ranch().only(field),
        ranch.settings(),
        ranch.readings(),
        sites(name),
        new PageSurface(
            ranch.surface().report(),
            Optional.ofNullable(maps.get(name)).map(List::of).orElse(List.of()),
            ranch.surface().bins(),
            ranch.surface().accuracy(),
            ranch.surface().next().stream().filter(n -> n.field().equals(name)).toList()),
        Map.of(name, ranch.schemes().get(name)),
        zones.getOrDefault(name, List.of()),
        ranch.findings().stream().filter(f -> isOf(f, name)).toList(),
        ranch.citations(),
        ranch.plan().flatMap(p -> p.only(name)),
        Optional.ofNullable(zoning.get(name)).map(List::of).orElse(List.of()));
  }

  private static boolean isOf(Finding finding, String field) {
    return !(finding.place() instanceof Place.Ranch) && finding.place().concerns(field);
  }

  private SiteReadings sites(String field) {
    List<SiteReadings.Site> own = new ArrayList<>();
    List<SiteReadings.Row> ownRows = new ArrayList<>();
    for (int s : sites.getOrDefault(field, List.of())) {
      for (SiteReadings.Row r : rows.getOrDefault(s, List.of())) {
        ownRows.add(
            new SiteReadings.Row(
                own.size(),
                r.value(),
                r.ownVariance(),
                r.loadings(),
                r.paste(),
                r.method(),
                r.laboratory()));
      }
      own.add(ranch.sites().sites().get(s));
    }
    SiteReadings all = ranch.sites();
    return new SiteReadings(
        all.property(),
        all.unit(),
        all.scale(),
        own,
        ownRows,
        all.offsets(),
        all.offsetCovariance(),
        List.of(),
        List.of());
  }
}
