package fieldsalt.read.table;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.read.RanchReader;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.sample.Ions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Cells of ions and ratios that say only a limit. */
class LimitsOfIonsTest {
  @TempDir Path temp;

  @Test
  void theLimitIsKeptWithItsSide() throws IOException {
    Path file = temp.resolve("sheet.csv");
    Files.writeString(
        file,
        """
        id,lon,lat,depth,method,ec,unit,sar,esp_pct,na_meq_l,ca_meq_l
        A,-150,30,0-30 cm,paste,4,dS/m,>25,> 40,>200,<0.5
        """);
    Ions ions =
        RanchReader.readTable(JobDocument.ofSettings(Path.of(""), List.of()), List.of(file))
            .samples()
            .get(0)
            .ions();
    assertThat(ions.sar()).hasValue(25);
    assertThat(ions.isAtLeast("sar")).isTrue();
    assertThat(ions.isAtLeast("esp_pct")).isTrue();
    assertThat(ions.isAtLeast("na")).isTrue();
    assertThat(ions.isAtMost("ca")).isTrue();
    assertThat(ions.isAtMost("sar") || ions.isAtLeast("ca")).isFalse();
  }
}
