package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The map against samples that it did not use. */
class AssessTest {
  @TempDir Path temp;

  private static final String CRS = "crs=local";

  /** The 100 gauges of SIC97 (Dubois 1998) against the 367 that were held out, all automatic. */
  @Test
  void rainGaugesOfTheSpatialInterpolationComparison() throws IOException {
    Path observed = table("observed.csv", "sic97-observed.csv", 100);
    Path held = table("held.csv", "sic97-held-out.csv", 367);
    Run run =
        Run.of(
            "assess",
            "--samples",
            observed,
            "--against",
            held,
            "--set",
            CRS,
            "--set",
            "property.column=rainfall",
            "--set",
            "property.unit=0.1 mm",
            "--set",
            "property.scale=natural",
            "--quiet");
    assertThat(run.code()).as(run.err()).isZero();
    JsonNode json = new ObjectMapper().readTree(run.out());
    assertThat(json.path("n").asInt()).isEqualTo(367);
    assertThat(json.path("left_out").asInt()).isZero();
    // 1.05 x the ordinary kriging figure of gstat, 55.08
    assertThat(json.path("rmse").asDouble()).isLessThanOrEqualTo(57.8);
    assertThat(json.path("coverage90").asDouble()).isBetween(0.8, 0.97);
    assertThat(json.fieldNames())
        .toIterable()
        .containsExactly(
            "n", "left_out", "me", "rmse", "mae", "coverage50", "coverage90", "method");
  }

  private Path table(String name, String source, int expected) throws IOException {
    Path from = Path.of("src/test/resources/fieldsalt/surface", source);
    List<String> lines = Files.readAllLines(from);
    assertThat(lines).hasSize(expected + 1);
    List<String> out = new ArrayList<>();
    out.add("id,x,y,rainfall,depth_top_cm,depth_bottom_cm");
    lines.stream().skip(1).forEach(l -> out.add(l + ",0,90"));
    return Files.write(temp.resolve(name), out);
  }

  /** Readings of the same laboratory and method share its error with the map: intervals hold. */
  @Test
  void readingsEqualToTheMapsOwnHaveNoError() throws IOException {
    StringBuilder rows = new StringBuilder("id,x,y,method,reading,ec,unit,texture,lab\n");
    for (int i = 0; i < 25; i++) {
      rows.append(
          String.format(
              Locale.ROOT,
              "S%02d,%d,%d,1:5,extract,%.2f,dS/m,loam,A%n",
              i,
              100 * (i % 5),
              100 * (i / 5),
              0.3 + 0.05 * (i % 5)));
    }
    Path samples = temp.resolve("s.csv");
    Files.writeString(samples, rows);
    Run run = Run.of("assess", "--samples", samples, "--against", samples, "--set", CRS, "--quiet");
    assertThat(run.code()).as(run.err()).isZero();
    JsonNode json = new ObjectMapper().readTree(run.out());
    assertThat(json.path("n").asInt()).isEqualTo(25);
    assertThat(json.path("me").asDouble()).isCloseTo(0, within(0.5));
    assertThat(json.path("coverage90").asDouble()).isGreaterThanOrEqualTo(0.9);
  }

  /** Keys of the job that name columns or rows of its own samples say nothing of the other file. */
  @Test
  void everyKeyOfAMapIsTaken() throws IOException {
    StringBuilder rows = new StringBuilder("Probe,x,y,method,Salinity,unit\n");
    StringBuilder others = new StringBuilder("id,x,y,method,ec,unit\n");
    for (int i = 0; i < 25; i++) {
      String place = (100 * (i % 5)) + "," + (100 * (i / 5)) + ",paste,";
      double ec = 3 + 0.5 * (i % 5);
      rows.append("S").append(i).append(',').append(place).append(ec).append(",dS/m\n");
      others.append("S").append(i).append(',').append(place).append(ec).append(",dS/m\n");
    }
    Path samples = Files.writeString(temp.resolve("s.csv"), rows);
    Path against = Files.writeString(temp.resolve("o.csv"), others);
    Run run =
        Run.of(
            "assess",
            "--samples",
            samples,
            "--against",
            against,
            "--set",
            CRS,
            "--set",
            "columns.ec=Salinity",
            "--set",
            "columns.id=Probe",
            "--set",
            "leave-out=S3",
            "--set",
            "confirm.S4=dS/m",
            "--quiet");
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(new ObjectMapper().readTree(run.out()).path("n").asInt()).isEqualTo(25);
  }
}
