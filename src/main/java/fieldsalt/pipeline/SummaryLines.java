package fieldsalt.pipeline;

import fieldsalt.basis.Scale;
import fieldsalt.surface.SurfaceReport;
import fieldsalt.surface.SurfaceReport.Candidate;
import fieldsalt.zones.Zone;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** The three lines that a terminal shows of a run. */
final class SummaryLines {
  private static final double HA_PER_ACRE = 0.40468564224;
  private static final int FIELDS_SHOWN = 5;

  private SummaryLines() {}

  static List<String> of(Prepared prepared, Mapped mapped) {
    List<String> lines = new ArrayList<>();
    lines.add(sites(prepared, mapped));
    lines.add(method(prepared, mapped.surface().report()));
    lines.add(areas(prepared, mapped));
    return lines;
  }

  static String sites(Prepared prepared, Mapped mapped) {
    long fields = mapped.zones().zones().stream().map(Zone::field).distinct().count();
    return String.format(
        Locale.ROOT,
        "%d sites used (%d readings) in %d %s",
        Mapped.sitesUsed(prepared.readings()),
        prepared.ranch().samples().size(),
        fields,
        fields == 1 ? "field" : "fields");
  }

  private static String method(Prepared prepared, SurfaceReport report) {
    Optional<Candidate> chosen = candidate(report, report.chosen());
    Optional<Candidate> mean = candidate(report, "mean");
    if (chosen.isEmpty() || mean.isEmpty()) {
      return "Method: " + report.chosen();
    }
    if (report.chosen().equals("mean")) {
      return "Method: mean of each field (nothing predicts unseen sites better); error "
          + error(prepared, mean.get());
    }
    return "Method: "
        + report.chosen()
        + "; error at unseen sites "
        + error(prepared, chosen.get())
        + ", of the field mean "
        + error(prepared, mean.get());
  }

  /** Root mean squared error: of ln as a percentage, else in the property's unit. */
  private static String error(Prepared prepared, Candidate candidate) {
    return prepared.readings().scale() == Scale.LOG
        ? String.format(Locale.ROOT, "%.0f %%", 100 * Math.expm1(candidate.rmse()))
        : String.format(Locale.ROOT, "%.3g %s", candidate.rmse(), prepared.readings().unit());
  }

  private static Optional<Candidate> candidate(SurfaceReport report, String method) {
    return report.candidates().stream().filter(c -> c.method().equals(method)).findFirst();
  }

  /** Hectares per class: field by field, or by crop where there are many fields. */
  private static String areas(Prepared prepared, Mapped mapped) {
    boolean us = prepared.job().word("units").equals("us");
    boolean many = mapped.schemes().size() > FIELDS_SHOWN;
    Map<String, Map<String, Double>> byGroup = new LinkedHashMap<>();
    for (Zone zone : mapped.zones().zones()) {
      String scheme = mapped.schemes().get(zone.field()).name();
      byGroup
          .computeIfAbsent(many ? scheme : zone.field(), f -> new TreeMap<>())
          .merge(key(zone), zone.areaHa() / (us ? HA_PER_ACRE : 1), Double::sum);
    }
    return byGroup.entrySet().stream()
        .map(e -> e.getKey() + ": " + classes(e.getValue(), us ? "acres" : "ha"))
        .collect(Collectors.joining("; "));
  }

  /** Sorts by class, then is cut to the label. */
  private static String key(Zone zone) {
    return String.format(Locale.ROOT, "%02d", zone.klass()) + zone.label();
  }

  private static String classes(Map<String, Double> areas, String unit) {
    return areas.entrySet().stream()
        .map(
            e ->
                String.format(
                    Locale.ROOT, "%.1f %s %s", e.getValue(), unit, e.getKey().substring(2)))
        .collect(Collectors.joining(", "));
  }
}
