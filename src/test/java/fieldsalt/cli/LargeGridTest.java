package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import fieldsalt.geo.PlaceM;
import fieldsalt.geo.Projections;
import fieldsalt.geo.RanchProjection;
import fieldsalt.geo.RasterFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A grid too large to be held: an invented field of 110 ha in cells of half a metre, 4.4 million.
 * The rasters have the cells that were asked for; zones are drawn on cells of a metre.
 */
class LargeGridTest {
  private static final RanchProjection UTM = Projections.utmFor(141, -35);
  private static final PlaceM ORIGIN = UTM.toMetres(141.01, -35);
  private static final double SIDE = 1050;

  @TempDir Path temp;

  private static String degrees(double x, double y) {
    double[] p = UTM.toLonLat(ORIGIN.xM() + x, ORIGIN.yM() + y);
    return String.format(Locale.ROOT, "%.8f,%.8f", p[0], p[1]);
  }

  private void writeRanch() throws IOException {
    double[][] corners = {{0, 0}, {SIDE, 0}, {SIDE, SIDE}, {0, SIDE}, {0, 0}};
    StringBuilder ring = new StringBuilder();
    for (double[] c : corners) {
      ring.append(ring.isEmpty() ? "[" : ",[").append(degrees(c[0], c[1])).append("]");
    }
    Files.writeString(
        temp.resolve("fields.geojson"),
        "{\"type\":\"Feature\",\"properties\":{\"field\":\"plain\",\"crop\":\"barley\"},"
            + "\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[["
            + ring
            + "]]}}");
    StringBuilder rows = new StringBuilder("id,lon,lat,method,ec,unit\n");
    Random random = new Random(4);
    for (int i = 0; i < 110; i++) {
      double x = SIDE * random.nextDouble();
      double ec = Math.exp(1.2 + 1.6 * x / SIDE + 0.1 * random.nextGaussian());
      rows.append(
          String.format(
              Locale.ROOT,
              "p%d,%s,paste,%.2f,dS/m%n",
              i,
              degrees(x, SIDE * random.nextDouble()),
              ec));
    }
    Files.writeString(temp.resolve("samples.csv"), rows.toString());
    Files.writeString(
        temp.resolve("job.yaml"),
        """
        fields: fields.geojson
        samples: samples.csv
        cell-m: 0.5
        """);
  }

  @Test
  void rastersHaveTheirCellsAndZonesTheirShare() throws IOException {
    writeRanch();
    Path out = temp.resolve("out");
    Run run = Run.of("map", temp.resolve("job.yaml"), "-o", out, "--quiet");
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(Files.size(out.resolve("ece.tif"))).isGreaterThan(4_000_000);
    RasterFile ece = RasterFile.open(out.resolve("ece.tif"), UTM);
    RasterFile chance = RasterFile.open(out.resolve("p-above.tif"), UTM);
    double[] sum = new double[1];
    int asked = 0;
    for (double y = 5.25; y < SIDE; y += 20) {
      for (double x = 5.25; x < SIDE; x += 20) {
        PlaceM at = new PlaceM(ORIGIN.xM() + x, ORIGIN.yM() + y);
        assertThat(Math.log(ece.at(at))).isCloseTo(1.2 + 1.6 * x / SIDE, within(0.25));
        sum[0] += chance.at(at);
        asked++;
      }
    }
    JsonNode zones = new ObjectMapper().readTree(out.resolve("zones.geojson").toFile());
    double above = 0;
    double hectares = 0;
    for (JsonNode zone : zones.path("features")) {
      JsonNode figures = zone.path("properties");
      above += figures.path("p_above").asDouble() * figures.path("area_ha").asDouble();
      hectares += figures.path("area_ha").asDouble();
    }
    assertThat(zones.path("features").size()).isGreaterThan(1);
    assertThat(hectares).isCloseTo(SIDE * SIDE / 10_000, within(0.1));
    assertThat(above / hectares).isCloseTo(sum[0] / asked, within(0.01));
  }
}
