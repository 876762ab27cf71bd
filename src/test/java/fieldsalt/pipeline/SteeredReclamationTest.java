package fieldsalt.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.read.job.JobDocument;
import fieldsalt.surface.Surface;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Salt to reclaim is mapped as the salt of the root zone is: an invented field with a survey. */
class SteeredReclamationTest {
  private static final long SEED = 5;

  @TempDir Path temp;

  private static double salt(double x, double y) {
    return Math.exp(1.6 + 0.8 * Math.sin(x / 24) * Math.cos(y / 19));
  }

  private JobDocument job() throws IOException {
    Files.writeString(
        temp.resolve("fields.geojson"),
        "{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\",\"properties\":"
            + "{\"field\":\"one\"},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":"
            + "[[[0,0],[400,0],[400,400],[0,400],[0,0]]]}}]}");
    Random random = new Random(SEED);
    StringBuilder survey = new StringBuilder("x,y,eca_mS_m\n");
    for (int y = 5; y < 400; y += 10) {
      for (int x = 5; x < 400; x += 10) {
        survey.append(String.format(Locale.ROOT, "%d,%d,%.2f%n", x, y, 20 * salt(x, y)));
      }
    }
    StringBuilder rows = new StringBuilder("id,x,y,depth,method,ec,unit\n");
    for (int i = 0; i < 36; i++) {
      double x = 35 + 66 * (i % 6) + 20 * (random.nextDouble() - 0.5);
      double y = 35 + 66 * Math.floor(i / 6.0) + 20 * (random.nextDouble() - 0.5);
      double ec = salt(x, y) * Math.exp(0.08 * random.nextGaussian());
      String row = "S%02d,%.1f,%.1f,%s,paste,%.3f,dS/m%n";
      rows.append(String.format(Locale.ROOT, row, i, x, y, "0-60 cm", ec));
      rows.append(String.format(Locale.ROOT, row, i, x, y, "60-120 cm", 1.3 * ec));
    }
    Files.writeString(temp.resolve("survey.csv"), survey);
    Files.writeString(temp.resolve("samples.csv"), rows);
    Path job =
        Files.writeString(
            temp.resolve("job.yaml"),
            """
            fields: fields.geojson
            samples: samples.csv
            survey: survey.csv
            crs: local
            cell-m: 10
            crop: alfalfa
            zones: {by: breaks, breaks: [4, 7], min-area-ha: 0.1, min-width-m: 10}
            water: {ec-dS-m: 1.2, sar: 4, season-et-mm: 900}
            drainage: good
            """);
    return JobDocument.read(job, List.of());
  }

  /**
   * Where every profile has one shape, the salt of the top 90 cm is the root zone's by one factor:
   * in the saltiest zone as in the least salty.
   */
  @Test
  void oneShapeOfProfileGivesOneFactorInEveryZone() throws IOException {
    Prepared prepared = Prepared.of(job(), (stage, share) -> {});
    Surface surface = MapRun.fit(prepared, (stage, share) -> {});
    assertThat(surface.report().steering()).isPresent();
    Mapped mapped = Mapped.of(prepared, surface, Set.of(), (stage, share) -> {});
    Planned planned = Planned.of(prepared, mapped, (stage, share) -> {});
    List<ZonePlan> zones = planned.plan().orElseThrow().fields().get(0).zones();
    assertThat(zones).hasSizeGreaterThan(2);
    double[] factors =
        zones.stream().mapToDouble(z -> z.reclamation().eceNow() / z.meanEce().value()).toArray();
    double[] salt = zones.stream().mapToDouble(z -> z.meanEce().value()).sorted().toArray();
    assertThat(salt[salt.length - 1]).isGreaterThan(2 * salt[0]);
    for (double factor : factors) {
      assertThat(factor).isCloseTo(factors[0], within(0.05));
    }
  }
}
