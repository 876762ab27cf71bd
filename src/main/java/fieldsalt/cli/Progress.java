package fieldsalt.cli;

import java.util.function.BiConsumer;

/**
 * One line on a terminal that says which stage runs and how far it is; silent elsewhere. At each
 * new stage the memory of the last one is given back: left alone, the collector would hold several
 * times what a ranch needs.
 */
final class Progress implements BiConsumer<String, Double> {
  private static final int WIDTH = 64;

  private final Console console;
  private final boolean shown;
  private String last = "";
  private String stage = "";

  Progress(Console console, boolean quiet) {
    this.console = console;
    this.shown = console.terminal() && !quiet;
  }

  @Override
  public void accept(String now, Double share) {
    if (!now.equals(stage)) {
      stage = now;
      System.gc();
    }
    String line =
        share > 0 && share < 1 ? stage + " " + Math.round(100 * share) + " %" : stage + " ...";
    if (shown && !line.equals(last)) {
      last = line;
      console.err().print("\r" + pad(line));
      console.err().flush();
    }
  }

  void clear() {
    if (shown) {
      console.err().print("\r" + pad("") + "\r");
      console.err().flush();
    }
  }

  private static String pad(String text) {
    return String.format("%-" + WIDTH + "s", text);
  }
}
