package fieldsalt.read.word;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** A list of our own that is kept as a text file in the jar. */
public final class ResourceLines {
  private ResourceLines() {}

  /** The lines of a file of this stage's resources, without blank ones and comments (#). */
  public static List<String> of(String file) {
    try (InputStream in = ResourceLines.class.getResourceAsStream("/fieldsalt/read/" + file);
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      return lines.lines().filter(line -> !line.startsWith("#") && !line.isBlank()).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
