package fieldsalt.basis;

import fieldsalt.finding.Finding;
import fieldsalt.read.Sample;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Every usable reading on the basis, sorted by site, date, depth, method, laboratory.
 *
 * @param all every converted reading
 * @param measured those that are measurements (a paste column that was calculated is not)
 * @param findings of rows left out, and of the rows themselves
 */
record LayerReadings(List<LayerReading> all, List<LayerReading> measured, List<Finding> findings) {
  private static final Comparator<Sample> ORDER =
      Comparator.comparing(Sample::id)
          .thenComparing(Sample::field)
          .thenComparing(s -> s.date().map(Object::toString).orElse(""))
          .thenComparingDouble(s -> s.depth().topCm())
          .thenComparingDouble(s -> s.depth().bottomCm())
          .thenComparing(s -> s.method().map(Enum::ordinal).orElse(-1))
          .thenComparing(Sample::laboratory)
          .thenComparingDouble(s -> s.ec().map(e -> e.dSPerM()).orElse(-1.0))
          .thenComparing(s -> s.source().file())
          .thenComparingInt(s -> s.source().row());

  LayerReadings {
    all = List.copyOf(all);
    measured = List.copyOf(measured);
    findings = List.copyOf(findings);
  }

  static LayerReadings of(List<Sample> samples, BasisSettings settings) {
    Conversion conversion = new Conversion(samples, settings);
    List<LayerReading> all = new ArrayList<>();
    List<Finding> findings = new ArrayList<>();
    samples.stream()
        .sorted(ORDER)
        .forEach(
            sample ->
                conversion
                    .convert(sample)
                    .ifPresent(
                        reading -> {
                          all.add(reading);
                          findings.addAll(reading.findings());
                        }));
    findings.addAll(0, conversion.findings());
    return new LayerReadings(all, all, findings);
  }
}
