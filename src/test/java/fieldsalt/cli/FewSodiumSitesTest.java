package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Zones divided by sodium that only six of twelve sites know, and a composite whose sodium no map
 * uses: what was done is said. The field is invented.
 */
class FewSodiumSitesTest {
  @TempDir static Path temp;
  private static Run run;

  @BeforeAll
  static void mapOnce() throws IOException {
    Files.writeString(
        temp.resolve("fields.geojson"),
        """
        {"type":"Feature","properties":{"field":"delta","texture":"clay loam"},"geometry":{"type":"Polygon",
        "coordinates":[[[-150,30],[-149.992,30],[-149.992,30.006],[-150,30.006],[-150,30]]]}}
        """);
    StringBuilder csv = new StringBuilder("id,lon,lat,depth,method,ec,unit,sar,sampled,field\n");
    for (int i = 0; i < 12; i++) {
      csv.append(
          String.format(
              Locale.ROOT,
              "S%02d,%.4f,%.4f,0-30 cm,paste,%.1f,dS/m,%s,core,\n",
              i,
              -149.999 + 0.002 * (i % 4),
              30.001 + 0.002 * Math.floorDiv(i, 4),
              2 + 0.5 * i,
              i % 2 == 0 ? String.valueOf(4 + 3 * i) : ""));
    }
    csv.append("BAG,,,0-30 cm,paste,4.6,dS/m,30,composite,delta\n");
    Files.writeString(temp.resolve("samples.csv"), csv);
    run =
        Run.of(
            "map",
            "--fields",
            temp.resolve("fields.geojson"),
            "--samples",
            temp.resolve("samples.csv"),
            "--set",
            "zones.sodicity=yes",
            "-o",
            temp.resolve("out"));
  }

  @Test
  void thatTheSodiumsVariogramIsAssumedIsSaid() {
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.err()).contains("sodicity-default-variogram").contains("SAR: ranch: 6 sites");
    assertThat(run.err()).as("ECe has twelve sites").doesNotContain("\ndefault-variogram");
  }

  @Test
  void thatAMixturesSodiumIsNotUsedIsSaid() {
    assertThat(run.err()).contains("composite-unused").contains("not used for SAR");
  }
}
