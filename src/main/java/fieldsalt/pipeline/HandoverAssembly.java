package fieldsalt.pipeline;

import fieldsalt.classes.ClassScheme;
import fieldsalt.handover.input.HandoverInput;
import fieldsalt.handover.input.MachineJob;
import fieldsalt.handover.input.SurfaceLabels;
import fieldsalt.handover.output.SitesOutput;
import fieldsalt.handover.output.TablesOutput;
import fieldsalt.handover.table.CsvTable;
import fieldsalt.plan.RanchPlan;
import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.quantity.UnitSystem;
import fieldsalt.read.job.JobDocument;
import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** What the files for GIS and machines are made from. */
final class HandoverAssembly {
  private HandoverAssembly() {}

  static HandoverInput of(Prepared prepared, Mapped mapped, Planned planned, Features features) {
    return new HandoverInput(
        prepared.ranch().projection(),
        prepared.ranch().fields(),
        features.zones(),
        SitesOutput.features(prepared.readings(), prepared.converted()),
        mapped.maps(),
        mapped.rasters(),
        labels(prepared, mapped),
        planned.plan().map(plan -> machine(prepared.job(), plan)));
  }

  private static SurfaceLabels labels(Prepared prepared, Mapped mapped) {
    String limits =
        mapped.schemes().entrySet().stream()
            .map(e -> e.getKey() + " " + limit(e.getValue()))
            .collect(Collectors.joining("; "));
    return prepared.isEce()
        ? SurfaceLabels.ece(limits)
        : new SurfaceLabels(
            prepared.readings().property(),
            prepared.readings().unit(),
            prepared.readings().scale() == fieldsalt.basis.site.Scale.LOG,
            limits);
  }

  private static String limit(ClassScheme scheme) {
    return String.format(Locale.ROOT, "%.1f dS/m", scheme.limitDsPerM());
  }

  /** Rates of one pass: a split rate is driven as many times as the plan says. */
  private static MachineJob machine(JobDocument job, RanchPlan plan) {
    Map<String, Double> rates = new LinkedHashMap<>();
    Map<String, Integer> passes = new LinkedHashMap<>();
    boolean drafts = job.flag("machine.drafts");
    Set<String> draftFields = new TreeSet<>();
    for (ZonePlan zone : plan.zones()) {
      if (zone.draft().isDraft()) {
        draftFields.add(zone.zone().field());
      }
      if (zone.goesToMachine(drafts)) {
        rates.put(zone.zone().name(), zone.productTPerHa() / zone.passes());
        passes.put(zone.zone().name(), zone.passes());
      }
    }
    return new MachineJob(
        job.word("ranch"),
        job.text("machine.product").orElse("gypsum"),
        job.amount("machine.swath-m"),
        Integer.parseInt(job.word("machine.version")),
        rates,
        passes,
        draftFields);
  }

  /**
   * Writes {@code rates.csv}, {@code crops.csv} and {@code next.csv}; the names of what was
   * written.
   */
  static List<String> writeTables(Path folder, Prepared prepared, Planned planned)
      throws IOException {
    Map<String, CsvTable> tables = new LinkedHashMap<>();
    planned
        .plan()
        .ifPresent(
            plan -> {
              tables.put("rates.csv", TablesOutput.rates(plan.rates(), units(prepared.job())));
              tables.put("crops.csv", TablesOutput.crops(plan));
            });
    tables.put("next.csv", TablesOutput.next(planned.next().best(), prepared.ranch().projection()));
    for (Map.Entry<String, CsvTable> table : tables.entrySet()) {
      table.getValue().write(folder.resolve(table.getKey()));
    }
    return List.copyOf(tables.keySet());
  }

  static UnitSystem units(JobDocument job) {
    return job.word("units").equals("us") ? UnitSystem.US : UnitSystem.METRIC;
  }
}
