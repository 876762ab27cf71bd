package fieldsalt.report.record;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import fieldsalt.classes.ClassScheme;
import fieldsalt.finding.Finding;
import fieldsalt.handover.folder.OutputFolder;
import fieldsalt.plan.RanchPlan;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.report.input.PageInput;
import fieldsalt.report.input.PageZone;
import fieldsalt.report.input.PageZoning;
import fieldsalt.report.section.SourcesSection;
import fieldsalt.surface.covariance.Variogram;
import fieldsalt.surface.fit.SurfaceMethod;
import fieldsalt.surface.fit.SurfaceReport;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * The run record as JSON: the effective job, versions, hashes of what was read, findings, fitted
 * models, validation, zones and citations. The same input gives the same text; a number that is not
 * known is null; the clock stands in it only if it was asked for.
 */
public final class RunRecord {
  private static final JsonMapper MAPPER = mapper();

  private final PageInput input;
  private final RunFacts facts;

  private RunRecord(PageInput input, RunFacts facts) {
    this.input = input;
    this.facts = facts;
  }

  /** The record as text, to be written as UTF-8 under the name {@code run.json}. */
  public static String json(PageInput input, RunFacts facts) {
    DefaultPrettyPrinter printer =
        new DefaultPrettyPrinter()
            .withObjectIndenter(new DefaultIndenter("  ", "\n"))
            .withArrayIndenter(new DefaultIndenter("  ", "\n"));
    try {
      Map<String, Object> record = new RunRecord(input, facts).record();
      return new ObjectMapper().writer(printer).writeValueAsString(withoutNaN(record)) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  private Map<String, Object> record() {
    Map<String, Object> record = new LinkedHashMap<>();
    record.put("program", OutputFolder.PROGRAM);
    record.put("ranch", input.ranch().name());
    facts.stamp().ifPresent(s -> record.put("stamp", s));
    record.put("versions", facts.versions());
    record.put("job", facts.job());
    record.put("inputs_sha256", new TreeMap<>(input.ranch().hashes()));
    record.put("projection", projection());
    record.put("fields", input.ranch().fields().stream().map(this::field).toList());
    record.put("readings", input.readings().kinds());
    record.put("pairs", input.readings().pairs());
    record.put("shared_errors", sharedErrors());
    record.put("surface", surface());
    record.put("zoning", input.zoning().stream().map(RunRecord::zoning).toList());
    record.put("zones", input.zones().stream().map(RunRecord::zone).toList());
    input.plan().ifPresent(p -> record.put("plan", plan(p)));
    record.put("finding_counts", counts());
    record.put("findings", input.findings().stream().map(RunRecord::finding).toList());
    record.put("citations", SourcesSection.citations(input));
    record.put("files", facts.files());
    return record;
  }

  private Map<String, Object> projection() {
    Map<String, Object> projection = new LinkedHashMap<>();
    projection.put("name", input.ranch().projection().name());
    input.ranch().projection().epsg().ifPresent(code -> projection.put("epsg", code));
    return projection;
  }

  private Map<String, Object> field(FieldBoundary field) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("field", field.name());
    out.put("area_ha", field.shapeM().getArea() / 10_000);
    out.put("crop", input.settings().cropByField().get(field.name()));
    ClassScheme scheme = input.schemes().get(field.name());
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

  private List<Map<String, Object>> sharedErrors() {
    List<Map<String, Object>> errors = new ArrayList<>();
    List<String> offsets = input.sites().offsets();
    for (int i = 0; i < offsets.size(); i++) {
      Map<String, Object> error = new LinkedHashMap<>();
      error.put("offset", offsets.get(i));
      error.put("prior_variance", input.sites().offsetCovariance()[i][i]);
      errors.add(error);
    }
    return errors;
  }

  private Map<String, Object> surface() {
    SurfaceReport report = input.surface().report();
    Map<String, Object> surface = new LinkedHashMap<>();
    surface.put("method", report.chosen().label());
    surface.put("why", report.whyChosen());
    surface.put("variogram", report.variogram());
    surface.put("leave_one_out", report.candidates());
    surface.put("accuracy", input.surface().accuracy());
    surface.put("sample_variogram", input.surface().bins());
    surface.put("next", input.surface().next());
    return surface;
  }

  private static Map<String, Object> zone(PageZone z) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("zone", z.zone().name());
    out.put("field", z.zone().field());
    out.put("class", z.zone().label());
    out.put("area_ha", z.zone().areaHa());
    out.put("ece_dS_m", z.mean());
    out.put("ece_low", z.low());
    out.put("ece_high", z.high());
    out.put("p_above", z.chanceAbove());
    out.put("yield_pct", orNull(z.yieldPct()));
    z.sodicity().ifPresent(s -> out.put("sodicity", s));
    out.put("plan", z.advice());
    return out;
  }

  private static Map<String, Object> zoning(PageZoning z) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("field", z.field());
    out.put("area_ha", z.areaHa());
    out.put("merged_ha", z.changedHa());
    out.put("uncertain_ha", z.uncertainHa());
    out.put("variance_share_on_map", z.explainedOnMap());
    out.put("sites", z.atSites().sites());
    out.put("variance_share_at_sites", orNull(z.atSites().predictedShare()));
    out.put("error_share_at_sites", orNull(z.atSites().errorShare()));
    out.put("sodicity", z.sodicity().orElse(null));
    return out;
  }

  private static Double orNull(OptionalDouble value) {
    return value.isPresent() ? value.getAsDouble() : null;
  }

  private static Map<String, Object> plan(RanchPlan plan) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("gypsum_t", plan.gypsumT());
    out.put("planned_t", plan.plannedT());
    out.put("leaching_m3", plan.leachingM3());
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
    return input.findings().stream()
        .collect(Collectors.groupingBy(f -> f.code().id(), TreeMap::new, Collectors.counting()));
  }

  private static JsonMapper mapper() {
    SimpleModule words = new SimpleModule();
    words.addSerializer(SurfaceMethod.class, new Named<>(SurfaceMethod::label));
    words.addSerializer(Variogram.class, new Named<>(Variogram::name));
    return JsonMapper.builder().addModule(words).build();
  }

  /** A value by its word. */
  private static final class Named<T> extends JsonSerializer<T> {
    private final Function<T, String> word;

    Named(Function<T, String> word) {
      this.word = word;
    }

    @Override
    public void serialize(T value, JsonGenerator out, SerializerProvider provider)
        throws IOException {
      out.writeString(word.apply(value));
    }
  }

  /** A copy as maps, lists, texts and numbers in which what is not a number is null. */
  private static Object withoutNaN(Object value) {
    return mended(MAPPER.convertValue(value, Object.class));
  }

  private static Object mended(Object value) {
    if (value instanceof Map<?, ?> map) {
      Map<Object, Object> copy = new LinkedHashMap<>();
      map.forEach((k, v) -> copy.put(k, mended(v)));
      return copy;
    }
    if (value instanceof List<?> list) {
      List<Object> copy = new ArrayList<>();
      list.forEach(v -> copy.add(mended(v)));
      return copy;
    }
    return value instanceof Double d && !Double.isFinite(d) ? null : value;
  }
}
