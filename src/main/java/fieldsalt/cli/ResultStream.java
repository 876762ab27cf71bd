package fieldsalt.cli;

import fieldsalt.finding.InputProblem;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Locale;
import java.util.Optional;

/** Standard output, which remembers that something could not be written: a print stream forgets. */
final class ResultStream extends OutputStream {
  private final OutputStream to;
  private Optional<String> failure = Optional.empty();

  ResultStream(OutputStream to) {
    this.to = to;
  }

  @Override
  public void write(int b) throws IOException {
    write(new byte[] {(byte) b}, 0, 1);
  }

  @Override
  public void write(byte[] bytes, int from, int length) throws IOException {
    try {
      to.write(bytes, from, length);
    } catch (IOException e) {
      failure = Optional.of(String.valueOf(e.getMessage()));
      throw e;
    }
  }

  @Override
  public void flush() throws IOException {
    to.flush();
  }

  /** What to say if results are lost; nothing where the reader had enough and closed its pipe. */
  Optional<InputProblem> trouble() {
    return failure
        .filter(f -> !f.toLowerCase(Locale.ROOT).contains("pipe"))
        .map(
            f ->
                new InputProblem(
                    "standard output",
                    f,
                    "room for all results",
                    "What was printed is not complete: free some room and run again."));
  }
}
