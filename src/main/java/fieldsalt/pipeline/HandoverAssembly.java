package fieldsalt.pipeline;

import fieldsalt.handover.input.HandoverInput;
import fieldsalt.handover.input.MachineJob;
import fieldsalt.handover.input.SurfaceLabels;
import fieldsalt.handover.input.ZoneFeature;
import fieldsalt.handover.output.MachineOutput;
import fieldsalt.handover.output.SitesOutput;
import fieldsalt.handover.output.TablesOutput;
import fieldsalt.handover.output.ZonesOutput;
import fieldsalt.handover.table.CsvTable;
import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.quantity.UnitSystem;
import fieldsalt.read.job.JobDocument;
import fieldsalt.report.result.RunResults;
import fieldsalt.surface.area.AreaMeans;
import fieldsalt.zones.field.Zone;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** What the files for GIS and machines are made from. */
final class HandoverAssembly {
  private HandoverAssembly() {}

  static HandoverInput of(Prepared prepared, Mapped mapped, Planned planned, RunResults results) {
    Optional<MachineJob> machine =
        planned.plan().map(plan -> MachineOutput.of(plan, prepared.job()));
    return new HandoverInput(
        prepared.ranch().projection(),
        prepared.ranch().fields(),
        zones(results, machine),
        SitesOutput.features(
            prepared.readings(),
            prepared.converted(),
            mapped.surface().report().details().doubtful()),
        mapped.maps(),
        mapped.rasters(),
        SurfaceLabels.of(prepared.readings(), mapped.schemes()),
        machine);
  }

  private static List<ZoneFeature> zones(RunResults results, Optional<MachineJob> machine) {
    Map<String, ZonePlan> plans = results.planned().byZone();
    AreaMeans means = results.planned().means();
    List<ZoneFeature> features = new ArrayList<>();
    List<Zone> zones = results.mapped().zones().zones();
    for (int z = 0; z < zones.size(); z++) {
      Zone zone = zones.get(z);
      ZonesOutput.Known known =
          new ZonesOutput.Known(
              results.readings().sites().isEce(),
              means.low()[z],
              means.mean()[z],
              means.high()[z],
              results.mapped().zones().figuresByZone().get(zone.name()).chanceAbove(),
              results.mapped().sodicity().isPresent(),
              Optional.ofNullable(results.planned().sodicity().get(zone.name())),
              results.chanceSodic(zone),
              Optional.ofNullable(plans.get(zone.name())),
              machine
                  .map(job -> OptionalDouble.of(job.rateMgPerHa(zone.name())))
                  .orElse(OptionalDouble.empty()));
      features.add(ZonesOutput.feature(zone, results.mapped().schemes().get(zone.field()), known));
    }
    return features;
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
