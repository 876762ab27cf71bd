package fieldsalt.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fieldsalt.cli.Run;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Blocks that exist, and the zones of an earlier run, edited, through the whole job. */
class GivenZonesTest {
  /** Exit code. */
  private static final int INPUT = 3;

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String RANCH = "sample-fields/ranch/job.yaml";

  @TempDir static Path temp;
  private static Path first;

  @BeforeAll
  static void mapOnce() {
    first = temp.resolve("first");
    assertThat(Run.of("map", RANCH, "-o", first, "--quiet").code()).isZero();
  }

  private static Run again(String out, Path zones, String... more) {
    String[] words = {
      "map",
      RANCH,
      "-o",
      temp.resolve(out).toString(),
      "--quiet",
      "--force",
      "--set",
      "zones.by=file",
      "--set",
      "zones.file=" + zones.toAbsolutePath()
    };
    Object[] all = new Object[words.length + more.length];
    System.arraycopy(words, 0, all, 0, words.length);
    System.arraycopy(more, 0, all, words.length, more.length);
    return Run.of(all);
  }

  private static Map<String, JsonNode> zones(Path folder) throws IOException {
    Map<String, JsonNode> zones = new LinkedHashMap<>();
    JsonNode file = JSON.readTree(folder.resolve("zones.geojson").toFile());
    for (JsonNode f : file.path("features")) {
      zones.put(f.path("properties").path("zone").asText(), f.path("properties"));
    }
    return zones;
  }

  /** The zones of a run given back unchanged: the same plan, but for what rounding moves. */
  @Test
  void zonesOfAnEarlierRunComeBackAsTheyWere() throws IOException {
    Run run = again("same", first.resolve("zones.geojson"));
    assertThat(run.code()).as(run.err()).isZero();
    Map<String, JsonNode> before = zones(first);
    Map<String, JsonNode> after = zones(temp.resolve("same"));
    assertThat(after.keySet()).containsExactlyInAnyOrderElementsOf(before.keySet());
    after.forEach(
        (name, zone) -> {
          JsonNode was = before.get(name);
          assertThat(zone.path("area_ha").asDouble())
              .isCloseTo(was.path("area_ha").asDouble(), within(0.006));
          double mean = was.path("ece_dS_m").asDouble();
          // other points stand for a zone whose corners moved by a rounding
          assertThat(zone.path("ece_dS_m").asDouble()).isCloseTo(mean, within(0.03 * mean));
        });
    JsonNode record = JSON.readTree(temp.resolve("same/run.json").toFile());
    assertThat(record.path("finding_counts").has("ground-without-zone")).isFalse();
  }

  /** The common corner of two zones is moved, and a class swapped: area goes from one to other. */
  @Test
  void twoVerticesMovedAndAClassSwapped() throws IOException {
    Path blocks = temp.resolve("blocks.geojson");
    JsonNode fields = JSON.readTree(Path.of("sample-fields/ranch/fields.geojson").toFile());
    double[] box = box(fields, "north");
    double middle = (box[0] + box[2]) / 2;
    Files.writeString(blocks, blocks(box, middle, middle));
    Run straight = again("straight", blocks, "--set", "by-field.north.zones.by=file");
    assertThat(straight.code()).as(straight.err()).isZero();
    Map<String, JsonNode> before = zones(temp.resolve("straight"));

    double east = middle + 0.1 * (box[2] - box[0]);
    Files.writeString(blocks, blocks(box, east, east).replace("\"low\"", "\"high\""));
    Run moved = again("moved", blocks);
    assertThat(moved.code()).as(moved.err()).isZero();
    Map<String, JsonNode> after = zones(temp.resolve("moved"));
    assertThat(after.keySet()).contains("west block", "east block");
    double west = after.get("west block").path("area_ha").asDouble();
    double rest = after.get("east block").path("area_ha").asDouble();
    assertThat(west).isGreaterThan(before.get("west block").path("area_ha").asDouble() + 1);
    assertThat(west + rest)
        .isCloseTo(
            before.get("west block").path("area_ha").asDouble()
                + before.get("east block").path("area_ha").asDouble(),
            within(0.011));
    JsonNode record = JSON.readTree(temp.resolve("moved/run.json").toFile());
    JsonNode zone = null;
    double whole = 0;
    for (JsonNode z : record.path("zones")) {
      if (z.path("field").asText().equals("north")) {
        whole += z.path("area_ha").asDouble();
        zone = z.path("zone").asText().equals("west block") ? z : zone;
      }
    }
    double north = 0;
    for (JsonNode f : record.path("fields")) {
      north += f.path("field").asText().equals("north") ? f.path("area_ha").asDouble() : 0;
    }
    assertThat(whole).isCloseTo(north, within(1e-6 * north));
    assertThat(zone.path("plan").size()).isPositive();
    assertThat(zone.path("class").asText()).isNotEqualTo("high");
    assertThat(Files.readString(temp.resolve("moved/rates.csv"))).contains("west block");
  }

  private static double[] box(JsonNode fields, String name) {
    double[] box = {180, 90, -180, -90};
    for (JsonNode f : fields.path("features")) {
      if (f.path("properties").path("field").asText().equals(name)) {
        for (JsonNode c : f.path("geometry").path("coordinates").get(0)) {
          box[0] = Math.min(box[0], c.get(0).asDouble());
          box[1] = Math.min(box[1], c.get(1).asDouble());
          box[2] = Math.max(box[2], c.get(0).asDouble());
          box[3] = Math.max(box[3], c.get(1).asDouble());
        }
      }
    }
    return box;
  }

  /** Two blocks that cover a box, wider than the field, with a common line. */
  private static String blocks(double[] box, double south, double north) {
    double w = box[0] - 0.00005;
    double e = box[2] + 0.00005;
    double s = box[1] - 0.00005;
    double n = box[3] + 0.00005;
    return collection(
        feature("west block", "low", new double[][] {{w, s}, {south, s}, {north, n}, {w, n}}),
        feature("east block", "low", new double[][] {{south, s}, {e, s}, {e, n}, {north, n}}));
  }

  private static String collection(ObjectNode... features) {
    ObjectNode all = JSON.createObjectNode();
    all.put("type", "FeatureCollection");
    ArrayNode list = all.putArray("features");
    for (ObjectNode f : features) {
      list.add(f);
    }
    return all.toString();
  }

  private static ObjectNode feature(String zone, String klass, double[][] corners) {
    ObjectNode feature = JSON.createObjectNode();
    feature.put("type", "Feature");
    feature.putObject("properties").put("zone", zone).put("class", klass);
    ObjectNode geometry = feature.putObject("geometry");
    geometry.put("type", "Polygon");
    ArrayNode ring = geometry.putArray("coordinates").addArray();
    for (int i = 0; i <= corners.length; i++) {
      double[] c = corners[i % corners.length];
      ring.addArray().add(c[0]).add(c[1]);
    }
    return feature;
  }

  /** A pivot over half of north, nothing elsewhere: told by field, with the hectares. */
  @Test
  void groundInNoZoneAndZonesThatShareGround() throws IOException {
    JsonNode fields = JSON.readTree(Path.of("sample-fields/ranch/fields.geojson").toFile());
    double[] b = box(fields, "north");
    double middle = (b[0] + b[2]) / 2;
    double[][] half = {
      {b[0] - 0.00005, b[1] - 0.00005},
      {middle, b[1] - 0.00005},
      {middle, b[3] + 0.00005},
      {b[0] - 0.00005, b[3] + 0.00005}
    };
    double[][] far = {{10, 10}, {10.01, 10}, {10.01, 10.01}, {10, 10.01}};
    Path file = temp.resolve("half.geojson");
    Files.writeString(file, collection(feature("pivot", "", half), feature("away", "", far)));
    Run run = again("half", file);
    assertThat(run.code()).as(run.err()).isZero();
    JsonNode record = JSON.readTree(temp.resolve("half/run.json").toFile());
    String findings = record.path("findings").toString();
    assertThat(findings)
        .containsPattern("field north\",\"found\":\"\\d+\\.\\d\\d ha of it, \\d+ %, lie in no zone")
        .contains("no zone of the file lies in it")
        .contains("the zone 'away' lies in no mapped field");
    double pivot = zones(temp.resolve("half")).get("pivot").path("area_ha").asDouble();
    assertThat(pivot).isBetween(20.0, 40.0);

    half[1][0] = half[2][0] = middle + 0.002;
    double[][] other = {
      {middle, b[1] - 0.00005},
      {b[2] + 0.00005, b[1] - 0.00005},
      {b[2] + 0.00005, b[3] + 0.00005},
      {middle, b[3] + 0.00005}
    };
    Files.writeString(file, collection(feature("one", "", half), feature("two", "", other)));
    Run overlap = again("overlap", file);
    assertThat(overlap.code()).isEqualTo(INPUT);
    assertThat(overlap.err()).contains("ha in both 'one' and 'two'", "field north");
    assertThat(temp.resolve("overlap")).doesNotExist();
  }

  @Test
  void oneZoneAFieldAndAFileThatIsMissing() throws IOException {
    Path one = temp.resolve("one");
    Run run =
        Run.of(
            "map",
            RANCH,
            "-o",
            one,
            "--quiet",
            "--set",
            "zones.by=count",
            "--set",
            "zones.count=1");
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(zones(one).keySet()).containsExactlyInAnyOrder("north-1", "creek-1", "garden-1");
    Run none = Run.of("map", RANCH, "-o", temp.resolve("none"), "--set", "zones.by=file");
    assertThat(none.code()).isEqualTo(INPUT);
    assertThat(none.err()).contains("zones.file");
  }
}
