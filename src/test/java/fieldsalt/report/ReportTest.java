package fieldsalt.report;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.quantity.UnitSystem;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;

/** What the page holds, read as text. */
class ReportTest {
  private final PageFixture fixture = new PageFixture();

  private String html() {
    return Report.html(fixture.input());
  }

  static String plain(String html) {
    return html.replaceAll("(?s)<style>.*?</style>", "")
        .replaceAll("(?s)<(title|svg)\\b.*?</\\1>", "")
        .replaceAll("<[^>]+>", "")
        .replace("&#39;", "'")
        .replace('\u00a0', ' ')
        .replaceAll("\\s+", " ");
  }

  @Test
  void pageIsOneDocumentWithoutNetworkOrScript() throws IOException {
    String html = html();
    Path kept = Files.createDirectories(Path.of("target/pages")).resolve("fixture.html");
    Files.writeString(kept, html, StandardCharsets.UTF_8);
    String policy = "<meta http-equiv=\"Content-Security-Policy\" content=\"";
    assertThat(html)
        .startsWith("<!DOCTYPE html>")
        .contains(policy)
        .contains("script-src &#39;none&#39;");
    assertThat(html.replace("http-equiv", "")).doesNotContain("<script", "http", "@import");
    assertThat(html.getBytes(StandardCharsets.UTF_8)).hasSizeLessThan(600_000);
  }

  @Test
  void everyElementCloses() throws Exception {
    Document page =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(
                new InputSource(
                    new java.io.StringReader(html().replaceFirst("<!DOCTYPE html>", ""))));
    assertThat(page.getElementsByTagName("section").getLength()).isEqualTo(8);
    assertThat(page.getElementsByTagName("caption").getLength())
        .isEqualTo(page.getElementsByTagName("table").getLength());
  }

  @Test
  void summaryIsThreeSentences() {
    String text = plain(html());
    assertThat(text)
        .contains("ha are likely saltier than the crop stands without loss; the worst is zone")
        .contains("What to do: leach once, then keep the leaching fraction on")
        .contains("right to within a factor of 1.5 and explains 62 % of how such places differ")
        .contains("(tested on 76 sample sites")
        .contains("Most would be learnt from: saturated paste of the stored sample N07.");
  }

  @Test
  void everyZoneSaysWhatWhyCostAndHowSure() {
    Matcher rows = Pattern.compile("(?s)<tr id=\"zone-\\d+\".*?</tr>").matcher(html());
    int count = 0;
    while (rows.find()) {
      assertThat(rows.group())
          .contains("data-column=\"What to do\"", "data-column=\"Why\"")
          .contains("data-column=\"What it takes\"", "data-column=\"How sure\"");
      count++;
    }
    assertThat(count).isEqualTo(fixture.input().zones().size());
  }

  @Test
  void draftsSayWhatLiftsThem() {
    assertThat(plain(html()))
        .contains("Draft: do not act yet on the plan of")
        .contains("Draft. Gypsum, then leach")
        .contains("To lift the draft mark: two more SAR samples in this zone.");
  }

  @Test
  void moreOnEachZoneHasStepsStoryAmountsAndCautions() {
    assertThat(plain(html()))
        .contains("More on each zone")
        .contains("Gypsum worked in")
        .contains("Sodium closes the soil.")
        .contains("Water through the soil180 (120 to 260) mm".replace("soil180", "soil 180"))
        .contains("Boron and chloride were not measured here.");
  }

  @Test
  void legendNamesSchemesUnitsAndSigns() {
    assertThat(plain(html()))
        .contains("Alfalfa / lucerne, yield steps")
        .contains("Barley (grain), yield steps")
        .contains("ECe below 2.0 dS/m")
        .contains("site with a saturated paste")
        .contains("hatched: nobody can say yet whether ECe is above what the crop stands");
  }

  @Test
  void usUnitsThroughout() {
    fixture.units = UnitSystem.US;
    String html = html();
    assertThat(plain(html)).contains("acres").doesNotContain(" ha ");
    assertThat(html).containsPattern(">\\d[\\d,]* ft</text>").doesNotContain(" m</text>");
  }

  @Test
  void aMapNoBetterThanTheMeanSaysSo() {
    fixture.chosen = fieldsalt.surface.fit.SurfaceMethod.MEAN;
    String html = html();
    assertThat(plain(html))
        .contains("The samples show how much salt there is, not where it is")
        .contains("Treat each field alike")
        .contains("do not vary rates by place");
    assertThat(html).doesNotContain("The surface behind the zones", "the worst is zone");
  }

  @Test
  void readingsShowFactorsBeforeAndAfterPairsWithCitation() {
    assertThat(plain(html()))
        .contains("9.5 (6.6 to 13.6)")
        .contains("8.1 (7.3 to 8.9)")
        .contains("no pair: as published")
        .contains("Slavich P.G., Petterson G.H. 1993");
    assertThat(html()).contains("class=\"band prior\"", "class=\"band posterior\"", "dot odd");
  }

  @Test
  void findingsAreGroupedAndCounted() {
    fixture.findings.add(
        new fieldsalt.finding.Finding(
            fieldsalt.finding.Code.UNIT_SLIP,
            fieldsalt.finding.Place.file("samples.csv row 7"),
            "EC 300 dS/m",
            "left out"));
    assertThat(plain(html())).contains("Findings (6)").contains("Unit slip × 2");
  }

  @Test
  void theSurveyIsAccountedFor() {
    assertThat(plain(html()))
        .contains("(4,047 readings) was read and checked; it does not steer the map.");
  }

  @Test
  void sameInputSameBytes() {
    assertThat(html()).isEqualTo(Report.html(new PageFixture().input()));
  }
}
