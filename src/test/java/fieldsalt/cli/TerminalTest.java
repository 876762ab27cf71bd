package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the terminal says of small ranches, which are invented. */
class TerminalTest {
  private static final String COLUMNS = "depth,method,ec,unit,date";

  @TempDir Path temp;

  private static void lattice(TestRanch ranch, double east, double first, String date) {
    for (int i = 0; i < 12; i++) {
      ranch.sample(
          east + 50 + 100 * (i % 4),
          50 + 100 * Math.floorDiv(i, 4),
          "0-100 cm,paste,%.2f,dS/m,%s",
          first + 0.5 * i,
          date);
    }
  }

  /** Readings of an older campaign and of a field that is left out are no readings used. */
  @Test
  void onlyWhatIsMappedIsCountedAsUsed() throws IOException {
    TestRanch ranch =
        new TestRanch(temp, COLUMNS).field("a", 0, 400, 300).field("b", 600, 400, 300);
    lattice(ranch, 0, 2, "2024-03-01");
    lattice(ranch, 0, 2, "2025-03-01");
    ranch.sample(700, 50, "0-100 cm,paste,3,dS/m,2025-03-01");
    Run run = ranch.map();
    assertThat(run.code()).isEqualTo(4);
    assertThat(run.out()).startsWith("12 sites used (12 readings) in 1 field\n");
    assertThat(run.err()).contains("campaign: all");
  }

  @Test
  void classesCutByNumberHaveTheirUnitAndStandOnceInTheLegend() throws IOException {
    TestRanch ranch = new TestRanch(temp, COLUMNS).field("a", 0, 400, 300);
    lattice(ranch, 0, 2, "2025-03-01");
    Run run = ranch.map("--set", "zones.by=count", "--set", "zones.count=2");
    List<String> lines = run.out().lines().toList();
    assertThat(lines.get(2)).matches("a: [0-9.]+ ha below [0-9.]+ dS/m, .* dS/m and above");
    String page = Files.readString(temp.resolve("out/report.html"));
    assertThat(page).containsPattern("below [0-9.]+ dS/m</span>");
    assertThat(page).doesNotContainPattern("below [0-9.]+ dS/m: ");
  }

  @Test
  void eachFieldHasALine() throws IOException {
    TestRanch ranch =
        new TestRanch(temp, COLUMNS).field("a", 0, 400, 300).field("b", 600, 400, 300);
    lattice(ranch, 0, 2, "");
    lattice(ranch, 600, 5, "");
    assertThat(ranch.map().out().lines().map(l -> l.substring(0, 2))).contains("a:", "b:");
  }

  /** A corner of the field, given to 1e-8 degrees, is on its border. */
  @Test
  void aSiteOnTheBorderIsInside() throws IOException {
    TestRanch ranch = new TestRanch(temp, COLUMNS).field("a", 0, 400, 300).field("c", 600, 50, 50);
    lattice(ranch, 0, 2, "");
    ranch.sample(0, 0, "0-100 cm,paste,3,dS/m,");
    ranch.sample(400, 150, "0-100 cm,paste,3,dS/m,");
    ranch.sample(-1, 150, "0-100 cm,paste,3,dS/m,");
    Run run = ranch.map();
    assertThat(run.err()).containsOnlyOnce("outside the field a").contains("1.0 m outside");
    assertThat(run.err())
        .containsOnlyOnce("field c: no site")
        .doesNotContain("no site in the field");
  }

  @Test
  void equalReadingsAreNotCalledATrend() throws IOException {
    TestRanch ranch = new TestRanch(temp, COLUMNS).field("a", 0, 400, 300);
    for (int i = 0; i < 12; i++) {
      ranch.sample(50 + 100 * (i % 4), 50 + 100 * Math.floorDiv(i, 4), "0-100 cm,paste,4,dS/m,");
    }
    Run run = ranch.map();
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.err()).doesNotContain("the readings show a trend");
  }

  @Test
  void fewSitesAreToldWhatLiftsTheDraft() throws IOException {
    TestRanch ranch = new TestRanch(temp, COLUMNS).field("a", 0, 400, 300);
    for (int i = 0; i < 5; i++) {
      ranch.sample(50 + 70 * i, 50 + 40 * i, "0-100 cm,paste,%d,dS/m,", 2 + i);
    }
    assertThat(ranch.map().err()).contains("to lift it: sample at least 10 places on the ranch");
  }

  /** Boundaries with latitude first hold as likely the mistake as the samples do. */
  @Test
  void swappedBoundariesAreNotBlamedOnTheSamples() throws IOException {
    Path fields = temp.resolve("swapped.geojson");
    Files.writeString(
        fields,
        """
        {"type":"Polygon","coordinates":[[[30,-55],[30.01,-55],[30.01,-54.99],[30,-54.99],[30,-55]]]}
        """);
    Files.writeString(
        temp.resolve("s.csv"),
        "id,lon,lat,method,ec,unit\nA,-54.995,30.004,paste,3,dS/m\nB,-54.996,30.005,paste,3,dS/m\n");
    Run run = Run.of("map", "--fields", fields, "--samples", temp.resolve("s.csv"));
    assertThat(run.code()).isEqualTo(3);
    assertThat(run.err()).contains("look swapped, here or in the boundaries");
  }

  /** Sodium between the gates on sealing water: the table says why a strip is to be tried. */
  @Test
  void aStripIsOfGypsumAndHasAReasonAndAnAmount() throws IOException {
    assertThat(pageAtSar(12))
        .contains(
            "ry gypsum on a strip", "Not too salty for the crop, but sodium may seal the soil")
        .doesNotContain("Nothing asks for treatment");
    // ESP below the target: no amount follows, so no strip is asked for
    assertThat(pageAtSar(8))
        .contains(
            "watch the infiltration", "Not too salty for the crop, but sodium may seal the soil")
        .doesNotContain("ry gypsum on a strip", "Nothing asks for treatment");
  }

  private String pageAtSar(int sar) throws IOException {
    TestRanch ranch = new TestRanch(temp, COLUMNS + ",sar").field("a", 0, 400, 300);
    for (int i = 0; i < 12; i++) {
      ranch.sample(
          50 + 100 * (i % 4), 50 + 100 * Math.floorDiv(i, 4), "0-100 cm,paste,1.5,dS/m,," + sar);
    }
    Run run = ranch.map("--set", "water.ec-dS-m=0.3", "--set", "water.sar=4", "--crop", "cotton");
    assertThat(run.code()).as(run.err()).isZero();
    return Files.readString(temp.resolve("out/report.html"));
  }

  /** Readings as their own survey would predict themselves without any error. */
  @Test
  void theSamplesAreNoSurvey() throws IOException {
    TestRanch ranch = new TestRanch(temp, COLUMNS).field("a", 0, 400, 300);
    lattice(ranch, 0, 2, "");
    Run run = ranch.map("--survey", temp.resolve("samples.csv"));
    assertThat(run.code()).isEqualTo(3);
    assertThat(run.err()).contains("which is the samples file");
  }

  @Test
  void aSurveyWithGapsIsLeftAsideWithTheWayOut() throws IOException {
    TestRanch ranch = new TestRanch(temp, COLUMNS).field("a", 0, 400, 300);
    lattice(ranch, 0, 2, "");
    StringBuilder survey = new StringBuilder("lon,lat,eca_mS_m\n");
    for (int i = 0; i < 100; i++) {
      double[] p =
          TestRanch.UTM.toLonLat(TestRanch.WEST + 10 * (i % 10), TestRanch.SOUTH + 30 * (i / 10));
      survey.append(String.format(Locale.ROOT, "%.7f,%.7f,%d%n", p[0], p[1], 50 + i));
    }
    Path file = Files.writeString(temp.resolve("eca.csv"), survey);
    assertThat(ranch.map("--survey", file).err())
        .contains("drift-not-used")
        .contains("fill the gaps");
  }

  @Test
  void breaksOfAnotherPropertyHaveItsUnit() throws IOException {
    TestRanch ranch = new TestRanch(temp, COLUMNS + ",clay_pct").field("a", 0, 400, 300);
    for (int i = 0; i < 12; i++) {
      ranch.sample(
          50 + 100 * (i % 4),
          50 + 100 * Math.floorDiv(i, 4),
          "0-100 cm,paste,3,dS/m,,%d",
          10 + 2 * i);
    }
    Run run =
        ranch.map(
            "--set", "property.column=clay_pct",
            "--set", "property.unit=%",
            "--set", "property.scale=natural",
            "--set", "zones.by=breaks",
            "--set", "zones.breaks=20");
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out()).contains(" ha below 20 %").doesNotContain("20 dS/m");
  }
}
