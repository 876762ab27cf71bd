package fieldsalt.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import fieldsalt.cli.Run;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Readings that no soil can have, or that contradict one another beyond any soil. */
class ImpossibleZoneTest {
  /** Exit code. */
  private static final int INPUT = 3;

  /** Exit code. */
  private static final int SOME_FIELDS = 4;

  @TempDir Path temp;

  private Path job(boolean bothAbsurd, String cec) throws IOException {
    String field =
        "{\"type\":\"Feature\",\"properties\":{\"field\":\"%s\"},\"geometry\":{\"type\":"
            + "\"Polygon\",\"coordinates\":[[[%d,0],[%d,0],[%d,180],[%d,180],[%d,0]]]}}";
    Files.writeString(
        temp.resolve("fields.geojson"),
        "{\"type\":\"FeatureCollection\",\"features\":["
            + String.format(field, "good", 0, 240, 240, 0, 0)
            + ","
            + String.format(field, "wild", 300, 540, 540, 300, 300)
            + "]}");
    StringBuilder rows = new StringBuilder("id,x,y,depth,method,ec,unit,sar,cec_cmol_kg\n");
    for (int i = 0; i < 24; i++) {
      boolean wild = i >= 12 || bothAbsurd;
      double ec = wild ? (i % 2 == 0 ? 240 : 0.01) : 3 + 0.1 * (i % 4);
      rows.append(
          String.format(
              Locale.ROOT,
              "S%02d,%d,%d,0-90 cm,paste,%.2f,,18,%s%n",
              i,
              20 + 60 * (i % 4) + (i < 12 ? 0 : 300),
              20 + 60 * (i / 4 % 3),
              ec,
              i == 5 ? cec : "20"));
    }
    Files.writeString(temp.resolve("samples.csv"), rows);
    return Files.writeString(
        temp.resolve("job.yaml"),
        """
        fields: fields.geojson
        samples: samples.csv
        crs: local
        cell-m: 10
        defaults: {unit: dS/m}
        crop: alfalfa
        water: {ec-dS-m: 1, sar: 3}
        """);
  }

  /** Half at 240 and half at 0.01 dS/m, confirmed by the job: no map of these can be right. */
  @Test
  void aFieldWhoseZonesNoSoilCouldBeIsLeftOut() throws IOException {
    Path out = temp.resolve("out");
    Run run = Run.of("map", job(false, "20"), "-o", out);
    assertThat(run.code()).as(run.err()).isEqualTo(SOME_FIELDS);
    assertThat(run.err()).contains("impossible-zone (1)", "field wild", "Fields left out: wild");
    var record = new ObjectMapper().readTree(out.resolve("run.json").toFile());
    assertThat(record.path("zones")).isNotEmpty();
    record
        .path("zones")
        .forEach(
            z -> {
              assertThat(z.path("field").asText()).isEqualTo("good");
              assertThat(z.path("ece_dS_m").asDouble())
                  .isBetween(z.path("ece_low").asDouble(), z.path("ece_high").asDouble());
            });
  }

  @Test
  void ofNothingButSuchFieldsThereIsNoMap() throws IOException {
    Path out = temp.resolve("none");
    Run run = Run.of("map", job(true, "20"), "-o", out);
    assertThat(run.code()).isEqualTo(INPUT);
    assertThat(run.err()).contains("below 250 dS/m", "Check units and decimals");
    assertThat(out).doesNotExist();
  }

  @Test
  void anExchangeCapacityThatNoSoilHasIsNotUsed() throws IOException {
    Path out = temp.resolve("cec");
    Run run = Run.of("map", job(false, "1e-25"), "-o", out);
    assertThat(run.code()).as(run.err()).isEqualTo(SOME_FIELDS);
    assertThat(Run.of("check", temp.resolve("job.yaml")).err())
        .contains("cec_cmol_kg 0.000", "possible is 0.2 to 200");
  }
}
