package fieldsalt.pipeline;

import fieldsalt.classes.ClassScheme;
import fieldsalt.handover.input.HandoverInput;
import fieldsalt.handover.input.MachineJob;
import fieldsalt.handover.input.SurfaceLabels;
import fieldsalt.handover.table.CsvTable;
import fieldsalt.plan.RanchPlan;
import fieldsalt.plan.field.CropYields;
import fieldsalt.plan.gypsum.RateRow;
import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.quantity.UnitSystem;
import fieldsalt.read.job.JobDocument;
import fieldsalt.surface.next.Proposal;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** What the files for GIS and machines are made from. */
final class HandoverAssembly {
  private static final List<String> NEXT_HEADER =
      List.of(
          "order",
          "measure",
          "id",
          "field",
          "lon",
          "lat",
          "ranch_error_pct_after",
          "worst_zone_error_pct_after");

  private HandoverAssembly() {}

  static HandoverInput of(Prepared prepared, Mapped mapped, Planned planned, Features features) {
    return new HandoverInput(
        prepared.ranch().projection(),
        prepared.ranch().fields(),
        features.zones(),
        features.samples(),
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

  private static List<List<Object>> next(Prepared prepared, Planned planned) {
    List<List<Object>> rows = new ArrayList<>();
    for (Proposal p : planned.next().best()) {
      double[] degrees = prepared.ranch().projection().toLonLat(p.place().xM(), p.place().yM());
      rows.add(
          List.of(
              rows.size() + 1,
              p.kind() == Proposal.Kind.PASTE_RERUN ? "paste of the stored sample" : "new site",
              p.siteId(),
              p.field(),
              fixed(degrees[0], 7),
              fixed(degrees[1], 7),
              fixed(100 * p.ranchErrorAfter(), 1),
              fixed(100 * p.worstZoneErrorAfter(), 1)));
    }
    return rows;
  }

  private static String fixed(double value, int decimals) {
    return String.format(Locale.ROOT, "%." + decimals + "f", value);
  }

  /**
   * Writes {@code rates.csv}, {@code crops.csv} and {@code next.csv}; the names of what was
   * written.
   */
  static List<String> writeTables(Path folder, Prepared prepared, Planned planned)
      throws IOException {
    List<String> names = new ArrayList<>();
    if (planned.plan().isPresent()) {
      UnitSystem units = units(prepared.job());
      List<List<Object>> rows = new ArrayList<>();
      for (RateRow row : planned.plan().get().rates()) {
        rows.add(List.copyOf(row.cells(units)));
      }
      new CsvTable(RateRow.header(units), rows).write(folder.resolve("rates.csv"));
      names.add("rates.csv");
      cropsTable(planned.plan().get()).write(folder.resolve("crops.csv"));
      names.add("crops.csv");
    }
    new CsvTable(NEXT_HEADER, next(prepared, planned)).write(folder.resolve("next.csv"));
    names.add("next.csv");
    return names;
  }

  /** Expected relative yield of every compared crop in every zone, largest over the ranch first. */
  private static CsvTable cropsTable(RanchPlan plan) {
    List<String> header = new ArrayList<>(List.of("crop", "ranch_yield_pct"));
    plan.zones().forEach(zone -> header.add(zone.zone().name() + "_yield_pct"));
    header.addAll(List.of("rating", "source", "confidence"));
    List<List<Object>> rows = new ArrayList<>();
    for (CropYields crop : plan.crops()) {
      List<Object> row = new ArrayList<>();
      row.add(crop.crop().name());
      row.add(crop.ranchPct().map(HandoverAssembly::tenths).orElse(null));
      for (int z = 0; z < plan.zones().size(); z++) {
        row.add(crop.zonePct().isEmpty() ? null : tenths(crop.zonePct().get(z)));
      }
      row.addAll(
          List.of(crop.crop().ratingInWords(), crop.crop().source(), crop.crop().confidence()));
      rows.add(java.util.Collections.unmodifiableList(row));
    }
    return new CsvTable(header, rows);
  }

  private static Object tenths(double value) {
    return Math.round(10 * value) / 10.0;
  }

  static UnitSystem units(JobDocument job) {
    return job.word("units").equals("us") ? UnitSystem.US : UnitSystem.METRIC;
  }
}
