package fieldsalt.handover.machine;

import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.handover.input.HandoverInput;
import fieldsalt.handover.input.MachineJob;
import fieldsalt.handover.input.ZoneFeature;
import fieldsalt.handover.table.Degrees;
import fieldsalt.read.field.FieldBoundary;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.locationtech.jts.geom.Geometry;

/**
 * Task data of ISO 11783-10 in a ZIP, of field boundaries alone where nothing is to be spread:
 * {@code TASKDATA/TASKDATA.XML} and one grid file a field that and pass that has anything to
 * spread: a second pass holds only the zones that need one. Grids are of type 1 (a treatment zone
 * code a cell); with more than 254 rates in a field of type 2 (the rate itself). Outside the field
 * and where the position is lost nothing is spread.
 */
public final class TaskDataWriter {
  private static final LocalDateTime FIXED = LocalDateTime.of(2000, 1, 1, 0, 0);
  private static final int MOST_CODES = 254;
  private static final double TONNES_TOLERANCE = 0.005;

  private final HandoverInput input;
  private final MachineJob job;
  private final Degrees degrees;
  private final TaskXml xml;
  private final Map<String, byte[]> grids = new LinkedHashMap<>();
  private final List<Finding> findings = new ArrayList<>();

  private TaskDataWriter(HandoverInput input, MachineJob job) {
    this.input = input;
    this.job = job;
    this.degrees = new Degrees(input.projection());
    this.xml = new TaskXml(job, findings);
  }

  /**
   * Writes the ZIP into a new file.
   *
   * @return fields whose grid spreads more than 0.5 % more or less than the plan, and names that
   *     had to be cut
   */
  public static List<Finding> write(Path file, HandoverInput input, MachineJob job)
      throws IOException {
    TaskDataWriter writer = new TaskDataWriter(input, job);
    writer.fields();
    Files.write(file, writer.zip());
    return writer.findings;
  }

  private void fields() {
    for (int i = 0; i < input.fields().size(); i++) {
      FieldBoundary field = input.fields().get(i);
      xml.partfield(i + 1, field, degrees.of(field.shapeM()));
    }
    xml.product();
    for (int i = 0; i < input.fields().size(); i++) {
      for (int pass = 1; pass <= Math.max(1, job.passes()); pass++) {
        task(i + 1, input.fields().get(i), pass);
      }
    }
  }

  private void task(int number, FieldBoundary field, int pass) {
    List<Geometry> shapes = new ArrayList<>();
    List<Integer> raws = new ArrayList<>();
    for (ZoneFeature zone : input.zones()) {
      if (zone.zone().field().equals(field.name())) {
        shapes.add(zone.zone().shapeM());
        double kgPerHa = job.rateMgPerHa(zone.zone().name(), pass) * 1000;
        raws.add(ProcessData.MASS_PER_AREA.raw(kgPerHa));
      }
    }
    if (raws.stream().anyMatch(raw -> raw > 0)) {
      TaskGridder gridder = new TaskGridder(input.projection(), shapes, raws, job.swathM() / 2);
      task(number, field, pass, gridder.grid());
    }
  }

  private void task(int number, FieldBoundary field, int pass, TaskGrid grid) {
    List<Integer> rates = distinctRates(grid);
    int task = grids.size() + 1;
    boolean coded = rates.size() <= MOST_CODES;
    byte[] cells = coded ? codes(grid, rates) : values(grid);
    String file = String.format(Locale.ROOT, "GRD%05d", task);
    grids.put(file + ".BIN", cells);
    String draft = job.drafts().contains(field.name()) ? "DRAFT " : "";
    String name = draft + (pass == 1 ? field.name() : "pass " + pass + " " + field.name());
    xml.task(new TaskXml.Task(task, name, number), coded ? rates : List.of());
    xml.grid(grid, file, cells.length, coded);
    if (grid.error() > TONNES_TOLERANCE) {
      findings.add(
          new Finding(
              Code.MACHINE_TONNES,
              new Place.InFile("TASKDATA.zip", "field " + field.name()),
              String.format(
                  Locale.ROOT,
                  "the grid of half-swath cells spreads %.1f t, the plan %.1f t",
                  grid.tonnes(),
                  grid.planTonnes()),
              "written so: the zones are small for this swath; weigh what goes on"));
    }
  }

  private static List<Integer> distinctRates(TaskGrid grid) {
    TreeSet<Integer> rates = new TreeSet<>();
    for (int rate : grid.rates()) {
      if (rate > 0) {
        rates.add(rate);
      }
    }
    return List.copyOf(rates);
  }

  /** Code 0 where nothing is spread, else the place of the rate in the list, from 1. */
  private static byte[] codes(TaskGrid grid, List<Integer> rates) {
    Map<Integer, Integer> codeOf = new LinkedHashMap<>();
    rates.forEach(rate -> codeOf.put(rate, codeOf.size() + 1));
    byte[] cells = new byte[grid.rates().length];
    for (int i = 0; i < cells.length; i++) {
      cells[i] = (byte) (int) codeOf.getOrDefault(grid.rates()[i], 0);
    }
    return cells;
  }

  private static byte[] values(TaskGrid grid) {
    ByteBuffer cells = ByteBuffer.allocate(4 * grid.rates().length).order(ByteOrder.LITTLE_ENDIAN);
    for (int rate : grid.rates()) {
      cells.putInt(Math.max(0, rate));
    }
    return cells.array();
  }

  private byte[] zip() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
      entry(zip, "TASKDATA.XML", xml.document().getBytes(StandardCharsets.UTF_8));
      for (Map.Entry<String, byte[]> grid : grids.entrySet()) {
        entry(zip, grid.getKey(), grid.getValue());
      }
    }
    return bytes.toByteArray();
  }

  private static void entry(ZipOutputStream zip, String name, byte[] bytes) throws IOException {
    ZipEntry entry = new ZipEntry("TASKDATA/" + name);
    entry.setTimeLocal(FIXED);
    zip.putNextEntry(entry);
    zip.write(bytes);
    zip.closeEntry();
  }
}
