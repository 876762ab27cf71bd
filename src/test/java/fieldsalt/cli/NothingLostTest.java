package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is read is never overwritten, what no soil gives makes no zone. Data are invented. */
class NothingLostTest {
  private static final String TABLE =
      "id,depth,method,ec,unit\nA,0-30 cm,paste,3.1,dS/m\nB,0-30 cm,paste,4.2,dS/m\n";

  @TempDir Path temp;

  private Path table(String name) throws IOException {
    return Files.writeString(temp.resolve(name), TABLE);
  }

  @Test
  void convertDoesNotOverwriteWhatItReads() throws IOException {
    Path table = table("lab.csv");
    Run run = Run.of("convert", table, "-o", table);
    assertThat(run.code()).isEqualTo(Exit.INPUT);
    assertThat(run.err()).contains("lab.csv").contains("a file that is read as input");
    assertThat(table).hasContent(TABLE);
    Path link = Files.createSymbolicLink(temp.resolve("link.csv"), table);
    assertThat(Run.of("convert", table, "-o", link).code()).isEqualTo(Exit.INPUT);
    assertThat(Run.of("convert", table, "-o", temp.resolve("x/../lab.csv")).code()).isNotZero();
    assertThat(table).hasContent(TABLE);
  }

  @Test
  void norTheTableThatIsNamedLikeItsFactors() throws IOException {
    Path table = table("lab-factors.csv");
    Run run = Run.of("convert", table, "-o", temp.resolve("lab.csv"));
    assertThat(run.code()).isEqualTo(Exit.INPUT);
    assertThat(table).hasContent(TABLE);
    assertThat(temp.resolve("lab.csv")).doesNotExist();
  }

  private TestRanch ranch(double odd) {
    TestRanch ranch = new TestRanch(temp, "depth,method,ec,unit").field("one", 0, 400, 400);
    for (int i = 0; i < 16; i++) {
      double ec = i == 5 ? odd : 3 + 0.1 * i;
      ranch.sample(50 + 100 * (i % 4), 50 + 100 * (i / 4), "0-120 cm,paste,%s,dS/m", ec);
    }
    return ranch;
  }

  /** An output folder in which the samples lie, under a name that the map writes. */
  @Test
  void mapDoesNotOverwriteWhatItReads() throws IOException {
    ranch(3).write();
    Path out = Files.createDirectory(temp.resolve("out"));
    Path samples = out.resolve("rates.csv");
    Files.copy(temp.resolve("samples.csv"), samples);
    String before = Files.readString(samples);
    Run run =
        Run.of(
            "map",
            "--fields",
            temp.resolve("fields.geojson"),
            "--samples",
            samples,
            "--force",
            "-o",
            out);
    assertThat(run.code()).isEqualTo(Exit.INPUT);
    assertThat(run.err()).contains("a file that is read as input");
    assertThat(samples).hasContent(before);
    try (var files = Files.list(out)) {
      assertThat(files).containsExactly(samples);
    }
  }

  @Test
  void anEcBelowThatOfWaterIsLeftOut() throws IOException {
    Run run = ranch(1e-6).map("--quiet");
    assertThat(run.code()).as(run.err()).isZero();
    JsonNode record = new ObjectMapper().readTree(temp.resolve("out/run.json").toFile());
    assertThat(record.path("finding_counts").path("ec-below-water").asInt()).isEqualTo(1);
    JsonNode zones =
        new ObjectMapper().readTree(temp.resolve("out/zones.geojson").toFile()).path("features");
    assertThat(zones).isNotEmpty();
    for (JsonNode zone : zones) {
      JsonNode p = zone.path("properties");
      assertThat(p.path("ece_dS_m").asDouble())
          .isBetween(p.path("ece_low").asDouble(), p.path("ece_high").asDouble())
          .isBetween(2.0, 6.0);
    }
    Run limit =
        Run.of(
            "convert",
            Files.writeString(temp.resolve("l.csv"), TABLE + "C,0-30 cm,paste,<0.001,dS/m\n"));
    assertThat(limit.out()).contains("C,0,30");
  }

  /** A sodic field of 7 sites (a draft, for 10 are needed) beside one of 35. */
  private void sodicRanch() throws IOException {
    TestRanch ranch =
        new TestRanch(temp, "depth,method,ec,unit,sar,cec_cmol_kg")
            .field("firm", 0, 700, 400)
            .field("few", 800, 400, 200);
    for (int i = 0; i < 35; i++) {
      ranch.sample(
          50 + 100 * (i % 7), 40 + 80 * (i / 7), "0-120 cm,paste,%s,dS/m,28,22", 3 + 0.05 * i);
    }
    for (int i = 0; i < 7; i++) {
      ranch.sample(830 + 50 * i, 50 + 100 * (i % 2), "0-120 cm,paste,%s,dS/m,28,22", 3 + 0.2 * i);
    }
    ranch.write();
  }

  private Run mapSodic(String more) throws IOException {
    sodicRanch();
    Path job = temp.resolve("job.yaml");
    Files.writeString(
        job,
        "ranch: Draft\nfields: fields.geojson\nsamples: samples.csv\ndrainage: good\n"
            + "root-zone-cm: {cotton: 120}\ncrop: cotton\n"
            + more);
    return Run.of("map", job, "-o", temp.resolve("out"));
  }

  private String taskData() throws IOException {
    try (ZipFile zip = new ZipFile(temp.resolve("out/TASKDATA.zip").toFile())) {
      return new String(
          zip.getInputStream(zip.getEntry("TASKDATA/TASKDATA.XML")).readAllBytes(),
          StandardCharsets.UTF_8);
    }
  }

  @Test
  void aDraftReachesNoMachine() throws IOException {
    Run run = mapSodic("");
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(taskData()).contains("<TSK A=\"TSK1\" B=\"firm\"").doesNotContain("TSK2");
    assertThat(run.err())
        .contains("draft-not-on-machine")
        .contains("field few: the plan is a draft. its zones are in no task of TASKDATA.zip");
    assertThat(Files.readString(temp.resolve("out/report.html")))
        .contains("Its zones are in no task of TASKDATA.zip");
    for (String line : Files.readAllLines(temp.resolve("out/rates.csv"))) {
      if (line.startsWith("few,")) {
        assertThat(line).endsWith(",yes");
      } else if (line.startsWith("firm,")) {
        assertThat(line).endsWith(",no");
      }
    }
  }

  @Test
  void unlessTheUserWantsThem() throws IOException {
    Run run = mapSodic("machine: {drafts: yes}\n");
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(taskData()).contains("B=\"firm\"").contains("B=\"DRAFT few\"");
    assertThat(run.err()).doesNotContain("draft-not-on-machine");
  }
}
