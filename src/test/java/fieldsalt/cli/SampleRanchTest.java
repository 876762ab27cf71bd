package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The invented sample ranch through the command line, from job file to page. */
class SampleRanchTest {
  private static final Path SMALL = Path.of("sample-fields/small/job.yaml");
  private static final Path JOB = Path.of("sample-fields/ranch/job.yaml");

  @TempDir static Path temp;
  private static Path folder;
  private static Run run;

  @BeforeAll
  static void mapOnce() {
    folder = temp.resolve("ranch");
    run = Run.of("map", JOB, "-o", folder);
  }

  @Test
  void endsWellAndTellsALineForEachFieldAndWhereToLook() {
    assertThat(run.code()).as(run.err()).isZero();
    List<String> lines = run.out().lines().toList();
    assertThat(lines).hasSize(6);
    assertThat(lines.get(0)).startsWith("76 sites used").endsWith("in 3 fields");
    assertThat(lines.get(1))
        .contains("steered by ECa survey: creek, north")
        .containsPattern("typically within a factor of 1\\.\\d at unseen sites, explains \\d\\d %");
    assertThat(lines.get(2)).startsWith("north: ").contains(" ha ");
    assertThat(lines.get(4)).startsWith("garden: ");
    assertThat(lines.get(5)).isEqualTo("Open " + folder.resolve("report.html"));
  }

  @Test
  void writesEveryFile() {
    assertThat(folder.toFile().list())
        .contains(
            "zones.geojson",
            "samples.geojson",
            "ece.tif",
            "ece-error.tif",
            "p-above.tif",
            "fieldsalt.gpkg",
            "zones.shp",
            "zones.shx",
            "zones.dbf",
            "zones.prj",
            "zones.cpg",
            "zones.sld",
            "ece.sld",
            "ece-error.sld",
            "p-above.sld",
            "TASKDATA.zip",
            "rates.csv",
            "rates.geojson",
            "rates.shp",
            "rates.prj",
            "crops.csv",
            "next.csv",
            "report.html",
            "run.json");
  }

  @Test
  void everyBlemishHasItsFindingInCheckAndInTheRecordAndOnThePage() throws IOException {
    Run check = Run.of("check", JOB);
    String page = Files.readString(folder.resolve("report.html"));
    String record = Files.readString(folder.resolve("run.json"));
    for (String code :
        List.of("duplicate-row", "unit-missing", "near-field", "unit-slip", "no-reading")) {
      assertThat(check.err()).contains(code + " (1)");
      assertThat(record).contains("\"" + code + "\"");
    }
    assertThat(page).contains("4000 dS/m").contains("3.0 m outside").contains("ND");
    assertThat(check.code()).isZero();
  }

  @Test
  void zonesCarryTheFiguresOfTheContract() throws IOException {
    JsonNode zones = new ObjectMapper().readTree(folder.resolve("zones.geojson").toFile());
    assertThat(zones.path("features").size()).isGreaterThanOrEqualTo(3);
    for (JsonNode zone : zones.path("features")) {
      JsonNode p = zone.path("properties");
      for (String name :
          List.of("ece_dS_m", "ece_low", "ece_high", "p_above", "yield_pct", "area_ha")) {
        assertThat(p.path(name).isNumber()).as(name + " of " + p).isTrue();
      }
      assertThat(p.path("ece_low").asDouble()).isLessThan(p.path("ece_dS_m").asDouble());
      assertThat(p.path("ece_high").asDouble()).isGreaterThan(p.path("ece_dS_m").asDouble());
      assertThat(p.path("p_above").asDouble()).isBetween(0.0, 1.0);
    }
  }

  @Test
  void cropsAreComparedZoneByZoneLargestYieldFirst() throws IOException {
    List<String> lines = Files.readAllLines(folder.resolve("crops.csv"));
    assertThat(lines).hasSize(13); // twelve common crops
    assertThat(lines.get(0))
        .startsWith("crop,ranch_yield_pct,north-1_yield_pct")
        .endsWith("source,confidence");
    assertThat(lines.get(1)).doesNotStartWith("Alfalfa");
    double last = 100;
    for (String line : lines.subList(1, lines.size())) {
      String name =
          line.startsWith("\"") ? line.substring(0, line.indexOf('"', 1) + 1) : line.split(",")[0];
      double ranch = Double.parseDouble(line.substring(name.length() + 1).split(",")[0]);
      assertThat(ranch).isBetween(0.0, last);
      last = ranch;
    }
  }

  @Test
  void sameInputGivesTheSameBytes() throws IOException {
    Path again = temp.resolve("again");
    assertThat(Run.of("map", JOB, "-o", again, "--quiet").code()).isZero();
    assertThat(contents(again)).isEqualTo(contents(folder));
  }

  private static java.util.Map<String, Integer> contents(Path dir) throws IOException {
    TreeMap<String, Integer> contents = new TreeMap<>();
    try (Stream<Path> files = Files.list(dir)) {
      for (Path file : files.toList()) {
        contents.put(
            file.getFileName().toString(), java.util.Arrays.hashCode(Files.readAllBytes(file)));
      }
    }
    return contents;
  }

  @Test
  void strictTurnsFindingsIntoAFailureAndWritesNothing() {
    Path strict = temp.resolve("strict");
    Run refused = Run.of("map", JOB, "-o", strict, "--strict");
    assertThat(refused.code()).isEqualTo(Exit.INPUT);
    assertThat(refused.err()).contains("--strict").contains("findings");
    assertThat(strict).doesNotExist();
  }

  @Test
  void unitsOfTheUnitedStates() {
    Run us = Run.of("map", SMALL, "-o", temp.resolve("us"), "--set", "units=us", "--quiet");
    assertThat(us.code()).isZero();
    assertThat(us.out()).contains(" acres ").doesNotContain(" ha ");
  }

  @Test
  void theLeastThatIsNeeded() {
    Path small = temp.resolve("small");
    Run run = Run.of("map", "sample-fields/small/job.yaml", "-o", small);
    assertThat(run.code()).isZero();
    assertThat(small.resolve("zones.geojson")).exists();
  }

  @Test
  void flagsAloneWillDo() {
    Path flags = temp.resolve("flags");
    Run run =
        Run.of(
            "map",
            "--fields",
            "sample-fields/small/fields.geojson",
            "--samples",
            "sample-fields/small/samples.geojson",
            "--set",
            "defaults.method=paste",
            "-o",
            flags);
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(flags.resolve("report.html")).exists();
  }
}
