package fieldsalt.handover;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;

/** Runs programs that read our files. A missing program skips the test, or fails it if CI=true. */
public final class Gdal {
  private Gdal() {}

  public static void require(String... programs) {
    for (String program : programs) {
      boolean found = isThere(program);
      if ("true".equals(System.getenv("CI"))) {
        assertThat(found).as(program + " must be installed where CI=true").isTrue();
      }
      Assumptions.assumeTrue(found, program + " is not installed");
    }
  }

  private static boolean isThere(String program) {
    return Arrays.stream(System.getenv("PATH").split(java.io.File.pathSeparator))
        .anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
  }

  /** Standard output of a program that must end well and say nothing on standard error. */
  public static String run(Path in, String... command) {
    try {
      Path out = Files.createTempFile("out", ".txt");
      Path err = Files.createTempFile("err", ".txt");
      Process process =
          new ProcessBuilder(command)
              .directory(in.toFile())
              .redirectOutput(out.toFile())
              .redirectError(err.toFile())
              .start();
      boolean ended = process.waitFor(300, TimeUnit.SECONDS);
      String said = Files.readString(out, StandardCharsets.UTF_8);
      String complained = Files.readString(err, StandardCharsets.UTF_8);
      Files.delete(out);
      Files.delete(err);
      assertThat(ended).isTrue();
      List<String> what = new ArrayList<>(List.of(command));
      assertThat(complained).as(what + "\n" + said).isEmpty();
      assertThat(process.exitValue()).as(what + "\n" + said + complained).isZero();
      return said;
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }
}
