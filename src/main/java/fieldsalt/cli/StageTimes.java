package fieldsalt.cli;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Supplier;

/**
 * Seconds by stage: those of the clock and those of all processors together. A stage that comes
 * again is added to what it took before.
 */
final class StageTimes {
  private static final String START = "starting";

  private final Supplier<Moment> clock;
  private final Map<String, Moment> byStage = new LinkedHashMap<>();
  private String stage = START;
  private Moment since;

  /** A point in time, or a span: seconds of the clock and of all processors. */
  record Moment(double wallS, double processorS) {
    static final Moment ZERO = new Moment(0, 0);

    Moment plus(Moment other) {
      return new Moment(wallS + other.wallS, processorS + other.processorS);
    }

    Moment minus(Moment other) {
      return new Moment(wallS - other.wallS, processorS - other.processorS);
    }
  }

  /** Times from the moment 0 of a clock. */
  StageTimes(Supplier<Moment> clock) {
    this.clock = clock;
    this.since = Moment.ZERO;
  }

  /** Times from the start of this process. */
  static StageTimes sinceStart() {
    double offset =
        ManagementFactory.getRuntimeMXBean().getUptime() / 1e3 - System.nanoTime() / 1e9;
    return new StageTimes(() -> new Moment(System.nanoTime() / 1e9 + offset, processorS()));
  }

  private static double processorS() {
    return ManagementFactory.getOperatingSystemMXBean()
            instanceof com.sun.management.OperatingSystemMXBean system
        ? system.getProcessCpuTime() / 1e9
        : Double.NaN;
  }

  /** A stage begins, and the one before it ends. */
  void begin(String next) {
    Moment now = clock.get();
    byStage.merge(stage, now.minus(since), Moment::plus);
    stage = next;
    since = now;
  }

  /** The last stage ends: a table with a line for each stage and their sum. */
  List<String> end() {
    begin("");
    List<String> lines = new ArrayList<>();
    lines.add(String.format(Locale.ROOT, "%-36s %9s %11s", "stage", "seconds", "processor s"));
    byStage.forEach((name, span) -> lines.add(line(name, span)));
    lines.add(line("all", byStage.values().stream().reduce(Moment.ZERO, Moment::plus)));
    return lines;
  }

  private static String line(String name, Moment span) {
    return String.format(Locale.ROOT, "%-36s %9.2f %11.2f", name, span.wallS(), span.processorS());
  }
}
