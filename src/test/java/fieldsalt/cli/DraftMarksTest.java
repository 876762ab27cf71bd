package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A row that may hold gypsum makes a draft of its own field's plan only, whatever fields are
 * called: here "1" and "2", which are in the number of many a row. The ranch is invented.
 */
class DraftMarksTest {
  @TempDir Path temp;

  private static String field(String name, double west) {
    return String.format(
        Locale.ROOT,
        "{\"type\":\"Feature\",\"properties\":{\"field\":\"%s\",\"texture\":\"loam\"},\"geometry\":"
            + "{\"type\":\"Polygon\",\"coordinates\":[[[%2$f,30],[%3$f,30],[%3$f,30.004],[%2$f,30.004],"
            + "[%2$f,30]]]}}",
        name,
        west,
        west + 0.004);
  }

  @Test
  void aRowMakesADraftOfItsOwnFieldOnly() throws IOException {
    Files.writeString(
        temp.resolve("fields.geojson"),
        "{\"type\":\"FeatureCollection\",\"features\":["
            + field("1", -150)
            + ","
            + field("2", -149.99)
            + "]}");
    StringBuilder csv = new StringBuilder("id,lon,lat,depth,method,ec,unit,lab\n");
    for (int i = 0; i < 24; i++) {
      csv.append(
          String.format(
              Locale.ROOT,
              "S%02d,%.4f,%.4f,0-100 cm,1:5,%.2f,dS/m,L\n",
              i,
              (i < 12 ? -150 : -149.99) + 0.0005 + 0.001 * (i % 4),
              30.0005 + 0.001 * Math.floorDiv(i % 12, 4),
              i == 20 ? 2.5 : 0.4 + 0.02 * i));
    }
    Files.writeString(temp.resolve("samples.csv"), csv);
    Run run =
        Run.of(
            "map",
            "--fields",
            temp.resolve("fields.geojson"),
            "--samples",
            temp.resolve("samples.csv"),
            "--crop",
            "barley (grain)",
            "--set",
            "laboratory.L.region=sulfate-prairie",
            "-o",
            temp.resolve("out"));
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.err()).contains("row 22, site S20: EC1:5 of 2 dS/m or more");
    assertThat(run.err()).contains("field 2: EC1:5 of 2 dS/m or more");
    assertThat(run.err()).doesNotContain("field 1: EC1:5 of 2 dS/m or more");
  }
}
