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
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two invented fields of one ranch, alike in salt, that differ in what the job says of them. */
class ByFieldTest {
  /** Exit code. */
  private static final int INPUT = 3;

  private static final String RANCH =
      """
      fields: fields.geojson
      samples: samples.csv
      crs: local
      cell-m: 10
      crop: alfalfa
      zones: {by: count, count: 2}
      water: {ec-dS-m: 1.2, sar: 4, season-et-mm: 900}
      drainage: good
      """;

  @TempDir Path temp;

  private void write(String propertiesOfEast) throws IOException {
    String field =
        "{\"type\":\"Feature\",\"properties\":{\"field\":\"%s\"%s},\"geometry\":{\"type\":"
            + "\"Polygon\",\"coordinates\":[[[%d,0],[%d,0],[%d,300],[%d,300],[%d,0]]]}}";
    Files.writeString(
        temp.resolve("fields.geojson"),
        "{\"type\":\"FeatureCollection\",\"features\":["
            + String.format(field, "west", "", 0, 400, 400, 0, 0)
            + ","
            + String.format(field, "east", propertiesOfEast, 500, 900, 900, 500, 500)
            + "]}");
    StringBuilder rows = new StringBuilder("id,x,y,depth,method,ec,unit,sar,texture\n");
    for (int i = 0; i < 40; i++) {
      double x = 40 + 80 * (i % 5);
      double y = 35 + 75 * (Math.floor(i / 5.0) % 4);
      double ec = 3 + 4 * x / 400 + 0.5 * Math.sin(y / 40);
      rows.append(
          String.format(
              Locale.ROOT,
              "%s%02d,%.0f,%.0f,0-120 cm,paste,%.2f,dS/m,18,clay loam%n",
              i < 20 ? "W" : "E",
              i,
              i < 20 ? x : x + 500,
              y,
              ec));
    }
    Files.writeString(temp.resolve("samples.csv"), rows);
  }

  private Run map(String more) throws IOException {
    Files.writeString(temp.resolve("job.yaml"), RANCH + more);
    return Run.of("map", temp.resolve("job.yaml"), "-o", temp.resolve("out"), "--quiet", "--force");
  }

  private JsonNode mapped(String more) throws IOException {
    Run run = map(more);
    assertThat(run.code()).as(run.err()).isZero();
    return json("run.json");
  }

  private JsonNode json(String file) throws IOException {
    return new ObjectMapper().readTree(temp.resolve("out").resolve(file).toFile());
  }

  private List<JsonNode> zones(String field) throws IOException {
    List<JsonNode> zones = new ArrayList<>();
    for (JsonNode f : json("zones.geojson").path("features")) {
      if (f.path("properties").path("field").asText().equals(field)) {
        zones.add(f.path("properties"));
      }
    }
    return zones;
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

  private String page() throws IOException {
    return Files.readString(temp.resolve("out/report.html"));
  }

  /** Said of one field, everything changes there and nothing in the other. */
  @Test
  void whatIsSaidOfOneFieldHoldsThereAlone() throws IOException {
    write("");
    mapped("");
    String west = zones("west").toString();
    assertThat(zones("east").get(0).path("class").asText())
        .isEqualTo(zones("west").get(0).path("class").asText());

    JsonNode run =
        mapped(
            """
            by-field:
              east:
                crop: cotton
                root-zone-cm: 60
                drainage: poor
                water: {ec-dS-m: 3.5}
                zones: {by: nrcs}
                gypsum: {target-esp: 6, depth-cm: 30}
            """);
    assertThat(zones("west").toString()).isEqualTo(west);
    List<JsonNode> east = zones("east");
    assertThat(east).allSatisfy(z -> assertThat(z.path("class").asText()).contains("saline"));
    JsonNode fields = run.path("fields");
    assertThat(fields.get(0).path("crop").asText()).isEqualTo("Alfalfa / lucerne");
    assertThat(fields.get(1).path("crop").asText()).isEqualTo("Cotton");
    assertThat(run.path("job").path("by-field").path("east").path("gypsum").path("depth-cm"))
        .isNotNull();
    assertThat(run.path("job").path("by-field").path("east").path("drainage").asText())
        .isEqualTo("poor");
    assertThat(found(run, "draft-drainage-not-proved"))
        .singleElement()
        .satisfies(f -> assertThat(f).contains("east"));
    assertThat(page()).contains("Cotton", "0 to 60 cm", "0 to 120 cm");
  }

  /** A property of the boundary says the same as the key; the job wins where both speak. */
  @Test
  void propertiesOfTheBoundaryAreKeysOfTheField() throws IOException {
    write("");
    mapped("by-field: {east: {water: {ec-dS-m: 3.5, method: drip}, drainage: poor}}\n");
    Map<String, String> byJob = texts();
    write(",\"water_ec\":3.5,\"irrigation\":\"drip\",\"drainage\":\"poor\"");
    JsonNode run = mapped("");
    assertThat(texts()).isEqualTo(byJob);
    assertThat(found(run, "said-twice")).isEmpty();

    run = mapped("by-field: {east: {water: {ec-dS-m: 0.5}}}\n");
    assertThat(found(run, "said-twice"))
        .containsExactly(
            "field east: water.ec-dS-m of 3.5 in the boundaries, and by-field in the job");
    assertThat(texts()).isNotEqualTo(byJob);
  }

  private Map<String, String> texts() throws IOException {
    Map<String, String> texts = new TreeMap<>();
    for (JsonNode f : json("zones.geojson").path("features")) {
      texts.put(f.path("properties").path("zone").asText(), f.toString());
    }
    return texts;
  }

  @Test
  void aPropertyThatCannotBeIsTold() throws IOException {
    write(",\"water_ec\":-3,\"irrigation\":\"bucket\"");
    JsonNode run = mapped("");
    assertThat(found(run, "impossible"))
        .anySatisfy(f -> assertThat(f).contains("water_ec '-3'"))
        .anySatisfy(f -> assertThat(f).contains("irrigation 'bucket'"));
  }

  @Test
  void aFieldThatThereIsNotIsRefused() throws IOException {
    write("");
    Run run = map("by-field: {eats: {crop: cotton}}\n");
    assertThat(run.code()).isEqualTo(INPUT);
    assertThat(run.err()).contains("\"eats\"", "Nearest is \"east\"");
  }

  /** Threshold 5 and slope 10 of the user's own: at a mean of about 5 little is lost. */
  @Test
  void aCropOfTheUsersOwn() throws IOException {
    write("");
    JsonNode run =
        mapped(
            """
            own-crops: {sea grass: {threshold: 5, slope: 10, root-zone-cm: 45, source: a trial}}
            by-field: {east: {crop: sea grass, zones: {by: yield}}}
            crops: [sea grass, alfalfa]
            """);
    assertThat(run.path("fields").get(1).path("crop").asText()).isEqualTo("sea grass");
    assertThat(run.path("fields").get(1).path("classes").path("breaks").get(0).asDouble())
        .isEqualTo(5);
    assertThat(page()).contains("0 to 45 cm", "a trial");
    assertThat(Files.readString(temp.resolve("out/crops.csv"))).contains("sea grass", "not rated");
    Run run2 = map("own-crops: {sea grass: {threshold: 5}}\n");
    assertThat(run2.code()).isEqualTo(INPUT);
    assertThat(run2.err()).contains("own-crops.sea grass", "no slope");
  }

  /** A crop that nobody knows costs its field the yields, and stops nothing. */
  @Test
  void anUnknownCropLeavesItsFieldOnNrcsClasses() throws IOException {
    write("");
    JsonNode run = mapped("by-field: {east: {crop: moon weed, zones: {by: yield}}}\n");
    assertThat(found(run, "crop-unknown"))
        .singleElement()
        .satisfies(f -> assertThat(f).contains("east", "moon weed"));
    assertThat(zones("east"))
        .allSatisfy(z -> assertThat(z.path("class").asText()).contains("saline"))
        .allSatisfy(z -> assertThat(z.path("yield_pct").isNumber()).isFalse());
    assertThat(zones("west")).allSatisfy(z -> assertThat(z.path("yield_pct").isNumber()).isTrue());
  }
}
