package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import fieldsalt.handover.output.OutputColumns;
import fieldsalt.quantity.UnitSystem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The run record against its JSON Schema, and the columns of files against their catalogue. */
class RunRecordTest {
  private static final String RANCH = "sample-fields/ranch/job.yaml";

  @TempDir static Path temp;

  private static JsonNode json(Path file) throws IOException {
    return new ObjectMapper().readTree(file.toFile());
  }

  private static Path map(String name, Object... more) {
    Path out = temp.resolve(name);
    List<Object> words = new ArrayList<>(List.of("map"));
    words.addAll(List.of(more));
    words.addAll(List.of("-o", out, "--quiet"));
    Run run = Run.of(words.toArray());
    assertThat(run.code()).as(run.err()).isIn(Exit.DONE, Exit.SOME_FIELDS);
    return out;
  }

  /** The sample ranch, mapped once for both tests. */
  private static Path ranch() {
    Path out = temp.resolve("ranch");
    return Files.exists(out) ? out : map("ranch", RANCH, "--stamp");
  }

  private static void obeysTheSchema(Path out) throws IOException {
    var schema =
        JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
            .getSchema(Files.readString(Path.of("docs/run.schema.json")));
    assertThat(schema.validate(json(out.resolve("run.json")))).isEmpty();
  }

  private static Set<String> names(Path geoJson) throws IOException {
    Set<String> names = new TreeSet<>();
    for (JsonNode feature : json(geoJson).path("features")) {
      feature.path("properties").fieldNames().forEachRemaining(names::add);
    }
    return names;
  }

  /** Salinity, salinity and sodicity, another property: together they write every column. */
  @Test
  void recordsObeyTheirSchemaAndEveryColumnOfTheCatalogueIsWritten() throws IOException {
    Path ranch = ranch();
    Path sodic = map("sodic", RANCH, "--set", "zones.sodicity=yes");
    Path other = map("other", RANCH, "--set", "property.column=cec_cmol_kg", "--set", "units=us");
    Path small = map("small", "sample-fields/small/job.yaml");
    Set<String> zones = new TreeSet<>();
    Set<String> samples = new TreeSet<>();
    for (Path out : List.of(ranch, sodic, other, small)) {
      obeysTheSchema(out);
      zones.addAll(names(out.resolve("zones.geojson")));
      samples.addAll(names(out.resolve("samples.geojson")));
    }
    assertThat(zones)
        .containsExactlyInAnyOrderElementsOf(
            OutputColumns.of("zones.geojson").names(UnitSystem.METRIC));
    assertThat(samples)
        .containsExactlyInAnyOrderElementsOf(
            OutputColumns.of("samples.geojson").names(UnitSystem.METRIC));
    assertThat(json(ranch.resolve("run.json")).path("stamp").asText()).startsWith("20");
    assertThat(json(small.resolve("run.json")).has("stamp")).isFalse();
    assertThat(Files.readAllLines(ranch.resolve("rates.csv")).get(0))
        .isEqualTo(String.join(",", OutputColumns.of("rates.csv").names(UnitSystem.METRIC)));
    assertThat(Files.readAllLines(ranch.resolve("next.csv")).get(0))
        .isEqualTo(String.join(",", OutputColumns.of("next.csv").names(UnitSystem.METRIC)));
  }

  private static Object plain(JsonNode value) {
    return value.isNumber() ? (Object) value.asDouble() : value.asText();
  }

  /** The record's zones are those of the file, figure by figure. */
  @Test
  void planOfAZoneStandsInRecordAndFileAlike() throws IOException {
    Path out = ranch();
    JsonNode features = json(out.resolve("zones.geojson")).path("features");
    JsonNode zones = json(out.resolve("run.json")).path("zones");
    assertThat(zones).hasSameSizeAs(features).isNotEmpty();
    for (int z = 0; z < zones.size(); z++) {
      JsonNode properties = features.get(z).path("properties");
      assertThat(zones.get(z).path("zone")).isEqualTo(properties.path("zone"));
      for (Map.Entry<String, JsonNode> f : zones.get(z).path("plan").properties()) {
        assertThat(plain(properties.path(f.getKey())))
            .as(f.getKey())
            .isEqualTo(plain(f.getValue()));
      }
    }
  }
}
