package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Two fields whose paste column was calculated from the 1:5 column beside it: both plans are
 * drafts, whether the rows stand in one file or two, and however the laboratory is spelt. Invented.
 */
class CalculatedPasteDraftTest {
  private static final String HEADER = "id,lon,lat,depth,lab,method,ec,unit\n";

  @TempDir Path temp;

  private Map<String, Boolean> drafts(String secondLaboratory, boolean twoFiles)
      throws IOException {
    TestRanch ranch =
        new TestRanch(temp, "depth,lab,method,ec,unit")
            .field("east", 0, 400, 400)
            .field("west", 1000, 400, 400);
    for (int i = 0; i < 24; i++) {
      double cheap = 0.4 + 0.05 * i;
      String laboratory = i < 12 ? "Valley Lab" : secondLaboratory;
      double x = (i < 12 ? 0 : 1000) + 50 + 100 * (i % 4);
      double y = 50 + 100 * (i % 12 / 4);
      ranch.sample(x, y, "0-120 cm,%s,1:5,%.2f,dS/m", laboratory, cheap);
      ranch.sample(x, y, "0-120 cm,%s,paste,%.3f,dS/m", laboratory, 7.5 * cheap);
    }
    ranch.write();
    Path samples = temp.resolve("samples.csv");
    // the two readings of a site share its id
    StringBuilder one = new StringBuilder(HEADER);
    StringBuilder two = new StringBuilder(HEADER);
    int n = 0;
    for (String line : Files.readAllLines(samples).subList(1, 49)) {
      String named = String.format(java.util.Locale.ROOT, "P%02d", n / 2) + line.substring(4);
      (twoFiles && n >= 24 ? two : one).append(named).append('\n');
      n++;
    }
    Files.writeString(temp.resolve("one.csv"), one);
    Files.writeString(temp.resolve("two.csv"), two);
    Path job = temp.resolve("job.yaml");
    Files.writeString(
        job,
        "fields: fields.geojson\ndrainage: good\nsamples: "
            + (twoFiles ? "[one.csv, two.csv]" : "one.csv")
            + "\n");
    Run run = Run.of("map", job, "-o", temp.resolve("out"), "--quiet");
    assertThat(run.code()).as(run.err()).isZero();
    Map<String, Boolean> drafts = new TreeMap<>();
    for (JsonNode f :
        new ObjectMapper().readTree(temp.resolve("out/run.json").toFile()).path("findings")) {
      if (f.path("code").asText().equals("draft-calculated-ece")) {
        drafts.put(f.path("where").asText(), true);
      }
    }
    return drafts;
  }

  @Test
  void oneFile() throws IOException {
    assertThat(drafts("Valley Lab", false)).containsOnlyKeys("field east", "field west");
  }

  @Test
  void twoFiles() throws IOException {
    assertThat(drafts("Valley Lab", true)).containsOnlyKeys("field east", "field west");
  }

  @Test
  void twoSpellings() throws IOException {
    assertThat(drafts("valley  LAB", false)).containsOnlyKeys("field east", "field west");
    assertThat(drafts("VALLEY LAB", true)).containsOnlyKeys("field east", "field west");
  }
}
