package fieldsalt.pipeline;

import fieldsalt.basis.depth.FieldDepth;
import fieldsalt.basis.pair.ConvertedReadings;
import fieldsalt.facts.Crop;
import fieldsalt.finding.Finding;
import fieldsalt.handover.folder.OutputFolder;
import fieldsalt.plan.zone.YieldOutlook;
import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.quantity.Method;
import fieldsalt.quantity.UnitSystem;
import fieldsalt.report.Report;
import fieldsalt.report.input.PageInput;
import fieldsalt.report.input.PageReadings;
import fieldsalt.report.input.PageSettings;
import fieldsalt.report.input.PageSodicity;
import fieldsalt.report.input.PageSurface;
import fieldsalt.report.input.PageZone;
import fieldsalt.report.input.ZoneAdvices;
import fieldsalt.report.record.RunFacts;
import fieldsalt.report.record.RunRecord;
import fieldsalt.zones.field.Zone;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/** Stage 8: the page and the run record. */
final class Pages {
  private final Prepared prepared;
  private final Mapped mapped;
  private final Planned planned;
  private final Features features;
  private final List<Finding> findings;

  Pages(
      Prepared prepared,
      Mapped mapped,
      Planned planned,
      Features features,
      List<Finding> findings) {
    this.prepared = prepared;
    this.mapped = mapped;
    this.planned = planned;
    this.features = features;
    this.findings = findings;
  }

  void write(Path folder, List<String> written, String version, Optional<String> stamp)
      throws IOException {
    PageInput input = input(version);
    List<String> files = new ArrayList<>(written);
    files.add("report.html");
    files.add(OutputFolder.RUN_RECORD);
    Files.writeString(folder.resolve("report.html"), Report.html(input), StandardCharsets.UTF_8);
    RunFacts facts = new RunFacts(prepared.job().effective(), versions(version), files, stamp);
    Files.writeString(
        folder.resolve(OutputFolder.RUN_RECORD),
        RunRecord.json(input, facts),
        StandardCharsets.UTF_8);
  }

  private static Map<String, String> versions(String version) {
    Map<String, String> versions = new TreeMap<>();
    versions.put("fieldsalt", version);
    versions.put("java", Runtime.version().feature() + "");
    return versions;
  }

  private PageInput input(String version) {
    return new PageInput(
        prepared.ranch(),
        settings(version),
        readings(),
        prepared.readings(),
        PageSurface.of(mapped.surface().report(), mapped.maps(), PageSurface.next(planned.next())),
        mapped.schemes(),
        zones(),
        findings,
        citations(),
        planned.plan(),
        new Zoning(prepared, mapped).fields());
  }

  private PageSettings settings(String version) {
    Map<String, String> crops = new LinkedHashMap<>();
    prepared
        .ranch()
        .fields()
        .forEach(f -> prepared.crops().of(f.name()).ifPresent(c -> crops.put(f.name(), c.name())));
    Map<String, String> depths = new LinkedHashMap<>();
    for (FieldDepth d : prepared.rootZone().fields()) {
      depths.put(d.field(), depthWords(d));
    }
    return new PageSettings(
        HandoverAssembly.units(prepared.job()),
        version,
        crops,
        depths,
        prepared.ranch().survey().size());
  }

  private String depthWords(FieldDepth d) {
    UnitSystem units = HandoverAssembly.units(prepared.job());
    return String.format(
        Locale.ROOT,
        "%.0f to %.0f %s",
        units.of(d.topCm(), UnitSystem.Amount.SOIL_DEPTH),
        units.of(d.bottomCm(), UnitSystem.Amount.SOIL_DEPTH),
        units == UnitSystem.US ? "in" : "cm");
  }

  private PageReadings readings() {
    return prepared.converted().map(Pages::readings).orElse(new PageReadings(List.of(), List.of()));
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

  private List<PageZone> zones() {
    List<PageZone> pageZones = new ArrayList<>();
    List<Zone> zones = mapped.zones().zones();
    for (int z = 0; z < zones.size(); z++) {
      Optional<ZonePlan> plan = features.plan(zones.get(z));
      Optional<YieldOutlook> yield = plan.flatMap(ZonePlan::yield);
      pageZones.add(
          new PageZone(
              zones.get(z),
              planned.means().low()[z],
              planned.means().mean()[z],
              planned.means().high()[z],
              mapped.zones().figuresByZone().get(zones.get(z).name()).chanceAbove(),
              sodicity(zones.get(z)),
              yield.isPresent()
                  ? OptionalDouble.of(yield.get().expectedPct())
                  : OptionalDouble.empty(),
              ZoneAdvices.of(plan, prepared.plan(), HandoverAssembly.units(prepared.job()))));
    }
    return pageZones;
  }

  private Optional<PageSodicity> sodicity(Zone zone) {
    return Optional.ofNullable(features.sodicity().get(zone.name()))
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
                    features.chanceSodic(zone)));
  }

  private List<String> citations() {
    return prepared.crops().all().stream()
        .map(c -> c.name() + ": " + c.source() + " (" + confidence(c) + ")")
        .toList();
  }

  private static String confidence(Crop crop) {
    return crop.isSeenInPrint() ? "seen in print" : crop.confidence();
  }
}
