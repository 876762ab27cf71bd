package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The mean of a polygon and its error do not depend on the cell size of the map. One class over the
 * whole field makes the field itself the zone, whatever the cells are.
 */
class FixedPolygonTest {
  private static final String[] FIGURES = {"ece_dS_m", "ece_low", "ece_high", "p_above"};
  @TempDir Path temp;

  @BeforeEach
  void ranch() throws IOException {
    Files.writeString(
        temp.resolve("fields.geojson"),
        "{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\",\"properties\":"
            + "{\"field\":\"bend\"},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":"
            + "[[[3,7],[803,51],[787,423],[409,377],[391,611],[17,593],[3,7]]]}}]}");
    StringBuilder rows = new StringBuilder("id,x,y,method,ec,unit\n");
    Random random = new Random(5);
    for (int i = 0; i < 40; i++) {
      double x = 20 + 360 * random.nextDouble() + (i % 2 == 0 ? 0 : 380);
      double y = 30 + 330 * random.nextDouble() + (i % 4 == 0 ? 200 : 0);
      double ece = Math.exp(1.2 + 0.7 * Math.sin(x / 130) + 0.2 * random.nextGaussian());
      rows.append(
          String.format(Locale.ROOT, "S%02d,%.1f,%.1f,paste,%.3f,dS/m%n", i, x, y * 0.95, ece));
    }
    Files.writeString(temp.resolve("samples.csv"), rows);
    Files.writeString(
        temp.resolve("job.yaml"),
        """
        fields: fields.geojson
        samples: samples.csv
        crs: local
        zones: {by: breaks, breaks: [1000], min-width-m: 60}
        """);
  }

  private JsonNode zone(double cellM) throws IOException {
    Path out = temp.resolve("out" + cellM);
    Run run = Run.of("map", temp.resolve("job.yaml"), "-o", out, "--set", "cell-m=" + cellM);
    assertThat(run.code()).as(run.err()).isZero();
    JsonNode zones = new ObjectMapper().readTree(out.resolve("run.json").toFile()).path("zones");
    assertThat(zones).hasSize(1);
    return zones.get(0);
  }

  @Test
  void halvedAndDoubledCellsGiveTheSameMeanAndError() throws IOException {
    JsonNode middle = zone(10);
    for (double cellM : new double[] {5, 20}) {
      JsonNode other = zone(cellM);
      for (String figure : FIGURES) {
        double expected = middle.path(figure).asDouble();
        assertThat(expected).as(figure).isPositive();
        assertThat(other.path(figure).asDouble() / expected)
            .as(figure + " at " + cellM + " m against 10 m")
            .isCloseTo(1, within(0.01));
      }
      double width = middle.path("ece_high").asDouble() - middle.path("ece_low").asDouble();
      double otherWidth = other.path("ece_high").asDouble() - other.path("ece_low").asDouble();
      assertThat(otherWidth / width).isCloseTo(1, within(0.01));
    }
  }
}
