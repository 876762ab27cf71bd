package fieldsalt.basis.layer;

import fieldsalt.basis.setting.BasisSettings;
import fieldsalt.finding.Finding;
import fieldsalt.read.sample.Sample;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Every usable reading on the basis, sorted by site, date, depth, method, laboratory.
 *
 * @param clean every row without its impossible cells
 * @param measured the converted readings (a paste column that was calculated is not one)
 * @param findings of rows left out, and of the rows themselves
 */
public record LayerReadings(
    List<Sample> clean, List<LayerReading> measured, List<Finding> findings) {
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

  public LayerReadings {
    clean = List.copyOf(clean);
    measured = List.copyOf(measured);
    findings = List.copyOf(findings);
  }

  public static LayerReadings of(List<Sample> samples, BasisSettings settings) {
    SampleCheck check = new SampleCheck();
    LaboratoryNames laboratories = new LaboratoryNames(samples, settings.laboratories().keySet());
    List<Sample> clean =
        SameBag.shared(
            samples.stream().map(laboratories::named).sorted(ORDER).map(check::clean).toList());
    Conversion conversion = new Conversion(settings);
    List<LayerReading> all = new ArrayList<>();
    clean.forEach(sample -> conversion.convert(sample).ifPresent(all::add));
    List<Finding> findings = new ArrayList<>(laboratories.findings());
    findings.addAll(check.findings());
    findings.addAll(conversion.findings());
    all.forEach(reading -> findings.addAll(reading.findings()));
    findings.addAll(Unsaid.findings(all));
    CalculatedPaste calculated = new CalculatedPaste(LayerKey.group(all));
    findings.addAll(calculated.findings());
    List<LayerReading> measured =
        OtherCores.widened(
            all.stream().filter(r -> !calculated.contains(r)).toList(),
            settings.conversionErrors().otherCore());
    return new LayerReadings(clean, measured, findings);
  }
}
