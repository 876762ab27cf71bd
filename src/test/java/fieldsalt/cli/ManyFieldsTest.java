package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A ranch of many fields has an overview and a page for each field. Invented. */
class ManyFieldsTest {
  @TempDir Path temp;

  private Path ranch(int fields) throws IOException {
    TestRanch ranch = new TestRanch(temp, "depth,lab,method,ec,unit");
    for (int f = 0; f < fields; f++) {
      ranch.field("block " + f, 500.0 * f, 300, 300);
      for (int i = 0; i < 4; i++) {
        double x = 500.0 * f + 60 + 180 * (i % 2);
        double y = i < 2 ? 60 : 240;
        ranch.sample(x, y, "0-100 cm,Valley Lab,paste,%.2f,dS/m", 2.0 + f % 5 + i);
      }
    }
    ranch.write();
    Path job = temp.resolve("many.yaml");
    Files.writeString(
        job, "fields: fields.geojson\nsamples: samples.csv\ncrop: cotton\ncell-m: 10\n");
    Path out = temp.resolve("out");
    Run run = Run.of("map", job, "-o", out, "--quiet");
    assertThat(run.code()).as(run.err()).isZero();
    return out;
  }

  @Test
  void theOverviewLeadsToAPageForEachField() throws IOException {
    Path out = ranch(17);
    String overview = Files.readString(out.resolve("report.html"));
    Matcher links = Pattern.compile("href=\"(fields/[a-z0-9-]+\\.html)\"").matcher(overview);
    List<String> pages = new ArrayList<>();
    while (links.find()) {
      if (!pages.contains(links.group(1))) {
        pages.add(links.group(1));
      }
    }
    assertThat(pages).hasSize(17).contains("fields/block-3.html");
    assertThat(overview).doesNotContain("block 3-1");
    Matcher hash = Pattern.compile("script-src &#39;sha256-([^&]+)&#39;").matcher(overview);
    assertThat(hash.find()).isTrue();
    int script = overview.indexOf("<script>") + "<script>".length();
    String text = overview.substring(script, overview.indexOf("</script>"));
    assertThat(hash.group(1))
        .as("the policy lets this script run and no other")
        .isEqualTo(sha256(text));
    String page = Files.readString(out.resolve("fields/block-3.html"));
    assertThat(page).contains("block 3-1").contains("../report.html").doesNotContain("block 4-1");
    JsonNode record = new ObjectMapper().readTree(out.resolve("run.json").toFile());
    assertThat(record.path("files").toString()).contains("\"fields/block-3.html\"");
    long sites =
        page.lines()
            .flatMap(l -> Pattern.compile("<circle[^>]*class=\"site").matcher(l).results())
            .count();
    assertThat(sites).as("4 sites on each of two maps, 2 in the legend").isEqualTo(10);
  }

  private static String sha256(String text) {
    try {
      byte[] digest =
          java.security.MessageDigest.getInstance("SHA-256")
              .digest(text.getBytes(java.nio.charset.StandardCharsets.UTF_8));
      return java.util.Base64.getEncoder().encodeToString(digest);
    } catch (java.security.NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  /** A second run replaces the pages, and one of fewer fields takes them away. */
  @Test
  void pagesOfAnEarlierRunGo() throws IOException {
    ranch(17);
    Path out = ranch(17);
    assertThat(out.resolve("fields/block-16.html")).exists();
    ranch(3);
    assertThat(out.resolve("fields")).doesNotExist();
    assertThat(Files.readString(out.resolve("report.html"))).contains("block 2-1");
  }

  /** The row of a field holds the tonnes and water that its own page and the files hold. */
  @Test
  void theTableHoldsWhatTheRatesAddUpTo() throws IOException {
    Path out = ranch(17);
    JsonNode zones =
        new ObjectMapper().readTree(out.resolve("zones.geojson").toFile()).path("features");
    double hectares = 0;
    for (JsonNode zone : zones) {
      if (zone.path("properties").path("field").asText().equals("block 4")) {
        hectares += zone.path("properties").path("area_ha").asDouble();
      }
    }
    String overview = Files.readString(out.resolve("report.html"));
    String row = overview.substring(overview.indexOf("<tr", overview.indexOf("<tbody")));
    row = row.substring(row.indexOf("block 4<"));
    Matcher area = Pattern.compile("data-value=\"([0-9.E-]+)\"").matcher(row);
    assertThat(area.find()).isTrue();
    assertThat(Double.parseDouble(area.group(1))).isBetween(hectares - 0.01, hectares + 0.01);
  }
}
