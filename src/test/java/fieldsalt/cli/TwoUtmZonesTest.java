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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A ranch with a field on either side of the border of two UTM zones (12 and 13 at 108° W, in the
 * open Pacific) is one ranch: moved three degrees to the middle of a zone it has the same zones.
 * The scale of UTM is 0.9996 in the middle and 1.0010 at the edge at this latitude, so that areas
 * may differ by 0.28 %. Grid north turns by a degree, and with it the lattice of a zone's points: a
 * mean moves by less than 2 % with its points (AreaPointsTest of the surface).
 */
class TwoUtmZonesTest {
  private static final double BORDER = -108;
  private static final double LATITUDE = 20;
  @TempDir Path temp;

  private JsonNode zones(double middle) throws IOException {
    Path here = Files.createDirectory(temp.resolve("at" + (int) middle));
    StringBuilder fields = new StringBuilder();
    StringBuilder rows = new StringBuilder("id,lon,lat,method,ec,unit\n");
    Random random = new Random(2);
    for (String field : new String[] {"west", "east"}) {
      double from = middle + (field.equals("west") ? -0.006 : 0.001);
      fields.append(fields.isEmpty() ? "" : ",").append(feature(field, from));
      for (int i = 0; i < 15; i++) {
        double east = 0.005 * random.nextDouble();
        double ece = Math.exp(1.2 + 150 * (east - 0.0025) + 0.2 * random.nextGaussian());
        double north = LATITUDE + 0.004 * random.nextDouble();
        rows.append(
            String.format(
                Locale.ROOT,
                "%s%02d,%.8f,%.8f,paste,%.3f,dS/m%n",
                field,
                i,
                from + east,
                north,
                ece));
      }
    }
    Files.writeString(
        here.resolve("fields.geojson"),
        "{\"type\":\"FeatureCollection\",\"features\":[" + fields + "]}");
    Files.writeString(here.resolve("samples.csv"), rows);
    Files.writeString(
        here.resolve("job.yaml"),
        """
        fields: fields.geojson
        samples: samples.csv
        cell-m: 10
        zones: {by: breaks, breaks: [1000]}
        """);
    Run run = Run.of("map", here.resolve("job.yaml"), "-o", here.resolve("out"));
    assertThat(run.code()).as(run.err()).isZero();
    return new ObjectMapper().readTree(here.resolve("out/run.json").toFile()).path("zones");
  }

  private static String feature(String name, double west) {
    double east = west + 0.005;
    double north = LATITUDE + 0.004;
    return String.format(
        Locale.ROOT,
        "{\"type\":\"Feature\",\"properties\":{\"field\":\"%s\"},\"geometry\":{\"type\":\"Polygon\","
            + "\"coordinates\":[[[%2$.6f,%4$.6f],[%3$.6f,%4$.6f],[%3$.6f,%5$.6f],[%2$.6f,%5$.6f],"
            + "[%2$.6f,%4$.6f]]]}}",
        name,
        west,
        east,
        LATITUDE,
        north);
  }

  @Test
  void aFieldOnEitherSideOfTheBorder() throws IOException {
    JsonNode across = zones(BORDER);
    JsonNode inside = zones(BORDER - 3);
    assertThat(across).hasSize(2);
    assertThat(inside).hasSize(2);
    for (int z = 0; z < 2; z++) {
      assertThat(across.get(z).path("field")).isEqualTo(inside.get(z).path("field"));
      assertThat(ratio(across, inside, z, "area_ha")).isCloseTo(1, within(0.0035));
      assertThat(ratio(across, inside, z, "ece_dS_m")).isCloseTo(1, within(0.02));
      assertThat(ratio(across, inside, z, "ece_low")).isCloseTo(1, within(0.02));
      assertThat(ratio(across, inside, z, "ece_high")).isCloseTo(1, within(0.02));
    }
  }

  private static double ratio(JsonNode one, JsonNode other, int zone, String figure) {
    double expected = other.get(zone).path(figure).asDouble();
    assertThat(expected).as(figure).isPositive();
    return one.get(zone).path(figure).asDouble() / expected;
  }
}
