package fieldsalt.geo.registry;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.geo.Projections;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The registry's cache on disk, each time in a new process as a user's run would be. */
class RegistryTest {
  @TempDir Path cache;

  /** Asks for one code and prints what came of it. */
  static final class Ask {
    private Ask() {}

    public static void main(String[] args) {
      double[] lonLat = Projections.source(args[0]).toLonLat(300_000, 6_000_000);
      System.out.printf(java.util.Locale.ROOT, "%.6f %.6f", lonLat[0], lonLat[1]);
    }
  }

  private String ask(String code) throws IOException, InterruptedException {
    ProcessBuilder java =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("java.class.path"),
                Ask.class.getName(),
                code)
            .redirectErrorStream(true);
    java.environment().put("XDG_CACHE_HOME", cache.toString());
    Process process = java.start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(120, TimeUnit.SECONDS)).isTrue();
    return said;
  }

  private List<Path> cached() throws IOException {
    try (Stream<Path> files = Files.walk(cache)) {
      return files.filter(Files::isRegularFile).toList();
    }
  }

  /** GDAL 3.6.2: gdaltransform of 300000 6000000 from EPSG:28355 to WGS 84. */
  @Test
  void aDamagedCopyIsUnpackedAnew() throws IOException, InterruptedException {
    String first = ask("EPSG:28355");
    assertThat(first).isEqualTo("144.777609 -36.124096");
    Path data = cached().stream().filter(p -> p.endsWith("EPSG.data")).findFirst().orElseThrow();
    try (RandomAccessFile damaged = new RandomAccessFile(data.toFile(), "rw")) {
      damaged.setLength(100_000);
    }
    assertThat(ask("EPSG:28355")).as("and not a word more").isEqualTo(first);
  }

  @Test
  void utmNeedsNoRegistry() throws IOException, InterruptedException {
    assertThat(ask("EPSG:32755")).startsWith("144.7776");
    assertThat(cached()).isEmpty();
  }
}
