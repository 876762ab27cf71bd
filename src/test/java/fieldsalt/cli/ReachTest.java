package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which way salt reaches farthest, as the page draws it: azimuth clockwise from north. */
class ReachTest {
  private static final Pattern ARROW =
      Pattern.compile("id=\"reach-along\" d=\"M([0-9.]+) ([0-9.]+)L([0-9.]+) ([0-9.]+)\"");
  @TempDir Path temp;

  /**
   * 150 sites of a surface made of waves that are {@code ratio} times as long along an azimuth.
   *
   * @param azimuth degrees clockwise from north
   */
  private String page(double azimuth, double ratio, long seed) throws IOException {
    Random random = new Random(seed);
    double[][] waves = new double[400][];
    for (int k = 0; k < waves.length; k++) {
      // frequencies of an exponential covariance of 80 m: Cauchy's distribution in the plane
      double scale = 1 / (80 * Math.max(0.05, Math.abs(random.nextGaussian())));
      waves[k] =
          new double[] {
            scale * random.nextGaussian() / ratio,
            scale * random.nextGaussian(),
            2 * Math.PI * random.nextDouble()
          };
    }
    double sin = Math.sin(Math.toRadians(azimuth));
    double cos = Math.cos(Math.toRadians(azimuth));
    StringBuilder rows = new StringBuilder("id,x,y,method,ec,unit\n");
    for (int i = 0; i < 150; i++) {
      double x = 1000 * random.nextDouble();
      double y = 800 * random.nextDouble();
      double along = x * sin + y * cos;
      double across = x * cos - y * sin;
      double sum = 0;
      for (double[] w : waves) {
        sum += Math.cos(w[0] * along + w[1] * across + w[2]);
      }
      double z = 1.3 + 0.7 * sum * Math.sqrt(2.0 / waves.length) + 0.1 * random.nextGaussian();
      rows.append(
          String.format(Locale.ROOT, "S%03d,%.1f,%.1f,paste,%.4f,dS/m%n", i, x, y, Math.exp(z)));
    }
    Files.writeString(temp.resolve("samples.csv"), rows);
    Files.writeString(
        temp.resolve("fields.geojson"),
        "{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\",\"properties\":"
            + "{\"field\":\"flat\"},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":"
            + "[[[0,0],[1000,0],[1000,800],[0,800],[0,0]]]}}]}");
    Files.writeString(
        temp.resolve("job.yaml"),
        "fields: fields.geojson\nsamples: samples.csv\ncrs: local\ncell-m: 12\n");
    Path out = temp.resolve("out" + seed);
    Run run = Run.of("map", temp.resolve("job.yaml"), "-o", out);
    assertThat(run.code()).as(run.err()).isZero();
    return Files.readString(out.resolve("report.html"));
  }

  @Test
  void theArrowPointsAlongTheLongReach() throws IOException {
    String page = page(60, 4, 3);
    Matcher arrow = ARROW.matcher(page);
    assertThat(arrow.find()).as("an arrow is drawn").isTrue();
    double east = Double.parseDouble(arrow.group(3)) - Double.parseDouble(arrow.group(1));
    double north = Double.parseDouble(arrow.group(2)) - Double.parseDouble(arrow.group(4));
    double azimuth = Math.toDegrees(Math.atan2(east, north));
    assertThat(azimuth).isCloseTo(60, within(10.0));
    assertThat(page)
        .contains(
            "Salt reaches farthest along "
                + Math.round(azimuth)
                + "° (clockwise from the direction of y), ")
        .contains("Full line: along the longest reach; dashed: across it.");
  }

  @Test
  void withTheSameReachEveryWayNothingIsDrawn() throws IOException {
    assertThat(page(60, 1, 4)).doesNotContain("reach-along", "reaches farthest");
  }
}
