package fieldsalt.cli;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;

/**
 * One line on a terminal that says which stage runs and how far it is; silent elsewhere. Where each
 * stage begins for the first time, the memory of the last one is given back: left alone, the
 * collector would hold several times what a ranch needs.
 */
final class Progress implements BiConsumer<String, Double> {
  private static final int WIDTH = 64;

  private final Console console;
  private final boolean shown;
  private final Optional<StageTimes> times;
  private final Set<String> seen = new HashSet<>();
  private String last = "";
  private String stage = "";

  private Progress(Console console, boolean shown, Optional<StageTimes> times) {
    this.console = console;
    this.shown = shown;
    this.times = times;
  }

  /** The progress that these options ask for. */
  static Progress of(Console console, CommonOptions options) {
    return new Progress(
        console,
        console.terminal() && !options.quiet,
        options.timings ? Optional.of(StageTimes.sinceStart()) : Optional.empty());
  }

  @Override
  public void accept(String now, Double share) {
    if (!now.equals(stage)) {
      begin(now);
    }
    String line =
        share > 0 && share < 1 ? stage + " " + Math.round(100 * share) + " %" : stage + " ...";
    if (shown && !line.equals(last)) {
      last = line;
      console.err().print("\r" + pad(line));
      console.err().flush();
    }
  }

  private void begin(String now) {
    stage = now;
    times.ifPresent(t -> t.begin(now));
    if (seen.add(now)) {
      System.gc();
    }
  }

  void clear() {
    if (shown) {
      console.err().print("\r" + pad("") + "\r");
      console.err().flush();
    }
  }

  /**
   * The end of the command, however it ends: the line goes, the seconds are printed if asked for.
   */
  void end() {
    clear();
    times.ifPresent(t -> t.end().forEach(console::note));
  }

  private static String pad(String text) {
    return text + " ".repeat(Math.max(0, WIDTH - text.length()));
  }
}
