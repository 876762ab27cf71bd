package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A mixture of cores from all over a field, in a sheet of its own beside the sites. */
class CompositeTest {
  private static final Path SMALL = Path.of("sample-fields/small");
  @TempDir Path temp;

  private Run map(Path out, Object... more) {
    Object[] words = {
      "map",
      "--fields",
      SMALL.resolve("fields.geojson"),
      "--samples",
      SMALL.resolve("samples.geojson"),
      "--crop",
      "cotton",
      "--set",
      "defaults.method=paste",
      "--set",
      "defaults.unit=dS/m",
      "--set",
      "defaults.depth-cm=[0, 100]",
      "-o",
      out
    };
    Object[] all = java.util.Arrays.copyOf(words, words.length + more.length);
    System.arraycopy(more, 0, all, words.length, more.length);
    return Run.of(all);
  }

  @Test
  void aCompositeInformsTheMapAndSaysSo() throws IOException {
    Path sheet = temp.resolve("bag.csv");
    Files.writeString(
        sheet,
        """
        id,method,ec,unit,depth,field,sampled,cores
        BAG,paste,7.5,dS/m,0-100 cm,west,composite,20
        """);
    assertThat(map(temp.resolve("sites")).code()).isZero();
    Run run = map(temp.resolve("both"), "--samples", sheet);
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.err()).contains("inform the field's mean").contains("they agree");
    assertThat(Files.mismatch(temp.resolve("sites/ece.tif"), temp.resolve("both/ece.tif")))
        .isNotNegative();
  }
}
