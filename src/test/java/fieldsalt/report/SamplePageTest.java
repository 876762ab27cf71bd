package fieldsalt.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import fieldsalt.pipeline.MapRun;
import fieldsalt.read.job.JobDocument;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page of the sample ranch, made by all stages, in US units as its reader would have it. */
class SamplePageTest {
  @TempDir static Path folder;
  private static String html;
  private static String text;
  private static JsonNode run;

  @BeforeAll
  static void map() throws IOException {
    Path out = folder.resolve("out");
    JobDocument job =
        JobDocument.read(Path.of("sample-fields/ranch/job.yaml"), List.of("units=us"));
    MapRun mapping = MapRun.prepare(job, out, false, (stage, share) -> {});
    mapping.compute();
    mapping.write("0.1.0", Optional.empty());
    html = Files.readString(out.resolve("report.html"));
    text = ReportTest.plain(html);
    run = new ObjectMapper().readTree(out.resolve("run.json").toFile());
    Files.createDirectories(Path.of("target/pages"));
    Files.writeString(Path.of("target/pages/sample.html"), html);
  }

  @Test
  void aLineForEachZoneSaysWhatWhyWhatItTakesAndHowSure() {
    Matcher rows = Pattern.compile("(?s)<tr id=\"zone-\\d+\".*?</tr>").matcher(html);
    int count = 0;
    while (rows.find()) {
      String row = ReportTest.plain(rows.group());
      assertThat(row).contains("Chance that").containsPattern("ECe [\\d.]+").contains("acres");
      assertThat(row.length()).as("short enough for one screen: " + row).isLessThan(420);
      count++;
    }
    assertThat(count).isEqualTo(run.at("/zones").size()).isGreaterThan(6);
  }

  @Test
  void usUnitsThroughout() {
    assertThat(text.substring(0, text.indexOf("What stood in the files")))
        .contains("tons/acre", "acre-feet")
        .doesNotContainPattern("\\d\\s(ha|mm|m³|t/ha|cm)\\b");
  }

  @Test
  void leachingRequirementIsToldOnceAFieldAndSodiumComesBeforeLeaching() {
    assertThat(text).contains("Every season").contains("Gypsum, then");
    assertThat(text).doesNotContain("Leach, then gypsum");
  }

  @Test
  void cautionsStandBeforeTheFirstZone() {
    int firstZone = html.indexOf("<tr id=\"zone-1\"");
    assertThat(html.indexOf("licensed adviser")).isPositive().isLessThan(firstZone);
    assertThat(html.indexOf("Boron was not measured")).isPositive().isLessThan(firstZone);
  }

  @Test
  void theSmallFieldIsADraftAndSaysWhatLiftsIt() {
    assertThat(text)
        .contains("Draft: do not act on it yet. What would lift the mark")
        .contains("only 7 sites stand behind the map: sample at least 10 sites");
  }

  @Test
  void totalsComparisonAndCropsAreThere() {
    assertThat(text)
        .contains("The plan in total")
        .contains("One rate over the field, or a rate by zone")
        .contains("What else could grow")
        .contains("Wheatgrass, tall");
  }

  @Test
  void theRunRecordHoldsThePlanAndTheEffectiveJob() {
    assertThat(run.at("/job").size()).isGreaterThan(10);
    assertThat(run.at("/zones/0/plan/first_step").asText()).isNotBlank();
    assertThat(run.at("/inputs_sha256/samples.csv").asText()).hasSize(64);
    assertThat(run.at("/stamp").isMissingNode()).isTrue();
    assertThat(run.at("/plan/planned_t").asDouble()).isPositive();
  }

  @Test
  void noSentenceIsBroken() {
    assertThat(text)
        .doesNotContain(
            "NaN", "null", "Infinity", "Optional", "{0}", "{1}", "..", " ,", "unknown ha");
  }

  @Test
  void theSurveyIsReadCheckedAndDrawn() {
    assertThat(text)
        .contains("(6,409 readings)")
        .contains("It shows salt, clay and water together");
    assertThat(html).contains("aria-label=\"Apparent conductivity of fields north, creek\"");
  }

  @Test
  void whatToMeasureNextIsAListWithPlacesOnTheMap() {
    int next = run.at("/surface/next").size();
    assertThat(next).isEqualTo(10);
    int doubtful = 0;
    for (JsonNode n : run.at("/surface/next")) {
      doubtful += n.path("kind").asText().equals("DOUBTFUL_AGAIN") ? 1 : 0;
    }
    assertThat(doubtful).isPositive();
    // a reading in doubt has its ring and no triangle over it
    assertThat(html.split("<title>Measure next, ", -1)).hasSize(next - doubtful + 1);
    assertThat(text).contains("What to measure next").contains("measure next");
  }

  @Test
  void theFitIsPlottedAndItsFiguresAreThere() {
    assertThat(html).contains("<title>Sample variogram and fitted model</title>");
    assertThat(html).contains("<title>Share of left-out sites held by intervals of 5 to 95");
    assertThat(text).contains("More figures of the method used").contains("ln ECe");
    assertThat(run.at("/surface/accuracy").size()).isEqualTo(19);
    assertThat(run.at("/surface/sample_variogram").size()).isGreaterThan(5);
  }

  @Test
  void everyKindOfReadingIsAccountedFor() {
    assertThat(text)
        .contains("Lab A, 1:5")
        .contains("Lab A, 1:1 extract")
        .contains("Lab B, saturated paste");
  }

  @Test
  void withPricesWhatIsPlannedHasItsCostAndItsOddsAndNothingElseHas() throws IOException {
    Path out = folder.resolve("priced");
    JobDocument job =
        JobDocument.read(
            Path.of("sample-fields/ranch/job.yaml"),
            List.of(
                "prices.gypsum-per-t=60",
                "prices.water-per-m3=0.04",
                "prices.crop-per-ha=3200",
                "prices.sodium-loss-pct-per-esp=1.5"));
    MapRun mapping = MapRun.prepare(job, out, false, (stage, share) -> {});
    mapping.compute();
    mapping.write("0.1.0", Optional.empty());
    int priced = 0;
    for (String line : Files.readAllLines(out.resolve("rates.csv")).stream().skip(1).toList()) {
      String[] cells = line.split(",", -1);
      boolean treats = Integer.parseInt(cells[4]) > 0 || Double.parseDouble(cells[10]) > 0;
      assertThat(Double.parseDouble(cells[11]) > 0).as(line).isEqualTo(treats);
      priced += treats ? 1 : 0;
    }
    assertThat(priced).isPositive();
    assertThat(ReportTest.plain(Files.readString(out.resolve("report.html"))))
        .contains(
            "gypsum costs", "leaching costs", "leaching pays back", "At your prices the plan");
  }
}
