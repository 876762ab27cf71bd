package fieldsalt.handover;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;

/**
 * The npm package isoxml, an independent reader of ISO 11783-10, installed once below {@code
 * target}. Where it cannot be installed the test is skipped, or fails if CI=true.
 */
public final class Isoxml {
  private static final Path HOME = Path.of("target", "isoxml").toAbsolutePath();
  private static final String VERSION = "1.11.2";

  private Isoxml() {}

  public static void require() {
    Gdal.require("node", "npm");
    boolean there = isInstalled() || install();
    if ("true".equals(System.getenv("CI"))) {
      assertThat(there).as("npm package isoxml must be installable where CI=true").isTrue();
    }
    Assumptions.assumeTrue(there, "npm package isoxml cannot be installed here");
  }

  private static boolean isInstalled() {
    return Files.isRegularFile(HOME.resolve("node_modules/isoxml/package.json"));
  }

  private static synchronized boolean install() {
    try {
      Files.createDirectories(HOME);
      Files.writeString(HOME.resolve("package.json"), "{\"private\": true}");
      Process npm =
          new ProcessBuilder(
                  "npm",
                  "install",
                  "--no-audit",
                  "--no-fund",
                  "--ignore-scripts",
                  "isoxml@" + VERSION)
              .directory(HOME.toFile())
              .redirectErrorStream(true)
              .redirectOutput(HOME.resolve("npm.log").toFile())
              .start();
      boolean ended = npm.waitFor(120, TimeUnit.SECONDS);
      if (!ended) {
        npm.destroyForcibly();
      }
      return ended && npm.exitValue() == 0 && isInstalled();
    } catch (IOException e) {
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  /** What the reader understood of a file. */
  public static JsonNode read(Path zip) throws IOException {
    try (InputStream script = Isoxml.class.getResourceAsStream("read-task.js")) {
      Files.copy(script, HOME.resolve("read-task.js"), StandardCopyOption.REPLACE_EXISTING);
    }
    String said = Gdal.run(HOME, "node", "read-task.js", zip.toAbsolutePath().toString());
    return new ObjectMapper().readTree(said);
  }
}
