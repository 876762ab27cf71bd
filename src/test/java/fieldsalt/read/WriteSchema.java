package fieldsalt.read;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Writes {@code docs/job.schema.json} anew after a key was added. */
final class WriteSchema {
  private WriteSchema() {}

  public static void main(String[] args) throws IOException {
    Files.writeString(Path.of("docs/job.schema.json"), JobSchema.text());
  }
}
