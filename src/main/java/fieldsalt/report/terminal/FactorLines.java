package fieldsalt.report.terminal;

import fieldsalt.basis.pair.ConvertedReadings;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** What a terminal shows of a conversion: factors, then the mean of each layer. */
public final class FactorLines {
  private FactorLines() {}

  /** A line per group of readings, then one per layer. */
  public static List<String> of(ConvertedReadings converted) {
    return Stream.concat(
            converted.groups().stream().map(FactorLines::line),
            converted.means().stream().map(FactorLines::line))
        .toList();
  }

  private static String line(ConvertedReadings.Mean m) {
    return String.format(
        Locale.ROOT,
        "%s%.0f-%.0f cm: mean of %d samples %.2f dS/m (90 %% interval of their errors %.2f to %.2f)",
        m.field().isBlank() ? "" : m.field() + ", ",
        m.depth().topCm(),
        m.depth().bottomCm(),
        m.sites(),
        m.ece(),
        m.low(),
        m.high());
  }

  private static String line(ConvertedReadings.Group g) {
    String laboratory =
        Optional.of(g.laboratory()).filter(l -> !l.isBlank()).orElse("no laboratory");
    String texture = g.texture().name().toLowerCase(Locale.ROOT);
    return String.format(
        Locale.ROOT,
        "%s, %s, %s texture: %d readings, factor %.2f (+/- %.0f %%)%s",
        laboratory,
        g.method(),
        texture,
        g.readings(),
        g.posteriorFactor(),
        100 * g.posteriorSdLn(),
        g.pairs() == 0
            ? ", no pairs"
            : String.format(
                Locale.ROOT,
                "; published %.2f (+/- %.0f %%), %d pairs",
                g.priorFactor(),
                100 * g.priorSdLn(),
                g.pairs()));
  }
}
