package fieldsalt.read.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import fieldsalt.finding.InputProblem;
import fieldsalt.quantity.DepthRange;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class JobDocumentTest {
  @TempDir Path folder;

  private JobDocument job(String text) throws IOException {
    Path file = Files.writeString(folder.resolve("job.yaml"), text);
    return JobDocument.read(file, List.of());
  }

  private InputProblem refused(String text) {
    return catchThrowableOfType(InputProblem.class, () -> job(text));
  }

  @Test
  void everyKindOfKeyIsReadWithItsType() throws IOException {
    JobDocument job =
        job(
            """
            ranch: Ñandú 2
            fields: f.geojson
            samples: [a.csv, sub/b.xlsx]
            crs: epsg:32612
            columns: {ec_paste: "EC Sat. Paste", ec: [A, B]}
            defaults: {method: 1:5, unit: "umhos/cm", depth-cm: [0, 20]}
            laboratory:
              North Lab: {method: sat. paste, relation: {1:5: SlavichPetterson1993}, factor: {1to1: 2.1}}
            zones: {breaks: [2, 4, 8], count: 4}
            root-zone-cm: {alfalfa: 150}
            water: {ec-dS-m: 1.5}
            machine: {version: 3}
            crops: [alfalfa, barley]
            """);
    assertThat(job.text("ranch")).contains("Ñandú 2");
    assertThat(job.path("fields")).contains(folder.resolve("f.geojson").toAbsolutePath());
    assertThat(job.paths("samples"))
        .containsExactly(
            folder.resolve("a.csv").toAbsolutePath(),
            folder.resolve("sub/b.xlsx").toAbsolutePath());
    assertThat(job.text("crs")).contains("EPSG:32612");
    assertThat(job.texts("columns", "ec_paste")).containsExactly("EC Sat. Paste");
    assertThat(job.texts("columns", "ec")).containsExactly("A", "B");
    assertThat(job.text("defaults.method")).contains("1:5");
    assertThat(job.text("defaults.unit")).contains("\u00b5S/cm");
    assertThat(job.depth("defaults.depth-cm")).contains(new DepthRange(0, 20));
    assertThat(job.names("laboratory")).containsExactly("North Lab");
    assertThat(job.text("laboratory", "North Lab", "method")).contains("paste");
    assertThat(job.text("laboratory", "North Lab", "relation", "1:5"))
        .contains("SlavichPetterson1993");
    assertThat(job.number("laboratory", "North Lab", "factor", "1:1")).hasValue(2.1);
    assertThat(job.numbers("zones.breaks")).containsExactly(2.0, 4.0, 8.0);
    assertThat(job.number("root-zone-cm", "alfalfa")).hasValue(150);
    assertThat(job.number("water.ec-dS-m")).hasValue(1.5);
    assertThat(job.word("machine.version")).isEqualTo("3");
  }

  @Test
  void keysThatAreNotGivenHaveTheDefaultsOfTheCatalogue() throws IOException {
    JobDocument job = job("fields: f\nsamples: s\ncrop:\n");
    assertThat(job.amount("zones.min-area-ha")).isEqualTo(0.4);
    assertThat(job.amount("gypsum.target-esp")).isEqualTo(10);
    assertThat(job.number("cell-m")).isEmpty();
    assertThat(job.text("cell-m")).contains("auto");
    assertThat(job.amount("seed")).isEqualTo(1);
    assertThat(job.depth("defaults.depth-cm")).contains(new DepthRange(0, 30));
    assertThat(job.text("crop")).isEmpty();
    assertThat(job.given("seed")).isFalse();
    assertThat(job.given("samples")).isTrue();
  }

  @Test
  void everythingWrongIsToldAtOnceWithLineAndNearestKey() {
    InputProblem problem =
        refused(
            """
            fields: f.geojson
            sampels: s.csv
            cell-m: -3
            zones:
              min-area: 0.4
              by: colour
            water: 5
            machine: {version: 5}
            seed: 1.5
            min-width-m: 3
            columns: {textur: "T"}
            zones: {}
            """);
    assertThat(problem.problems())
        .extracting(p -> p.where() + " | " + p.found() + " | " + p.remedy())
        .anySatisfy(p -> assertThat(p).contains("line 12", "zones", "second time"))
        .anySatisfy(p -> assertThat(p).contains("line 2", "sampels", "samples?"))
        .anySatisfy(p -> assertThat(p).contains("line 3", "cell-m", "-3"))
        .anySatisfy(p -> assertThat(p).contains("line 7", "water"))
        .anySatisfy(p -> assertThat(p).contains("line 8", "machine.version", "5"))
        .anySatisfy(p -> assertThat(p).contains("line 9", "seed", "1.5"))
        .anySatisfy(p -> assertThat(p).contains("line 10", "zones.min-width-m?"))
        .anySatisfy(p -> assertThat(p).contains("line 11", "textur", "texture?"));
    assertThat(problem.getMessage()).contains("from 0.5 to 1000").doesNotContain("Exception");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "a: [",
        "\tfields: x",
        "fields: f\n  samples: s",
        "- a\n- b",
        "just words",
        "a: &x 1\nb: *x",
        "--- \na: 1\n---\nb: 2",
        "fields: [[1]]",
        "fields: {a: b}",
        "\u0000\u0001",
        "   ",
        "seed: 99999999999999999999999999",
        "cell-m: .nan",
        "defaults: {depth-cm: [30, 10]}",
        "columns: {ec_1:7: x}",
        "crs: 4326",
        "id-pattern: '('"
      })
  void whatIsNoJobIsAProblemThatAPersonCanMend(String text) {
    assertThat(refused(text)).isNotNull();
  }

  @Test
  void ofTwoNearKeysTheOneWithALetterMoreIsNamed() {
    assertThat(refused("crp: alfalfa")).hasMessageContaining("Did you mean crop?");
    assertThat(refused("zones: {min-area: 3}")).hasMessageContaining("zones.min-area-ha?");
  }

  @Test
  void settingsOfTheCommandLineWin() throws IOException {
    JobDocument job =
        job("fields: f\nsamples: s\ncell-m: 10\nlaboratory: {A.B: {method: paste}}\n")
            .withSets(List.of("cell-m=5"))
            .withSets(List.of("water.ec-dS-m=1.2"))
            .withSets(List.of("crops=alfalfa, barley"))
            .withSets(List.of("zones.breaks=[1, 2]"))
            .withSets(List.of("laboratory.\"A.B\".sd-ln=0.1"))
            .withSets(List.of("defaults.depth-cm=0,60"));
    assertThat(job.number("cell-m")).hasValue(5);
    assertThat(job.number("water.ec-dS-m")).hasValue(1.2);
    assertThat(job.texts("crops")).containsExactly("alfalfa", "barley");
    assertThat(job.numbers("zones.breaks")).containsExactly(1.0, 2.0);
    assertThat(job.text("laboratory", "A.B", "method")).contains("paste");
    assertThat(job.number("laboratory", "A.B", "sd-ln")).hasValue(0.1);
    assertThat(job.depth("defaults.depth-cm")).contains(new DepthRange(0, 60));
    assertThatThrownBy(() -> job.withSets(List.of("cel-m=5"))).hasMessageContaining("cell-m?");
    assertThatThrownBy(() -> job.withSets(List.of("cell-m"))).hasMessageContaining("key=value");
    assertThatThrownBy(() -> job.withSets(List.of("x=1", "seed=a")))
        .hasMessageContaining("unknown key x")
        .hasMessageContaining("whole number");
  }

  @Test
  void flagsAloneMakeAJob() {
    JobDocument job =
        JobDocument.ofFlags(
            Optional.of(folder.resolve("f.geojson")),
            List.of(folder.resolve("s.csv")),
            Optional.empty(),
            Optional.of("alfalfa"));
    assertThat(job.path("fields")).contains(folder.resolve("f.geojson").toAbsolutePath());
    assertThat(job.text("crop")).contains("alfalfa");
  }

  @Test
  void effectiveValuesKeepDefaultsAndTheCataloguesOrder() throws IOException {
    Map<String, Object> all =
        job("seed: 7\nsamples: s.csv\nfields: f\nlaboratory: {B: {sd-ln: 0.1}, A: {sd-ln: 0.2}}\n")
            .effective();
    assertThat(all.keySet()).startsWith("ranch", "fields", "samples");
    assertThat(all).containsEntry("seed", 7L).containsEntry("samples", List.of("s.csv"));
    assertThat(all.get("defaults")).isEqualTo(Map.of("depth-cm", List.of(0.0, 30.0)));
    assertThat(((Map<?, ?>) all.get("laboratory")).keySet().toString()).isEqualTo("[A, B]");
  }

  @Test
  void askingForAKeyThatDoesNotExistIsABug() throws IOException {
    JobDocument job = job("fields: f\n");
    assertThatThrownBy(() -> job.text("nope")).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> job.number("units")).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void theTemplateIsAJobWithAndWithoutItsComments() throws IOException {
    assertThat(job(JobTemplate.text()).paths("samples")).hasSize(1);
    String open =
        JobTemplate.text()
            .lines()
            .skip(2)
            .filter(line -> !line.startsWith("# root-zone-cm: 120"))
            .map(line -> line.replaceFirst("^# ", ""))
            .reduce("", (a, b) -> a + b + "\n");
    JobDocument all = job(open);
    for (JobKey key : JobKeys.all()) {
      if (key.path().stream().noneMatch(s -> s.startsWith("{"))
          && !key.name().equals("root-zone-cm")) {
        assertThat(all.given(key.path().toArray(String[]::new))).as(key.name()).isTrue();
      }
      assertThat(JobTemplate.text()).contains(key.doc());
    }
  }

  @Test
  void theSchemaInTheDocsIsTheOneOfTheCatalogue() throws IOException {
    assertThat(Path.of("docs/job.schema.json")).hasContent(JobSchema.text());
  }

  @Test
  void theSchemaAcceptsTheTemplateAndRefusesUnknownKeys() throws IOException {
    var schema =
        JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(JobSchema.text());
    ObjectMapper yaml = new ObjectMapper(new YAMLFactory());
    JsonNode template = yaml.readTree(JobTemplate.text());
    assertThat(schema.validate(template)).isEmpty();
    assertThat(schema.validate(yaml.readTree("fields: f\nsamples: s\nroot-zone-cm: {beet: 90}")))
        .isEmpty();
    assertThat(schema.validate(yaml.readTree("sampels: s"))).isNotEmpty();
    assertThat(schema.validate(yaml.readTree("zones: {min-area-ha: -1}"))).isNotEmpty();
  }

  @Test
  void aTabIsToldWhereItStands() throws IOException {
    Path job =
        Files.writeString(folder.resolve("tab.yaml"), "fields: f\ndefaults:\n\tmethod: paste\n");
    assertThatThrownBy(() -> JobDocument.read(job, List.of()))
        .hasMessageContaining("tab.yaml line 3");
  }
}
