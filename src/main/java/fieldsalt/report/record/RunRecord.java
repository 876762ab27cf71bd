package fieldsalt.report.record;

import fieldsalt.basis.site.ReadingErrors;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.classes.ClassScheme;
import fieldsalt.facts.Crop;
import fieldsalt.finding.Finding;
import fieldsalt.geo.RanchProjection;
import fieldsalt.handover.folder.OutputFolder;
import fieldsalt.handover.output.ReadingsOutput;
import fieldsalt.handover.output.ZonesOutput;
import fieldsalt.plan.RanchPlan;
import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.read.Ranch;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.report.result.Citations;
import fieldsalt.report.result.RunResults;
import fieldsalt.surface.area.AreaMeans;
import fieldsalt.surface.fit.Accuracy;
import fieldsalt.surface.fit.SurfaceReport;
import fieldsalt.zones.field.Zone;
import fieldsalt.zones.field.ZoneMap;
import fieldsalt.zones.field.ZonesAtSites;
import fieldsalt.zones.sodicity.Sodicity;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The run record as JSON: the effective job, versions, hashes of what was read, findings, fitted
 * models, validation, zones and citations. The same input gives the same text; a number that is not
 * known is null; the clock stands in it only if it was asked for.
 */
public final class RunRecord {
  private final RunResults results;
  private final RunFacts facts;
  private final ReadingErrors errors;

  private RunRecord(RunResults results, RunFacts facts) {
    this.results = results;
    this.facts = facts;
    this.errors = ReadingErrors.of(results.readings().sites());
  }

  /** Writes {@code run.json}. */
  public static void write(Path folder, RunResults results, RunFacts facts) throws IOException {
    Files.writeString(
        folder.resolve(OutputFolder.RUN_RECORD), json(results, facts), StandardCharsets.UTF_8);
  }

  /** The record as text, to be written as UTF-8. */
  static String json(RunResults results, RunFacts facts) {
    return RecordText.of(new RunRecord(results, facts).record());
  }

  private Map<String, Object> record() {
    Ranch ranch = results.readings().ranch();
    Map<String, Object> record = new LinkedHashMap<>();
    record.put("program", OutputFolder.PROGRAM);
    record.put("ranch", ranch.name());
    facts.stamp().ifPresent(s -> record.put("stamp", s));
    record.put("versions", facts.versions());
    record.put("job", facts.job());
    record.put("inputs_sha256", new TreeMap<>(ranch.hashes()));
    record.put("projection", projection(ranch.projection()));
    record.put("fields", ranch.fields().stream().map(this::field).toList());
    record.put("readings", readings());
    record.put("pairs", results.readings().converted().map(c -> c.pairs()).orElse(List.of()));
    record.put("shared_errors", sharedErrors());
    record.put("surface", surface());
    record.put("zoning", ranch.fields().stream().flatMap(this::zoning).toList());
    record.put("zones", zones());
    results.planned().plan().ifPresent(p -> record.put("plan", plan(p)));
    record.put("finding_counts", counts());
    record.put("findings", results.findings().stream().map(RunRecord::finding).toList());
    record.put("citations", citations());
    record.put("files", facts.files());
    return record;
  }

  private static Map<String, Object> projection(RanchProjection of) {
    Map<String, Object> projection = new LinkedHashMap<>();
    projection.put("name", of.name());
    of.epsg().ifPresent(code -> projection.put("epsg", code));
    return projection;
  }

  private Map<String, Object> field(FieldBoundary field) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("field", field.name());
    out.put("area_ha", field.shapeM().getArea() / 10_000);
    out.put("crop", results.readings().crops().of(field.name()).map(Crop::name).orElse(null));
    ClassScheme scheme = results.mapped().schemes().get(field.name());
    out.put("mapped", scheme != null);
    out.put("classes", scheme == null ? null : classes(scheme));
    return out;
  }

  private static Map<String, Object> classes(ClassScheme scheme) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("name", scheme.name());
    out.put("breaks", scheme.breaks());
    out.put("labels", scheme.labels());
    out.put("limitDsPerM", scheme.limitDsPerM());
    return out;
  }

  /** Factors before and after pairs, under the names of the table of {@code convert}. */
  private List<Map<String, Object>> readings() {
    return results.readings().converted().map(ReadingsOutput::factorsByName).orElse(List.of());
  }

  private List<Map<String, Object>> sharedErrors() {
    List<Map<String, Object>> errors = new ArrayList<>();
    SiteReadings sites = results.readings().sites();
    for (int i = 0; i < sites.offsets().size(); i++) {
      Map<String, Object> error = new LinkedHashMap<>();
      error.put("offset", sites.offsets().get(i));
      error.put("prior_variance", sites.offsetCovariance()[i][i]);
      errors.add(error);
    }
    return errors;
  }

  private Map<String, Object> surface() {
    SurfaceReport report = results.mapped().report();
    Map<String, Object> surface = new LinkedHashMap<>();
    surface.put("method", report.chosen());
    surface.put("why", report.whyChosen());
    surface.put("unseen_sites", report.accuracy().map(RunRecord::accuracy).orElse(null));
    surface.put(
        "unseen_sites_without_doubtful",
        report.accuracyWithoutDoubtful().map(RunRecord::accuracy).orElse(null));
    surface.put("steered", report.steering().map(RunRecord::steered).orElse(null));
    surface.put("variogram", report.variogram());
    surface.put("leave_one_out", report.candidates());
    surface.put(
        "accuracy",
        report.details().validation().stream()
            .limit(1)
            .flatMap(v -> v.coverage().stream())
            .toList());
    surface.put("sample_variogram", report.details().sampleVariogram());
    surface.put("next", results.planned().next().best());
    return surface;
  }

  private static Map<String, Object> accuracy(Accuracy a) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("sites", a.sites());
    out.put("rmse", a.rmse());
    out.put("typical_factor", a.typicalFactor());
    out.put("explained", a.explained());
    out.put("coverage90", a.coverage90());
    return out;
  }

  private static Map<String, Object> steered(SurfaceReport.Steering s) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("fields", s.fields());
    out.put("by", s.drifts());
    out.put("explained", s.explained());
    out.put("explained_without", s.explainedWithout());
    out.put("variogram", s.variogram());
    out.put("leave_one_out", s.candidates());
    return out;
  }

  private List<Map<String, Object>> zones() {
    Map<String, ZonePlan> plans = results.planned().byZone();
    AreaMeans means = results.planned().means();
    List<Map<String, Object>> zones = new ArrayList<>();
    for (Zone zone : results.mapped().zones().zones()) {
      int z = zones.size();
      Map<String, Object> out = new LinkedHashMap<>();
      out.put("zone", zone.name());
      out.put("field", zone.field());
      out.put("class", zone.label());
      out.put("area_ha", zone.areaHa());
      out.put("ece_dS_m", means.mean()[z]);
      out.put("ece_low", means.low()[z]);
      out.put("ece_high", means.high()[z]);
      out.put("p_above", results.mapped().zones().figuresByZone().get(zone.name()).chanceAbove());
      Optional.ofNullable(results.planned().sodicity().get(zone.name()))
          .ifPresent(s -> out.put("sodicity", sodicity(s, results.chanceSodic(zone))));
      Optional.ofNullable(plans.get(zone.name()))
          .ifPresent(plan -> out.put("plan", ZonesOutput.plan(plan)));
      zones.add(out);
    }
    return zones;
  }

  private static Map<String, Object> sodicity(Sodicity.OfZone s, double chance) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("class", s.label());
    out.put("property", s.by().property().label());
    out.put("mean", s.mean());
    out.put("low", s.low());
    out.put("high", s.high());
    out.put("p_sodic", chance);
    return out;
  }

  /** How good the zones of a field are; nothing where it is not mapped. */
  private Stream<Map<String, Object>> zoning(FieldBoundary field) {
    String name = field.name();
    if (!results.mapped().schemes().containsKey(name)) {
      return Stream.empty();
    }
    ZoneMap zones = results.mapped().zones();
    ZonesAtSites atSites =
        ZonesAtSites.of(name, zones.zonesOf(name), results.readings().sites(), errors);
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("field", name);
    out.put("area_ha", field.shapeM().getArea() / 10_000);
    out.put("merged_ha", zones.changedHaByField().get(name));
    out.put("uncertain_ha", zones.uncertainHaByField().get(name));
    out.put("variance_share_on_map", zones.varianceExplainedByField().get(name));
    out.put("sites", atSites.sites());
    out.put("variance_share_at_sites", orNull(atSites.predictedShare()));
    out.put("error_share_at_sites", orNull(atSites.errorShare()));
    out.put(
        "sodicity",
        results
            .mapped()
            .sodicity()
            .map(s -> s.byField().get(name))
            .map(m -> sodicity(m, name))
            .orElse(null));
    return Stream.of(out);
  }

  private static Map<String, Object> sodicity(Sodicity.Measured m, String field) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("property", m.property().label());
    out.put("unit", m.property().unit());
    out.put("limit", m.limit());
    out.put("sites", m.readings().sitesIn(field));
    out.put("method", m.surface().report().chosen());
    return out;
  }

  /** Every citation used, sorted. */
  private List<String> citations() {
    TreeSet<String> all = new TreeSet<>(Citations.ALWAYS);
    results.readings().crops().all().forEach(c -> all.add(Citations.of(c)));
    results.readings().converted().ifPresent(c -> c.rows().forEach(row -> all.add(row.citation())));
    all.remove("");
    return List.copyOf(all);
  }

  private static Double orNull(OptionalDouble value) {
    return value.isPresent() ? value.getAsDouble() : null;
  }

  private static Map<String, Object> plan(RanchPlan plan) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("gypsum_t", plan.gypsumT());
    out.put("planned_t", plan.plannedT());
    out.put("leaching_m3", plan.leachingM3());
    out.put("planned_m3", plan.plannedM3());
    out.put("expected_cost", plan.expectedCost());
    out.put("expected_net", plan.expectedNet());
    return out;
  }

  private static Map<String, Object> finding(Finding finding) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("code", finding.code().id());
    out.put("where", finding.where());
    out.put("found", finding.found());
    out.put("done", finding.done());
    return out;
  }

  private Map<String, Long> counts() {
    return results.findings().stream()
        .collect(Collectors.groupingBy(f -> f.code().id(), TreeMap::new, Collectors.counting()));
  }
}
