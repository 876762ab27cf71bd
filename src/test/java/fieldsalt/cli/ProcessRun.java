package fieldsalt.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** One run of a program as a process of its own: what it printed and how it ended. */
record ProcessRun(int code, String out, String err) {
  /**
   * Runs a program to its end.
   *
   * @param folder the current folder of the program
   * @param environment variables beside those of this process
   */
  static ProcessRun of(Path folder, Map<String, String> environment, Object... words)
      throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    for (Object word : words) {
      command.add(word.toString());
    }
    Path out = Files.createTempFile("out", ".txt");
    Path err = Files.createTempFile("err", ".txt");
    try {
      ProcessBuilder builder = new ProcessBuilder(command).directory(folder.toFile());
      environment.forEach((name, value) -> builder.environment().put(name, value));
      Process process = builder.redirectOutput(out.toFile()).redirectError(err.toFile()).start();
      if (!process.waitFor(120, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        throw new IllegalStateException("still running after 120 s: " + command);
      }
      return new ProcessRun(process.exitValue(), Files.readString(out), Files.readString(err));
    } finally {
      Files.delete(out);
      Files.delete(err);
    }
  }
}
