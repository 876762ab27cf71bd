package fieldsalt.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import fieldsalt.cli.Run;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A slip among 36 sites of an invented field, and the person's word that ends the doubt. */
class PersonsWordTest {
  /** Exit code. */
  private static final int INPUT = 3;

  @TempDir Path temp;

  /** A smooth field; the reading of P21, in row 23, is ten times what lies around it. */
  private Path job(String more) throws IOException {
    StringBuilder rows = new StringBuilder("id,x,y,depth,method,ec,unit\n");
    for (int i = 0; i < 36; i++) {
      double x = 30 + 60 * (i % 6);
      double y = 30 + 60 * Math.floor(i / 6.0);
      double ec = Math.exp(1.2 + 0.7 * Math.sin(x / 90) + 0.4 * Math.cos(y / 100));
      rows.append(
          String.format(
              Locale.ROOT,
              "P%02d,%.0f,%.0f,0-90 cm,paste,%.2f,dS/m%n",
              i,
              x,
              y,
              i == 21 ? 10 * ec : ec));
    }
    Files.writeString(temp.resolve("samples.csv"), rows);
    Files.writeString(
        temp.resolve("fields.geojson"),
        """
        {"type":"FeatureCollection","features":[{"type":"Feature","properties":{"field":"flat"},
        "geometry":{"type":"Polygon","coordinates":[[[0,0],[360,0],[360,360],[0,360],[0,0]]]}}]}
        """);
    Path job = temp.resolve("job.yaml");
    Files.writeString(
        job, "fields: fields.geojson\nsamples: samples.csv\ncrs: local\ncell-m: 10\n" + more);
    return job;
  }

  private JsonNode mapped(String more) throws IOException {
    Run run = Run.of("map", job(more), "-o", temp.resolve("out"), "--quiet", "--force");
    assertThat(run.code()).as(run.err()).isZero();
    return new ObjectMapper().readTree(temp.resolve("out/run.json").toFile());
  }

  private static List<String> found(JsonNode run, String code) {
    List<String> found = new ArrayList<>();
    for (JsonNode f : run.path("findings")) {
      if (f.path("code").asText().equals(code)) {
        found.add(f.path("where").asText() + ": " + f.path("found").asText());
      }
    }
    return found;
  }

  @Test
  void theSlipIsInDoubtAndTheAccuracyIsGivenWithAndWithoutIt() throws IOException {
    JsonNode run = mapped("");
    assertThat(found(run, "doubtful-reading"))
        .singleElement()
        .satisfies(f -> assertThat(f).contains("P21"));
    JsonNode surface = run.path("surface");
    JsonNode with = surface.path("unseen_sites");
    JsonNode without = surface.path("unseen_sites_without_doubtful");
    assertThat(with.path("sites").asInt()).isEqualTo(36);
    assertThat(without.path("sites").asInt()).isEqualTo(35);
    assertThat(without.path("typical_factor").asDouble())
        .isLessThan(with.path("typical_factor").asDouble());
    String page = Files.readString(temp.resolve("out/report.html"));
    assertThat(page)
        .contains("Without the doubtful readings it is a factor of")
        .contains("confirm: {&quot;P21&quot;: dS/m}", "leave-out: [&quot;P21&quot;]");
  }

  @Test
  void leftOutByRowOrByIdItIsNotUsed() throws IOException {
    for (String name : List.of("P21", "23", "samples.csv row 23")) {
      JsonNode run = mapped("leave-out: [\"" + name + "\"]\n");
      assertThat(found(run, "left-out-by-person"))
          .singleElement()
          .satisfies(f -> assertThat(f).contains("P21"));
      assertThat(found(run, "doubtful-reading")).isEmpty();
      assertThat(run.path("surface").path("unseen_sites").path("sites").asInt()).isEqualTo(35);
    }
  }

  @Test
  void confirmedItCountsWhole() throws IOException {
    JsonNode run = mapped("confirm: {P21: dS/m}\n");
    assertThat(found(run, "doubtful-reading")).isEmpty();
    assertThat(run.path("surface").path("unseen_sites").path("sites").asInt()).isEqualTo(36);
    assertThat(run.path("surface").path("unseen_sites_without_doubtful").isNull()).isTrue();
  }

  @Test
  void aNameThatNothingHasIsTold() throws IOException {
    JsonNode run = mapped("leave-out: [P99]\nconfirm: {P98: dS/m}\n");
    assertThat(found(run, "name-unknown"))
        .containsExactly(
            "confirm: 'P98', which is no row and no sample",
            "leave-out: 'P99', which is no row and no sample");
    assertThat(found(run, "doubtful-reading")).hasSize(1);
  }

  @Test
  void everythingLeftOutIsAMistake() throws IOException {
    StringBuilder all = new StringBuilder("leave-out: [P00");
    for (int i = 1; i < 36; i++) {
      all.append(String.format(Locale.ROOT, ", P%02d", i));
    }
    Run run = Run.of("map", job(all + "]\n"), "-o", temp.resolve("none"));
    assertThat(run.code()).isEqualTo(INPUT);
    assertThat(run.err()).contains("leave-out").contains("every reading");
  }
}
