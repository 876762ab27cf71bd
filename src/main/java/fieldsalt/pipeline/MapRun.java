package fieldsalt.pipeline;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.Code;
import fieldsalt.finding.FieldFault;
import fieldsalt.finding.Finding;
import fieldsalt.finding.InputProblem;
import fieldsalt.finding.Place;
import fieldsalt.geo.PlaceM;
import fieldsalt.geo.RasterFile;
import fieldsalt.handover.Handover;
import fieldsalt.handover.HandoverResult;
import fieldsalt.handover.folder.OutputFolder;
import fieldsalt.handover.folder.WrittenFile;
import fieldsalt.quantity.UnitSystem;
import fieldsalt.read.job.JobDocument;
import fieldsalt.report.Report;
import fieldsalt.report.input.PageInput;
import fieldsalt.report.input.PageMaker;
import fieldsalt.report.record.RunFacts;
import fieldsalt.report.record.RunRecord;
import fieldsalt.report.result.RunResults;
import fieldsalt.report.terminal.SummaryLines;
import fieldsalt.surface.Surface;
import fieldsalt.surface.SurfaceFitter;
import fieldsalt.surface.choice.SurfaceSettings;
import fieldsalt.surface.site.Drift;
import fieldsalt.zones.field.Zone;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.BiConsumer;

/**
 * The whole job, stage after stage. The folder is looked at before any work and written after all
 * of it.
 */
public final class MapRun {
  /** No saturation extract holds more salt (saturated brine). */
  private static final double MOST_DS_PER_M = 250;

  private final JobDocument job;
  private final OutputFolder folder;
  private final BiConsumer<String, Double> progress;
  private Prepared prepared;
  private Mapped mapped;
  private Planned planned;
  private volatile String stage = "starting";
  private final Map<String, FieldFault> faults = new TreeMap<>();

  /** Fields left out because no soil is as their zones would be. */
  private final Map<String, Finding> impossible = new TreeMap<>();

  private MapRun(JobDocument job, OutputFolder folder, BiConsumer<String, Double> progress) {
    this.job = job;
    this.folder = folder;
    this.progress =
        (name, share) -> {
          stage = name;
          progress.accept(name, share);
        };
  }

  /**
   * A run whose folder can be written.
   *
   * @param progress told the stage and the share of it that is done, 0 to 1
   * @throws fieldsalt.finding.InputProblem if the folder is not ours or cannot be written
   */
  public static MapRun prepare(
      JobDocument job, Path folder, boolean force, BiConsumer<String, Double> progress) {
    return new MapRun(job, OutputFolder.open(folder, force, job.inputs()), progress);
  }

  /** Whether the folder had to be put back as it was before a run that was cut off. */
  public boolean mendedFolder() {
    return folder.wasMended();
  }

  /** Stages 1 to 6; nothing is written. */
  public MapSummary compute() {
    Prepared read = Prepared.of(job, progress);
    return compute(read, fit(read, progress));
  }

  /** The same of what was read and fitted. */
  MapSummary compute(Prepared read, Surface surface) {
    prepared = read;
    withoutFaults(surface);
    List<String> leftOut = new ArrayList<>(mapped.surface().report().leftOut());
    leftOut.addAll(faults.keySet());
    leftOut.addAll(impossible.keySet());
    return new MapSummary(
        summary()
            .of(
                mapped.surface().report(),
                mapped.schemes(),
                HandoverAssembly.units(prepared.job())),
        leftOut,
        findings());
  }

  /** A field in which a fault of ours shows is left out, and the others are done. */
  private void withoutFaults(Surface fitted) {
    Surface surface = fitted;
    while (true) {
      try {
        Set<String> without = new TreeSet<>(faults.keySet());
        without.addAll(impossible.keySet());
        mapped = Mapped.of(prepared, surface, without, progress);
        planned = Planned.of(prepared, mapped, progress);
        if (!foundImpossible(surface)) {
          return;
        }
        surface = fit(prepared, impossible.keySet(), progress);
      } catch (FieldFault fault) {
        if (faults.put(fault.field(), fault) != null
            || faults.keySet().containsAll(surface.mappedFields())) {
          throw fault;
        }
      }
    }
  }

  /**
   * Whether zones came out that no soil can be. Of their fields the one whose readings differ most
   * is left out, and the others are fitted again without its readings.
   */
  private boolean foundImpossible(Surface surface) {
    if (!prepared.isEce()) {
      return false;
    }
    List<Zone> zones = mapped.zones().zones();
    int worst = -1;
    double widest = -1;
    for (int z = 0; z < zones.size(); z++) {
      double mean = planned.means().mean()[z];
      boolean inside = mean >= planned.means().low()[z] && mean <= planned.means().high()[z];
      boolean wrong = !(inside && mean <= MOST_DS_PER_M);
      double spread = wrong ? prepared.readings().spread(zones.get(z).field()) : -1;
      if (spread > widest) {
        widest = spread;
        worst = z;
      }
    }
    if (worst < 0) {
      return false;
    }
    Finding found = impossible(zones.get(worst), worst);
    impossible.put(zones.get(worst).field(), found);
    if (surface.mappedFields().size() - faults.size() <= 1) {
      throw new InputProblem(
          "readings",
          found.found(),
          "a mean ECe inside its own interval and below 250 dS/m",
          "Check units and decimals of the readings named in the findings of `fieldsalt check`.");
    }
    return true;
  }

  private Finding impossible(Zone zone, int z) {
    return new Finding(
        Code.IMPOSSIBLE_ZONE,
        Place.field(zone.field()),
        String.format(
            Locale.ROOT,
            "zone %s would have a mean ECe of %.3g dS/m, 90 %% interval %.3g to %.3g",
            zone.name(),
            planned.means().mean()[z],
            planned.means().low()[z],
            planned.means().high()[z]),
        "the field is left out: its readings contradict one another; check units and decimals");
  }

  /** What to say when memory ended: where, how large the job is, and what would help there. */
  public InputProblem memoryEnded() {
    StringBuilder found = new StringBuilder();
    found.append("memory ended while ").append(stage);
    found.append(" (").append(Runtime.getRuntime().maxMemory() / 1_000_000).append(" MB");
    if (prepared != null) {
      found.append(", ").append(prepared.ranch().fields().size()).append(" fields");
      found.append(", ").append(prepared.readings().sites().size()).append(" sites");
    }
    if (mapped != null) {
      long cells = mapped.maps().stream().mapToLong(m -> m.grid().cells()).sum();
      found.append(", ").append(mapped.zones().zones().size()).append(" zones");
      found.append(", ").append(cells).append(" cells held");
    }
    boolean byCells = stage.startsWith("mapping and") || stage.equals("writing files");
    String helps =
        byCells
            ? "Take a larger cell-m, or give more memory: "
            : "Split the job into several of fewer fields, or give more memory: ";
    return new InputProblem(
        "memory",
        found.append(')').toString(),
        "a job that fits into the memory given",
        helps + "FIELDSALT_OPTS=-Xmx4g fieldsalt ...");
  }

  private static Finding finding(FieldFault fault) {
    return new Finding(
        Code.FIELD_FAULT,
        Place.field(fault.field()),
        "a fault in fieldsalt while it was worked on (" + fault.getCause() + ")",
        "left out, the other fields are done; run it again with --debug and report what it prints");
  }

  private SummaryLines summary() {
    return new SummaryLines(
        prepared.readings(), prepared.ranch().samples(), mapped.zones().zones());
  }

  static Surface fit(Prepared prepared, BiConsumer<String, Double> progress) {
    return fit(prepared, Set.of(), progress);
  }

  private static Surface fit(
      Prepared prepared, Set<String> without, BiConsumer<String, Double> progress) {
    progress.accept("fitting the surface", 0.0);
    return steered(
        prepared,
        prepared.readings(),
        without,
        StageSettings.surface(prepared.jobs(), prepared.ranch()));
  }

  /** A surface of salinity, over whatever depth: what may steer one may steer the other. */
  static Surface steered(
      Prepared prepared, SiteReadings readings, Set<String> without, SurfaceSettings settings) {
    return SurfaceFitter.fit(
        readings.without(without),
        prepared.ranch().fields().stream().filter(f -> !without.contains(f.name())).toList(),
        prepared.ranch().survey(),
        rasters(prepared),
        settings);
  }

  /** The user's own rasters, as they stand. */
  private static List<Drift> rasters(Prepared prepared) {
    List<Drift> rasters = new ArrayList<>();
    for (Path file : prepared.job().paths("drift")) {
      rasters.add(new RasterDrift(RasterFile.open(file, prepared.ranch().projection())));
    }
    return rasters;
  }

  private record RasterDrift(RasterFile raster) implements Drift {
    @Override
    public String name() {
      return raster.name();
    }

    @Override
    public double at(PlaceM place) {
      return raster.at(place);
    }
  }

  private List<Finding> findings() {
    List<Finding> all = new ArrayList<>(prepared.findings());
    all.addAll(mapped.findings());
    faults.values().forEach(fault -> all.add(finding(fault)));
    all.addAll(impossible.values());
    all.addAll(planned.findings());
    return all.stream().distinct().toList();
  }

  /**
   * Stages 7 and 8: every file, whole or not at all.
   *
   * @param version of fieldsalt, for the run record
   * @param stamp the time, where the user asked for it
   */
  public void write(String version, Optional<String> stamp) {
    progress.accept("writing files", 0.0);
    folder.replaceWith(
        empty -> {
          RunResults results = results(findings());
          HandoverResult files =
              Handover.write(empty, HandoverAssembly.of(prepared, mapped, planned, results));
          List<Finding> all = new ArrayList<>(findings());
          all.addAll(files.findings());
          List<String> names =
              new ArrayList<>(files.files().stream().map(WrittenFile::name).toList());
          names.addAll(HandoverAssembly.writeTables(empty, prepared, planned));
          progress.accept("writing the page", 0.0);
          names.add(OutputFolder.RUN_RECORD);
          RunResults whole = results(all);
          UnitSystem units = HandoverAssembly.units(job);
          PageInput page = PageMaker.of(whole, units, version, prepared::treatedCm);
          names.addAll(Report.write(empty, page));
          RunFacts facts = RunFacts.of(job.effective(), version, names, stamp);
          RunRecord.write(empty, whole, facts);
        });
  }

  private RunResults results(List<Finding> findings) {
    return new RunResults(
        new RunResults.Readings(
            prepared.ranch(), prepared.crops(), prepared.rootZone(), prepared.converted()),
        new RunResults.Mapped(
            mapped.surface().report(),
            mapped.maps(),
            mapped.schemes(),
            mapped.zones(),
            mapped.sodicity()),
        new RunResults.Planned(
            planned.means(), planned.sodicity(mapped), planned.plan(), planned.next()),
        findings);
  }

  /**
   * What {@code check} found.
   *
   * @param lines of result
   */
  public record Checked(List<String> lines, List<String> leftOut, List<Finding> findings) {
    public Checked {
      lines = List.copyOf(lines);
      leftOut = List.copyOf(leftOut);
      findings = List.copyOf(findings);
    }
  }

  /** Reads, converts, maps and plans, and writes nothing. */
  public static Checked check(JobDocument job, BiConsumer<String, Double> progress) {
    MapRun run = new MapRun(job, null, progress);
    MapSummary summary = run.compute();
    int n = summary.findings().size();
    return new Checked(
        List.of(
            run.summary().sites(),
            n == 0 ? "No findings." : n + (n == 1 ? " finding." : " findings.")),
        summary.leftOut(),
        summary.findings());
  }
}
