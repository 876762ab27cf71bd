package fieldsalt.report.input;

import fieldsalt.basis.depth.FieldDepth;
import fieldsalt.basis.pair.ConvertedReadings;
import fieldsalt.plan.RanchPlan;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.quantity.Method;
import fieldsalt.quantity.UnitSystem;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.report.result.Citations;
import fieldsalt.report.result.RunResults;
import fieldsalt.surface.area.AreaMeans;
import fieldsalt.zones.field.Zone;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;

/** Makes what the page shows from the results of the stages. */
public final class PageMaker {
  private final RunResults results;
  private final UnitSystem units;

  private PageMaker(RunResults results, UnitSystem units) {
    this.results = results;
    this.units = units;
  }

  /**
   * What the page shows.
   *
   * @param version of fieldsalt
   * @param treatedCm depth of the layer that gypsum would treat, by field
   */
  public static PageInput of(
      RunResults results, UnitSystem units, String version, ToDoubleFunction<String> treatedCm) {
    return new PageMaker(results, units).input(version, treatedCm);
  }

  private PageInput input(String version, ToDoubleFunction<String> treatedCm) {
    RunResults.Readings read = results.readings();
    return new PageInput(
        read.ranch(),
        settings(version),
        read.converted().map(PageMaker::readings).orElse(new PageReadings(List.of(), List.of())),
        read.sites(),
        PageSurface.of(
            results.mapped().report(),
            results.mapped().maps(),
            PageSurface.next(results.planned().next())),
        results.mapped().schemes(),
        zones(),
        results.findings(),
        read.crops().all().stream().map(Citations::of).toList(),
        results.planned().plan(),
        PageZoning.of(results, treatedCm));
  }

  private PageSettings settings(String version) {
    Map<String, String> crops = new LinkedHashMap<>();
    for (FieldBoundary field : results.readings().ranch().fields()) {
      String name = field.name();
      results.readings().crops().of(name).ifPresent(c -> crops.put(name, c.name()));
    }
    Map<String, String> depths = new LinkedHashMap<>();
    results.readings().depths().forEach(d -> depths.put(d.field(), words(d)));
    return new PageSettings(
        units, version, crops, depths, results.readings().ranch().survey().size());
  }

  private String words(FieldDepth d) {
    return String.format(
        Locale.ROOT,
        "%.0f to %.0f %s",
        units.of(d.topCm(), UnitSystem.Amount.SOIL_DEPTH),
        units.of(d.bottomCm(), UnitSystem.Amount.SOIL_DEPTH),
        units == UnitSystem.US ? "in" : "cm");
  }

  private static PageReadings readings(ConvertedReadings converted) {
    List<PageReadings.Kind> kinds = new ArrayList<>();
    List<PageReadings.PairPlot> plots = new ArrayList<>();
    for (ConvertedReadings.Group group : converted.groups()) {
      PageReadings.Factor prior = new PageReadings.Factor(group.priorFactor(), group.priorSdLn());
      PageReadings.Factor posterior =
          new PageReadings.Factor(group.posteriorFactor(), group.posteriorSdLn());
      Optional<ConvertedReadings.Row> example =
          converted.rows().stream().filter(r -> belongs(r, group)).findFirst();
      kinds.add(
          new PageReadings.Kind(
              name(group),
              group.readings(),
              example.map(ConvertedReadings.Row::relation).orElse(""),
              example.map(ConvertedReadings.Row::citation).orElse(""),
              prior,
              posterior,
              group.pairs(),
              group.sdLnAfterOneMore()));
      List<PageReadings.Pair> pairs =
          converted.pairs().stream()
              .filter(p -> belongs(p, group))
              .map(p -> new PageReadings.Pair(p.id(), p.ec(), p.ece(), p.isOutlying()))
              .toList();
      if (!pairs.isEmpty()) {
        plots.add(new PageReadings.PairPlot(name(group), pairs, prior, posterior));
      }
    }
    kinds.addAll(pastes(converted));
    return new PageReadings(kinds, plots);
  }

  /** Saturated pastes need no factor: rows by laboratory. */
  private static List<PageReadings.Kind> pastes(ConvertedReadings converted) {
    Map<String, Integer> rows = new TreeMap<>();
    converted.rows().stream()
        .filter(r -> r.factor() == 1 && r.sample().method().equals(Optional.of(Method.PASTE)))
        .forEach(r -> rows.merge(r.sample().laboratory(), 1, Integer::sum));
    PageReadings.Factor one = new PageReadings.Factor(1, 0);
    return rows.entrySet().stream()
        .map(
            e ->
                new PageReadings.Kind(
                    (e.getKey().isBlank() ? "laboratory not named" : e.getKey())
                        + ", saturated paste",
                    e.getValue(),
                    "none needed",
                    "",
                    one,
                    one,
                    0,
                    0))
        .toList();
  }

  private static boolean belongs(ConvertedReadings.Row row, ConvertedReadings.Group group) {
    return row.sample().laboratory().equals(group.laboratory())
        && row.method().equals(group.method())
        && row.sample().soil().texture().group() == group.texture();
  }

  private static boolean belongs(ConvertedReadings.Pair pair, ConvertedReadings.Group group) {
    return pair.laboratory().equals(group.laboratory())
        && pair.method().equals(group.method())
        && pair.texture() == group.texture();
  }

  private static String name(ConvertedReadings.Group group) {
    String laboratory = group.laboratory().isBlank() ? "laboratory not named" : group.laboratory();
    return laboratory
        + ", "
        + group.method()
        + ", "
        + group.texture().name().toLowerCase(Locale.ROOT)
        + (group.texture() == fieldsalt.quantity.TextureGroup.UNKNOWN ? " texture" : " soil");
  }

  private ZoneAdvice advice(Optional<ZonePlan> plan, Map<String, PlanSettings> settings) {
    return plan.isEmpty()
        ? ZoneAdvice.none()
        : ZoneAdvices.of(plan.get(), settings.get(plan.get().zone().field()), units);
  }

  private List<PageZone> zones() {
    Map<String, ZonePlan> plans = results.planned().byZone();
    AreaMeans means = results.planned().means();
    List<PageZone> pageZones = new ArrayList<>();
    Map<String, PlanSettings> settings =
        results.planned().plan().map(RanchPlan::settingsByField).orElse(Map.of());
    List<Zone> zones = results.mapped().zones().zones();
    for (int z = 0; z < zones.size(); z++) {
      Zone zone = zones.get(z);
      Optional<ZonePlan> plan = Optional.ofNullable(plans.get(zone.name()));
      pageZones.add(
          new PageZone(
              zone,
              means.low()[z],
              means.mean()[z],
              means.high()[z],
              results.mapped().zones().figuresByZone().get(zone.name()).chanceAbove(),
              sodicity(zone),
              plan.flatMap(ZonePlan::yield)
                  .map(y -> OptionalDouble.of(y.expectedPct()))
                  .orElse(OptionalDouble.empty()),
              advice(plan, settings)));
    }
    return pageZones;
  }

  private Optional<PageSodicity> sodicity(Zone zone) {
    return Optional.ofNullable(results.planned().sodicity().get(zone.name()))
        .map(
            s ->
                new PageSodicity(
                    s.isSodic(),
                    s.label(),
                    s.by().property().label(),
                    s.by().property().unit(),
                    s.low(),
                    s.mean(),
                    s.high(),
                    results.chanceSodic(zone)));
  }
}
